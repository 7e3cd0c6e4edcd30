package neckway.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import neckway.string.Telling;

/** Puts into words what went wrong in a calibration take that could be used all the same. */
final class CalibrationFindings {
  /** A string less out of tune with the rest is not spoken of, cents. */
  static final double STRING_OFF_CENTS = 12;

  /** A guitar less off A4 = 440 Hz is not spoken of, cents. */
  static final double GUITAR_OFF_CENTS = 15;

  /** A spread of ln B from which a string is called unsure. */
  static final double UNSURE_SPREAD = 0.25;

  /** A probability that a string's stiffness is quite another from which it is called unsure. */
  static final double UNSURE_DOUBT = 0.05;

  private final Tuning tuning;
  private final List<Integer> frets;
  private final List<Finding> findings = new ArrayList<>();

  /** On how many strings another fret, the second, sounded in place of the first. */
  private final Map<List<Integer>, Integer> sameSlip = new LinkedHashMap<>();

  CalibrationFindings(Tuning tuning, List<Integer> frets, SequenceMatch match) {
    this.tuning = tuning;
    this.frets = frets;
    for (StringMatch string : match.matches()) {
      string.wrong.forEach(wrong -> sameSlip.merge(slip(wrong), 1, Integer::sum));
    }
  }

  List<Finding> all() {
    return List.copyOf(findings);
  }

  /** What there is to say of one string. */
  void string(StringMatch match, LearntString learnt, double wholeOff) {
    GuitarString string = match.string;
    String name = capital(named(tuning, string));
    double cents = 100 * (match.middleOff(tuning.openMidi(string), frets) - wholeOff);
    if (Math.abs(cents) >= STRING_OFF_CENTS) {
      add(
          Finding.Kind.STRING_OFF,
          string,
          "%s is %s against the rest; tune it before you play.",
          name,
          Calibration.offWords(cents));
    }
    twice(match, name);
    leftOut(match, name, learnt.used.size());
    for (LearntString.At odd : learnt.odd) {
      add(
          Finding.Kind.ODD_PLUCK,
          string,
          "%s, fret %d (at %.1f s): this pluck sounds unlike the string's others and was left out of"
              + " account.",
          name,
          odd.fret(),
          odd.pluck().time());
    }
    if (learnt.spread >= UNSURE_SPREAD || learnt.doubt >= UNSURE_DOUBT) {
      add(
          Finding.Kind.UNSURE,
          string,
          "%s is known only roughly: its plucks do not agree, or tell little; record it again,"
              + " plucked near the bridge with nothing else ringing.",
          name);
    }
  }

  private void twice(StringMatch match, String name) {
    List<Integer> again = new ArrayList<>();
    for (int f = 0; f < frets.size(); f++) {
      if (match.plucks.get(f).size() > 1) {
        again.add(frets.get(f));
      }
    }
    if (again.size() == frets.size() && again.size() > 1) {
      add(Finding.Kind.TWICE, match.string, "%s was played twice; all of it was used.", name);
    } else if (!again.isEmpty()) {
      add(
          Finding.Kind.TWICE,
          match.string,
          "%s, %s plucked more than once; all of it was used.",
          name,
          frets(again, "was", "were"));
    }
  }

  private void leftOut(StringMatch match, String name, int used) {
    List<Integer> missing = new ArrayList<>();
    for (int f = 0; f < frets.size(); f++) {
      int fret = frets.get(f);
      boolean wrong = match.wrong.stream().anyMatch(w -> w.asked() == fret);
      if (match.plucks.get(f).isEmpty() && !wrong) {
        missing.add(fret);
      }
    }
    for (StringMatch.WrongFret wrong : match.wrong) {
      if (everywhere(wrong)) {
        continue;
      }
      add(
          Finding.Kind.WRONG_FRET,
          match.string,
          "%s: fret %d sounded (at %.1f s) where fret %d was asked for; it was passed over.",
          name,
          wrong.heard(),
          wrong.pluck().time(),
          wrong.asked());
    }
    if (!missing.isEmpty()) {
      add(
          Finding.Kind.LEFT_OUT,
          match.string,
          "%s, %s not heard; the string was learnt from %s.",
          name,
          frets(missing, "was", "were"),
          used == 1 ? "one pluck" : used + " plucks");
    }
  }

  /** Notes where the same other fret sounded on half of the strings are one slip, not many. */
  private boolean everywhere(StringMatch.WrongFret wrong) {
    return 2 * sameSlip.getOrDefault(slip(wrong), 0) > tuning.count();
  }

  private static List<Integer> slip(StringMatch.WrongFret wrong) {
    return List.of(wrong.asked(), wrong.heard());
  }

  /** What there is to say of the whole. */
  void whole(SequenceMatch match) {
    sameSlip.forEach(
        (frets, strings) -> {
          if (2 * strings > tuning.count()) {
            add(
                Finding.Kind.WRONG_FRET,
                null,
                "On %d strings fret %d sounded where fret %d was asked for; these notes were passed"
                    + " over. If that fret was meant, name it in --frets.",
                strings,
                frets.get(1),
                frets.get(0));
          }
        });
    double cents = 100 * match.wholeOff();
    if (Math.abs(cents) >= GUITAR_OFF_CENTS) {
      add(
          Finding.Kind.GUITAR_OFF,
          null,
          "The whole guitar is %s of A4 = 440 Hz; that does no harm.",
          Calibration.offWords(cents));
    }
    if (!match.strays().isEmpty()) {
      int strays = match.strays().size();
      add(
          Finding.Kind.STRAY,
          null,
          strays == 1
              ? "One note (at %.1f s) belongs to no place of the sequence and was passed over."
              : strays
                  + " notes (the first at %.1f s) belong to no place of the sequence and were passed"
                  + " over.",
          match.strays().get(0).time());
    }
  }

  /** Neighbours that sound alike. */
  void pairs(GuitarProfile profile) {
    for (StringProfile lower : profile.strings()) {
      int number = lower.string().number();
      if (number > 1 && Telling.of(profile.apart(lower.string())) == Telling.NOT) {
        add(
            Finding.Kind.ALIKE,
            lower.string(),
            "Strings %d and %d cannot be told apart by their sound on this guitar: where both have a"
                + " note, only the hand's place can tell which was played.",
            number,
            number - 1);
      }
    }
  }

  private void add(Finding.Kind kind, GuitarString string, String words, Object... values) {
    findings.add(
        new Finding(kind, Optional.ofNullable(string), String.format(Locale.ROOT, words, values)));
  }

  private static String frets(List<Integer> frets, String one, String many) {
    return (frets.size() == 1 ? "fret " : "frets ")
        + list(frets)
        + " "
        + (frets.size() == 1 ? one : many);
  }

  static String list(List<Integer> frets) {
    return frets.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  static String named(Tuning tuning, GuitarString string) {
    return "string " + string + " (" + tuning.names().get(tuning.count() - string.number()) + ")";
  }

  private static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }
}
