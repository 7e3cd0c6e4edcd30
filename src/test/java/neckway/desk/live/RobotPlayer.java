package neckway.desk.live;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.Arrays;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;

/**
 * A player that hears the click from the loudspeaker and plays a take into the microphone, to the
 * sample in time with the first click it heard; the microphone hears a little of the loudspeaker
 * too, as in a room. So what the player hears and what the microphone hears are late by the same,
 * and the take's truth holds on the click's own grid. It finds the click by its rise alone.
 *
 * <pre>RobotPlayer TAKE.wav FIRST_BEAT_SECONDS COUNT_IN_SECONDS LEAK</pre>
 */
public final class RobotPlayer {
  private static final int RATE = 48_000;
  private static final int BLOCK = 256;
  private static final int DAMPED_FRAMES = RATE;
  private static final double RISE = 0.01;
  private static final int AHEAD_FRAMES = RATE / 16;

  private final float[] take;
  private final long takeAfterClick;
  private final double leak;
  private long frame;
  private long click = -1;

  private RobotPlayer(float[] take, double firstBeat, double countIn, double leak) {
    this.take = take.clone();
    // a hand that damps the strings: a take that is cut off while it rings ends with a crack
    for (int i = 0; i < DAMPED_FRAMES; i++) {
      this.take[take.length - 1 - i] *= (float) i / DAMPED_FRAMES;
    }
    this.takeAfterClick = Math.round((countIn - firstBeat) * RATE);
    this.leak = leak;
  }

  public static void main(String[] args) throws IOException {
    Process ear =
        new ProcessBuilder(
                "parec",
                "-d",
                "speaker.monitor",
                "--raw",
                "--rate=" + RATE,
                "--channels=1",
                "--format=s16le",
                "--latency-msec=5")
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    Process hand =
        new ProcessBuilder(
                "pacat",
                "-d",
                "mic",
                "--raw",
                "--rate=" + RATE,
                "--channels=1",
                "--format=s16le",
                "--latency-msec=60")
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  ear.destroyForcibly();
                  hand.destroyForcibly();
                }));
    RobotPlayer player =
        new RobotPlayer(
            samples(Path.of(args[0])),
            Double.parseDouble(args[1]),
            Double.parseDouble(args[2]),
            Double.parseDouble(args[3]));
    player.play(new DataInputStream(ear.getInputStream()), hand.getOutputStream());
  }

  static float[] samples(Path file) {
    try (TakeReader reader = TakeReader.open(file, Channel.AUTO)) {
      float[] all = new float[1 << 18];
      float[] block = new float[4096];
      int length = 0;
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        all = length + got > all.length ? Arrays.copyOf(all, 2 * all.length) : all;
        System.arraycopy(block, 0, all, length, got);
        length += got;
      }
      return Arrays.copyOf(all, length);
    }
  }

  private void play(DataInputStream ear, OutputStream hand) throws IOException {
    byte[] bytes = new byte[2 * BLOCK];
    hand.write(new byte[2 * AHEAD_FRAMES]);
    boolean said = false;
    while (true) {
      ear.readFully(bytes);
      for (int i = 0; i < BLOCK; i++) {
        double heard = (short) (bytes[2 * i] & 0xff | bytes[2 * i + 1] << 8) / 32768.0;
        if (click < 0 && Math.abs(heard) > RISE) {
          click = frame;
        }
        long at = click < 0 ? -1 : frame - click - takeAfterClick;
        double mine = at >= 0 && at < take.length ? take[(int) at] : 0;
        int value =
            (int) Math.max(-32768, Math.min(32767, Math.round(32768 * (mine + leak * heard))));
        bytes[2 * i] = (byte) value;
        bytes[2 * i + 1] = (byte) (value >> 8);
        frame++;
      }
      hand.write(bytes);
      hand.flush();
      if (click >= 0 && !said) {
        said = true;
        System.out.println("heard the click");
        System.out.flush();
      }
    }
  }
}
