package neckway.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import neckway.string.Telling;
import neckway.words.Wording;

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
    String name = Wording.capital(named(tuning, string));
    double cents = 100 * (match.middleOff(tuning.openMidi(string), frets) - wholeOff);
    if (Math.abs(cents) >= STRING_OFF_CENTS) {
      add(
          Finding.Kind.STRING_OFF,
          string,
          Wording.of("machine.calibration.finding.outOfTune", name, Calibration.offWords(cents)));
    }
    twice(match, name);
    leftOut(match, name, learnt.used.size());
    for (LearntString.At odd : learnt.odd) {
      add(
          Finding.Kind.ODD_PLUCK,
          string,
          Wording.of(
              "machine.calibration.finding.oddPluck",
              name,
              odd.fret(),
              Wording.fixed(odd.pluck().time(), 1)));
    }
    if (learnt.spread >= UNSURE_SPREAD || learnt.doubt >= UNSURE_DOUBT) {
      add(Finding.Kind.UNSURE, string, Wording.of("machine.calibration.finding.unsure", name));
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
      add(
          Finding.Kind.TWICE,
          match.string,
          Wording.of("machine.calibration.finding.allTwice", name));
    } else if (!again.isEmpty()) {
      add(
          Finding.Kind.TWICE,
          match.string,
          Wording.counted("machine.calibration.finding.again", again.size(), name, list(again)));
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
          Wording.of(
              "machine.calibration.finding.wrongFret",
              name,
              wrong.heard(),
              Wording.fixed(wrong.pluck().time(), 1),
              wrong.asked()));
    }
    if (!missing.isEmpty()) {
      add(
          Finding.Kind.LEFT_OUT,
          match.string,
          Wording.counted(
              "machine.calibration.finding.missing",
              missing.size(),
              name,
              list(missing),
              Wording.counted("machine.calibration.plucks", used, used)));
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
                Wording.of(
                    "machine.calibration.finding.sameSlip", strings, frets.get(1), frets.get(0)));
          }
        });
    double cents = 100 * match.wholeOff();
    if (Math.abs(cents) >= GUITAR_OFF_CENTS) {
      add(
          Finding.Kind.GUITAR_OFF,
          null,
          Wording.of("machine.calibration.finding.guitarOff", Calibration.offWords(cents)));
    }
    if (!match.strays().isEmpty()) {
      int strays = match.strays().size();
      add(
          Finding.Kind.STRAY,
          null,
          Wording.counted(
              "machine.calibration.finding.stray",
              strays,
              strays,
              Wording.fixed(match.strays().get(0).time(), 1)));
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
            Wording.of("machine.calibration.finding.alike", number, number - 1));
      }
    }
  }

  private void add(Finding.Kind kind, GuitarString string, String words) {
    findings.add(new Finding(kind, Optional.ofNullable(string), words));
  }

  static String list(List<Integer> frets) {
    return frets.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  static String named(Tuning tuning, GuitarString string) {
    String note = tuning.names().get(tuning.count() - string.number());
    return Wording.of("machine.calibration.string", string, note);
  }
}
