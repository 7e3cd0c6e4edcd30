package neckway.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * The sound devices of this machine, by name. Each question to the sound system has a limit of
 * time, after which it is a {@link BadInput} that the sound system does not answer.
 */
public final class Devices {
  /**
   * Frames asked of a line's buffer: long enough that a busy machine loses nothing. The clicks are
   * placed by frame, so a long output buffer costs no accuracy.
   */
  public static final int INPUT_BUFFER_FRAMES = 4096;

  /** The same for the output. */
  public static final int OUTPUT_BUFFER_FRAMES = 8192;

  /** Longer than a full buffer and the fade after it. */
  private static final long FADING_NANOS = 500_000_000;

  private static final long AGAIN_NANOS = 30_000_000;

  private static final float[] RATES = {48_000, 44_100};
  private static final int[] CHANNELS = {1, 2};

  private Devices() {}

  /** Names of the devices that sound can come in by. */
  public static List<String> inputs() {
    return TimeLimit.ask(() -> names(TargetDataLine.class));
  }

  /** Names of the devices that sound can go out by. */
  public static List<String> outputs() {
    return TimeLimit.ask(() -> names(SourceDataLine.class));
  }

  /**
   * Opens an input, 16-bit, mono if the device allows it.
   *
   * @param name its name or a part of it that no other has, whatever the case; empty: the first
   * @throws BadInput where there is none, or it is in use, in one line that lists what there is
   */
  public static TargetDataLine openInput(Optional<String> name) {
    return TimeLimit.ask(
        () -> (TargetDataLine) open(TargetDataLine.class, name, RATES, INPUT_BUFFER_FRAMES));
  }

  /**
   * Opens an output at a rate, 16-bit.
   *
   * @throws BadInput as {@link #openInput}
   */
  public static SourceDataLine openOutput(Optional<String> name, float rate) {
    return TimeLimit.ask(() -> openOutputOnceFree(name, rate));
  }

  /** A sound of ours that fades out may hold the device for a moment more. */
  private static SourceDataLine openOutputOnceFree(Optional<String> name, float rate) {
    long until = System.nanoTime() + FADING_NANOS;
    while (true) {
      try {
        return (SourceDataLine)
            open(SourceDataLine.class, name, new float[] {rate}, OUTPUT_BUFFER_FRAMES);
      } catch (BadInput e) {
        if (!(e.getCause() instanceof LineUnavailableException) || System.nanoTime() > until) {
          throw e;
        }
        LockSupport.parkNanos(AGAIN_NANOS);
      }
    }
  }

  /** The name of the device that {@link #openInput} opens. */
  public static String inputName(Optional<String> name) {
    return TimeLimit.ask(() -> choose(TargetDataLine.class, name).getName());
  }

  /** The name of the device that {@link #openOutput} opens. */
  public static String outputName(Optional<String> name) {
    return TimeLimit.ask(() -> choose(SourceDataLine.class, name).getName());
  }

  private static List<String> names(Class<? extends DataLine> kind) {
    return mixers(kind).stream().map(Mixer.Info::getName).toList();
  }

  private static List<Mixer.Info> mixers(Class<? extends DataLine> kind) {
    List<Mixer.Info> found = new ArrayList<>();
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      Mixer mixer = AudioSystem.getMixer(info);
      Line.Info[] lines =
          kind == TargetDataLine.class ? mixer.getTargetLineInfo() : mixer.getSourceLineInfo();
      for (Line.Info line : lines) {
        if (line.getLineClass() == kind) {
          found.add(info);
          break;
        }
      }
    }
    return found;
  }

  private static Mixer.Info choose(Class<? extends DataLine> kind, Optional<String> name) {
    boolean input = kind == TargetDataLine.class;
    List<Mixer.Info> all = mixers(kind);
    if (all.isEmpty()) {
      throw new BadInput(
          Wording.of(input ? "machine.device.none.input" : "machine.device.none.output"));
    }
    if (name.isEmpty()) {
      return all.get(0);
    }
    String wanted = name.get().toLowerCase(Locale.ROOT);
    List<Mixer.Info> like =
        all.stream().filter(i -> i.getName().toLowerCase(Locale.ROOT).contains(wanted)).toList();
    for (Mixer.Info info : like) {
      if (like.size() == 1 || info.getName().equalsIgnoreCase(name.get())) {
        return info;
      }
    }
    String names =
        (like.isEmpty() ? all : like)
            .stream().map(Mixer.Info::getName).distinct().collect(Collectors.joining(", "));
    throw new BadInput(
        Wording.of(
            like.isEmpty() ? "machine.device.unknown" : "machine.device.several",
            input ? "--input" : "--output",
            name.get(),
            names));
  }

  private static DataLine open(
      Class<? extends DataLine> kind, Optional<String> name, float[] rates, int bufferFrames) {
    Mixer.Info device = choose(kind, name);
    Exception why = null;
    for (int channels : CHANNELS) {
      for (float rate : rates) {
        AudioFormat format = new AudioFormat(rate, 16, channels, true, false);
        try {
          DataLine line =
              (DataLine) AudioSystem.getMixer(device).getLine(new DataLine.Info(kind, format));
          int bufferBytes = bufferFrames * format.getFrameSize();
          if (line instanceof TargetDataLine in) {
            in.open(format, bufferBytes);
          } else if (line instanceof SourceDataLine out) {
            out.open(format, bufferBytes);
          }
          return line;
        } catch (LineUnavailableException | IllegalArgumentException e) {
          why = tellsMore(why, e) ? e : why;
        }
      }
    }
    throw new BadInput(
        Wording.of("machine.device.closed", device.getName(), why == null ? "" : why.getMessage()),
        why);
  }

  /** That a format will not do says less than why one that would do cannot be had. */
  private static boolean tellsMore(Exception before, Exception now) {
    String said = String.valueOf(now.getMessage());
    return before == null || now instanceof LineUnavailableException && !said.contains("format");
  }
}
