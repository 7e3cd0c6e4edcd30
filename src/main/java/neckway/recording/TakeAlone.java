package neckway.recording;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.hear.beside.AtRate;
import neckway.hear.beside.KnownSoundRemover;
import neckway.hear.beside.LiveRemover;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * A whole take out of which what else was sounding has been taken.
 *
 * @param samples mono, full scale -1 to 1
 * @param sampleRate Hz
 * @param warning one line on the take, or on what was done with it
 */
record TakeAlone(float[] samples, int sampleRate, Optional<String> warning) {
  /** Take and backing are held whole in memory: ten minutes at 48 kHz. */
  static final int MOST_FRAMES = 10 * 60 * 48_000;

  private static final int MOST_MINUTES = 10;

  /** No louder than this everywhere is silence, full scale 1: under the last of 16 bits. */
  private static final float SILENCE = 1e-5f;

  private static final int FIRST_ROOM = 1 << 20;

  /** A file read to its end. */
  private record Whole(float[] samples, int rate, Optional<String> warning) {
    double seconds() {
      return samples.length / (double) rate;
    }
  }

  /**
   * Reads a take and takes out what sounded beside it. Where that is not heard in it, the take is
   * as it was and the warning says so.
   *
   * @throws BadInput where either file cannot be used, or the start lies outside the take
   */
  static TakeAlone of(Recording recording, Beside beside) {
    Whole known = read(beside.file().toString(), TakeReader.open(beside.file(), Channel.MIX));
    if (isSilent(known.samples())) {
      throw new BadInput(Wording.of("machine.beside.silent", beside.file()));
    }
    String name = recording.file().toString();
    Whole take = read(name, TakeReader.open(recording.file(), recording.channel()));
    checkStart(beside.starts(), name, take.seconds());
    if (beside.how() == Beside.How.AS_IT_CAME) {
      return asItCame(recording, take, known, beside);
    }
    Optional<KnownSoundRemover.Found> found =
        new KnownSoundRemover(take.samples(), take.rate(), known.samples(), known.rate())
            .find(beside.starts());
    String said = found.map(f -> heard(beside, f)).orElseGet(() -> notHeard(beside, name));
    found.ifPresent(f -> f.takeOut(take.samples()));
    return new TakeAlone(
        take.samples(),
        take.rate(),
        Optional.of(take.warning().map(first -> first + "; " + said).orElse(said)));
  }

  private static TakeAlone asItCame(Recording recording, Whole take, Whole known, Beside beside) {
    float[] played = AtRate.of(known.samples(), known.rate(), take.rate());
    long starts = Math.round(beside.starts().orElse(0) * take.rate());
    LiveRemover remover =
        new LiveRemover(
            take.rate(),
            (frame, into) -> {
              for (int i = 0; i < into.length; i++) {
                long at = frame + i - starts;
                into[i] = at >= 0 && at < played.length ? played[(int) at] : 0;
              }
            });
    float[] left = new float[take.samples().length];
    int[] count = new int[1];
    LiveRemover.Sink sink =
        (samples, offset, length) -> {
          System.arraycopy(samples, offset, left, count[0], length);
          count[0] += length;
        };
    remover.learn(take.samples(), left.length, recording.firstBeat().orElseThrow());
    remover.process(take.samples(), 0, left.length, sink);
    remover.finish(sink);
    String said =
        Wording.of(
            remover.takesOut() ? "machine.beside.asItCame" : "machine.beside.notInCountIn",
            beside.file());
    return new TakeAlone(
        left,
        take.rate(),
        Optional.of(take.warning().map(first -> first + "; " + said).orElse(said)));
  }

  private static String heard(Beside beside, KnownSoundRemover.Found found) {
    return Wording.of(
        "machine.beside.heard", beside.file(), Wording.fixed(found.where().startsSeconds(), 2));
  }

  private static String notHeard(Beside beside, String take) {
    return beside.starts().isPresent()
        ? Wording.of(
            "machine.beside.notHeardFrom",
            beside.file(),
            take,
            Wording.fixed(beside.starts().getAsDouble(), 2))
        : Wording.of("machine.beside.notHeard", beside.file(), take);
  }

  private static void checkStart(OptionalDouble starts, String take, double seconds) {
    double at = starts.orElse(0);
    if (!(at >= 0 && at < seconds)) {
      throw new BadInput(Wording.of("machine.beside.outside", at, take, Wording.fixed(seconds, 1)));
    }
  }

  private static Whole read(String name, TakeReader opened) {
    try (TakeReader reader = opened) {
      float[] samples = new float[(int) Math.min(MOST_FRAMES, reader.frames().orElse(FIRST_ROOM))];
      float[] block = new float[4096];
      int count = 0;
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        if (count + got > MOST_FRAMES) {
          throw new BadInput(Wording.of("machine.beside.long", name, MOST_MINUTES));
        }
        if (count + got > samples.length) {
          samples = Arrays.copyOf(samples, Math.min(MOST_FRAMES, Math.max(2 * count, count + got)));
        }
        System.arraycopy(block, 0, samples, count, got);
        count += got;
      }
      float[] whole = count == samples.length ? samples : Arrays.copyOf(samples, count);
      return new Whole(whole, reader.sampleRate(), reader.warning());
    }
  }

  private static boolean isSilent(float[] samples) {
    for (float sample : samples) {
      if (Math.abs(sample) > SILENCE) {
        return false;
      }
    }
    return true;
  }
}
