package neckway.sheet;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;

/** What a sheet says in words. The advice is common practice, no source. */
public final class PracticeWords {
  private static final double PERCENT = 100;
  private static final double SLOW_SHARE_OF_TEMPO = 0.5;

  private PracticeWords() {}

  /** Key, tuning, tempo and rounds, in one line. */
  public static String facts(PlayableDrill drill) {
    Pulse pulse = drill.pulse();
    String tuning = drill.tuning().name().orElseGet(() -> drill.tuning().toString());
    return drill.key()
        + " pentatonic, tuning "
        + tuning
        + ", "
        + plain(pulse.tempo())
        + " beats a minute, "
        + counted(pulse.notesPerBeat(), "note")
        + " a beat, "
        + counted(pulse.beatsPerBar(), "beat")
        + " a bar, "
        + counted(drill.rounds(), "round")
        + feel(pulse);
  }

  private static String feel(Pulse pulse) {
    String swing = pulse.swing() == Pulse.STRAIGHT ? "" : ", " + swing(pulse);
    String offset =
        pulse.offsetBeats() == 0
            ? ""
            : ", from " + plain(pulse.offsetBeats()) + " beats after the first beat on";
    return swing + offset;
  }

  /** "swing 67 to 33": the shares of a pair of notes. */
  static String swing(Pulse pulse) {
    double first = PERCENT * pulse.swing();
    return "swing " + plain(first) + " to " + plain(PERCENT - first);
  }

  /** How to practise it, a sentence each. */
  public static List<String> advice(PlayableDrill drill) {
    double slow = Math.max(Pulse.SLOWEST, drill.pulse().tempo() * SLOW_SHARE_OF_TEMPO);
    String begin =
        "Begin slowly, at about "
            + plain(Math.rint(slow))
            + " beats a minute, and go faster only when every note is clean.";
    String whole =
        drill.rounds() == 1
            ? "Then play the whole, up and down."
            : "Then play the whole "
                + drill.rounds()
                + " times without a pause; the bottom note between two rounds sounds once.";
    String rest = "Rest your hands every few minutes, and stop if anything hurts.";
    return drill.route().shifts().isEmpty()
        ? List.of(begin, whole, rest)
        : List.of(
            begin,
            "Take each shift alone first, with two notes before it and two after it. " + whole,
            rest);
  }

  private static String counted(int count, String what) {
    return count + " " + what + (count == 1 ? "" : "s");
  }

  /** A number without needless zeros. */
  static String plain(double number) {
    return new BigDecimal(String.format(Locale.ROOT, "%.2f", number))
        .stripTrailingZeros()
        .toPlainString();
  }
}
