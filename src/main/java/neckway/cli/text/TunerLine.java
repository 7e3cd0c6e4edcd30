package neckway.cli.text;

import java.io.PrintWriter;
import java.util.Arrays;
import java.util.stream.Stream;
import neckway.hear.RobustStatistics;
import neckway.neck.GuitarString;
import neckway.neck.Key;
import neckway.neck.Pitch;
import neckway.neck.Tuning;
import neckway.words.Wording;

/**
 * What the tuner shows: on a terminal one line that is written over, with a needle; elsewhere one
 * line for each tone when it is over, the median of its tonesHz.
 */
public final class TunerLine {
  /** Tones shorter than this many tonesHz are not told: they are starts and slips. */
  private static final int LEAST_TONES = 4;

  private static final int MOST_READINGS = 4096;
  private static final int CENTS = 100;
  private static final int NEEDLE = 10;
  private static final Key NAMES = Key.parse("C major");

  private final PrintWriter out;
  private final Tuning tuning;
  private final boolean terminal;
  private final int width;
  private final double[] tonesHz = new double[MOST_READINGS];
  private int count;
  private int note;
  private double startSeconds;

  /** As wide as the terminal. */
  public TunerLine(PrintWriter out, Tuning tuning, boolean terminal) {
    this(out, tuning, terminal, TerminalWidth.columns());
  }

  /**
   * @param width columns there are, 40 or more
   */
  TunerLine(PrintWriter out, Tuning tuning, boolean terminal, int width) {
    this.width = width;
    this.out = out;
    this.tuning = tuning;
    this.terminal = terminal;
  }

  public void tone(double seconds, double hz) {
    double midi = Pitch.midiOfHz(hz);
    if (count > 0 && Math.abs(midi - note) > 0.7) {
      nothing();
    }
    if (count == 0) {
      note = (int) Math.round(midi);
      startSeconds = seconds;
    }
    if (count < MOST_READINGS) {
      tonesHz[count++] = hz;
    }
    if (terminal) {
      int nearest = (int) Math.round(midi);
      out.print("\r\u001b[K" + drawn(hz, nearest));
      out.flush();
    }
  }

  /** The tone is over. */
  public void nothing() {
    if (!terminal && count >= LEAST_TONES) {
      double hz = RobustStatistics.median(Arrays.copyOf(tonesHz, count));
      int nearest = (int) Math.round(Pitch.midiOfHz(hz));
      out.printf(Wording.tongue().locale(), "%7.2f s  %s%n", startSeconds, words(hz, nearest));
      out.flush();
    }
    count = 0;
  }

  public void end() {
    nothing();
    if (terminal) {
      out.println();
    }
    out.flush();
  }

  private String words(double hz, int nearest) {
    return note(hz, nearest) + frequency(hz) + string(Pitch.midiOfHz(hz));
  }

  /**
   * The words with the needle; where the terminal is narrow, as many of them as it has room for.
   */
  private String drawn(double hz, int nearest) {
    String needle = "  " + needle(cents(hz, nearest));
    String string = string(Pitch.midiOfHz(hz));
    String note = note(hz, nearest);
    return Stream.of(note + frequency(hz) + string + needle, note + string + needle)
        .filter(line -> line.length() <= width)
        .findFirst()
        .orElse(note + needle);
  }

  private static double cents(double hz, int nearest) {
    return CENTS * (Pitch.midiOfHz(hz) - nearest);
  }

  private static String note(double hz, int nearest) {
    return Wording.of(
        "terminal.tuner.note",
        String.format("%-4s", NAMES.spell(nearest)),
        String.format(Wording.tongue().locale(), "%+6.1f", cents(hz, nearest)));
  }

  private static String frequency(double hz) {
    return String.format(Wording.tongue().locale(), "  %8.2f Hz", hz);
  }

  private String string(double midi) {
    for (GuitarString string : tuning.strings()) {
      double off = midi - tuning.openMidi(string);
      if (Math.abs(off) < 1.5) {
        return "  " + Wording.of("terminal.tuner.string", string, tuned(string), mend(off));
      }
    }
    return "  ";
  }

  private static String mend(double off) {
    if (Math.abs(off) < 0.02) {
      return Wording.of("terminal.tuner.inTune");
    }
    return Wording.of(off < 0 ? "terminal.tuner.tighten" : "terminal.tuner.slacken");
  }

  /** The open string as it is named in the tuning. */
  private Pitch tuned(GuitarString string) {
    return tuning.lowToHigh().get(tuning.count() - string.number());
  }

  private static String needle(double cents) {
    char[] scale = ".".repeat(2 * NEEDLE + 1).toCharArray();
    scale[NEEDLE] = '|';
    int at = (int) Math.round(cents / 50 * NEEDLE) + NEEDLE;
    scale[Math.max(0, Math.min(2 * NEEDLE, at))] = Math.abs(cents) < 1 ? 'O' : '#';
    return new String(scale);
  }
}
