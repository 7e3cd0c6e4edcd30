package neckway.folder;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.neck.BadInput;
import neckway.report.Clips;
import neckway.review.Review;
import neckway.sound.Levelling;
import neckway.sound.TimeStretch;
import neckway.words.Wording;

/**
 * Sound out of a recording, equally loud everywhere. The recording is read once.
 *
 * @param take the recording
 * @param channel which side of it
 * @param review what was said of it, by which a wrong recording is told
 */
public record TakeClips(Path take, Channel channel, Review review) implements Clips {
  private static final double HALF = 0.5;
  private static final int BLOCK_FRAMES = 4096;

  /** Decoders differ in what silence they leave at the ends. */
  private static final double SAME_LENGTH_SECONDS = 0.5;

  /**
   * @throws BadInput where the recording cannot be read, or is not the one that was reviewed
   */
  @Override
  public List<Clip> cut(List<Stretch> stretches) {
    try (TakeReader reader = TakeReader.open(take, channel)) {
      int rate = reader.sampleRate();
      List<float[]> parts = new ArrayList<>();
      for (Stretch stretch : stretches) {
        parts.add(new float[(int) (frame(stretch.to(), rate) - frame(stretch.from(), rate))]);
      }
      float[] block = new float[BLOCK_FRAMES];
      long at = 0;
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        for (int i = 0; i < parts.size(); i++) {
          copy(block, at, got, parts.get(i), frame(stretches.get(i).from(), rate));
        }
        at += got;
      }
      checkLength((double) at / rate);
      List<Clip> clips = new ArrayList<>();
      for (int i = 0; i < parts.size(); i++) {
        long there = Math.max(0, at - frame(stretches.get(i).from(), rate));
        float[] part = parts.get(i);
        clips.add(clip(Arrays.copyOf(part, (int) Math.min(part.length, there)), rate));
      }
      return clips;
    }
  }

  private static long frame(double seconds, int rate) {
    return Math.round(seconds * rate);
  }

  /** What a block has of a part. */
  private static void copy(float[] block, long at, int got, float[] part, long partFrom) {
    long first = Math.max(at, partFrom);
    long last = Math.min(at + got, partFrom + part.length);
    if (first < last) {
      System.arraycopy(
          block, (int) (first - at), part, (int) (first - partFrom), (int) (last - first));
    }
  }

  private void checkLength(double seconds) {
    double reviewed = review.take().seconds();
    if (reviewed > 0 && Math.abs(reviewed - seconds) > SAME_LENGTH_SECONDS) {
      throw new BadInput(
          Wording.of(
              "machine.take.otherLength",
              take,
              Wording.fixed(seconds, 1),
              Wording.fixed(reviewed, 1)));
    }
  }

  private static Clip clip(float[] sound, int rate) {
    float[] level = Levelling.levelled(sound, rate);
    return new Clip(level, TimeStretch.slowed(level, rate, HALF), rate);
  }
}
