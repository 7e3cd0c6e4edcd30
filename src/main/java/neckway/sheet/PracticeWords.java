package neckway.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.words.Wording;

/** What a sheet says in words. The advice is common practice, no source. */
public final class PracticeWords {
  private static final double PERCENT = 100;
  private static final double SLOW_SHARE_OF_TEMPO = 0.5;

  private PracticeWords() {}

  /** Key, tuning, tempo and rounds, in one line. */
  public static String facts(PlayableDrill drill) {
    Pulse pulse = drill.pulse();
    String tuning = drill.tuning().name().orElseGet(() -> drill.tuning().toString());
    List<String> facts = new ArrayList<>();
    facts.add(Wording.of("music.sheet.key", drill.key()));
    facts.add(Wording.of("music.sheet.tuning", tuning));
    facts.add(Wording.of("music.sheet.tempo", said(pulse.tempo())));
    facts.add(counted("music.sheet.notesPerBeat", pulse.notesPerBeat()));
    facts.add(counted("music.sheet.beatsPerBar", pulse.beatsPerBar()));
    facts.add(counted("music.sheet.rounds", drill.rounds()));
    if (pulse.swing() != Pulse.STRAIGHT) {
      facts.add(swing(pulse));
    }
    if (pulse.offsetBeats() != 0) {
      boolean one = pulse.offsetBeats() == 1;
      String key = one ? "music.sheet.offset.one" : "music.sheet.offset.many";
      facts.add(Wording.of(key, said(pulse.offsetBeats())));
    }
    return String.join(", ", facts);
  }

  /** "swing 67 to 33": the shares of a pair of notes. */
  static String swing(Pulse pulse) {
    double first = PERCENT * pulse.swing();
    return Wording.of("music.sheet.swing", said(first), said(PERCENT - first));
  }

  /** How to practise it, a sentence each. */
  public static List<String> advice(PlayableDrill drill) {
    double slow = Math.max(Pulse.SLOWEST, drill.pulse().tempo() * SLOW_SHARE_OF_TEMPO);
    String begin = Wording.of("music.sheet.begin", plain(Math.rint(slow)));
    String whole = counted("music.sheet.whole", drill.rounds());
    String rest = Wording.of("music.sheet.rest");
    return drill.route().shifts().isEmpty()
        ? List.of(begin, whole, rest)
        : List.of(begin, Wording.of("music.sheet.shifts") + " " + whole, rest);
  }

  private static String counted(String key, int count) {
    return Wording.counted(key, count, count);
  }

  /** A number without needless zeros, as the language that is spoken writes it. */
  private static String said(double number) {
    return plain(number).replace(".", Wording.of("number.point"));
  }

  /** A number without needless zeros, as files have it. */
  static String plain(double number) {
    return new BigDecimal(String.format(Locale.ROOT, "%.2f", number))
        .stripTrailingZeros()
        .toPlainString();
  }
}
