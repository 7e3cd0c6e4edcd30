package neckway.calibration;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.Key;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import neckway.words.Wording;

/**
 * Learns a guitar's strings from the notes heard in a recording of the calibration sequence: string
 * by string from the lowest to the highest, on each the frets in order, one pluck each.
 */
public final class Calibration {
  /** The frets of the sequence where none are named. */
  public static final List<Integer> USUAL_FRETS = List.of(0, 3, 7, 12);

  /** The highest fret that may be asked for. */
  public static final int HIGHEST_FRET = 24;

  /** A string farther out of tune with the rest cannot be learnt, cents. */
  static final double MOST_STRING_OFF_CENTS = 60;

  /** A guitar farther off its tuning as a whole is tuned to something else, cents. */
  static final double MOST_GUITAR_OFF_CENTS = 60;

  private static final int LEAST_PLUCKS = 2;

  private final Tuning tuning;
  private final List<Integer> frets;

  /**
   * @param tuning the open strings
   * @param frets in the order plucked, 0 to {@value #HIGHEST_FRET}, each once
   * @throws BadInput if there is no fret, or one twice, or one that no neck has
   */
  public Calibration(Tuning tuning, List<Integer> frets) {
    this.tuning = tuning;
    this.frets = List.copyOf(frets);
    if (frets.isEmpty()) {
      throw new BadInput(Wording.of("machine.calibration.frets.none"));
    }
    for (int fret : frets) {
      if (fret < 0 || fret > HIGHEST_FRET) {
        throw new BadInput(Wording.of("machine.calibration.frets.outside", fret));
      }
    }
    if (new HashSet<>(frets).size() < frets.size()) {
      throw new BadInput(Wording.of("machine.calibration.frets.twice"));
    }
  }

  /**
   * Learns from a take.
   *
   * @param heard all its notes, in order of time
   * @throws BadInput where a string cannot be learnt: what, on which string, and how to mend it
   */
  public Calibrated learn(List<Pluck> heard) {
    if (heard.isEmpty()) {
      throw new BadInput(Wording.of("machine.calibration.nothing", sequence()));
    }
    SequenceMatch match = SequenceMatch.of(tuning, frets, heard);
    checkHeard(match, heard);
    checkTuning(match);
    CalibrationFindings findings = new CalibrationFindings(tuning, frets, match);
    List<StringProfile> profiles = new ArrayList<>();
    for (StringMatch string : match.matches()) {
      LearntString learnt = learnt(string);
      findings.string(string, learnt, match.wholeOff());
      profiles.add(
          new StringProfile(
              string.string,
              tuning.openMidi(string.string),
              100 * off(string),
              learnt.lnStiffness,
              learnt.spread,
              learnt.used.size()));
    }
    GuitarProfile profile = new GuitarProfile(profiles);
    findings.whole(match);
    findings.pairs(profile);
    return new Calibrated(profile, findings.all());
  }

  private void checkHeard(SequenceMatch match, List<Pluck> heard) {
    int asked = tuning.count() * frets.size();
    List<GuitarString> unheard = new ArrayList<>();
    for (StringMatch string : match.matches()) {
      if (string.heard() == 0) {
        unheard.add(string.string);
      }
    }
    if (2 * match.places() < asked || 2 * unheard.size() > tuning.count()) {
      if (4 * SequenceMatch.backwards(tuning, frets, heard).places() >= 3 * asked) {
        throw new BadInput(Wording.of("machine.calibration.backwards", sequence()));
      }
      throw new BadInput(Wording.of("machine.calibration.few", match.places(), asked, sequence()));
    }
    if (!unheard.isEmpty()) {
      throw new BadInput(
          Wording.counted(
              "machine.calibration.skipped",
              unheard.size(),
              named(unheard),
              fretList(),
              sequence()));
    }
    for (StringMatch string : match.matches()) {
      if (string.heard() < leastPlucks()) {
        throw new BadInput(
            Wording.of(
                "machine.calibration.fewPlucks",
                named(string.string),
                string.heard(),
                frets.size(),
                leastPlucks(),
                sequence()));
      }
    }
  }

  private void checkTuning(SequenceMatch match) {
    double whole = 100 * match.wholeOff();
    if (Math.abs(whole) > MOST_GUITAR_OFF_CENTS) {
      int semitones = (int) Math.rint(match.wholeOff());
      Key plain = Key.parse("C major");
      String other =
          String.join(
              " ",
              tuning.strings().stream()
                  .map(s -> plain.spell(tuning.openMidi(s) + semitones).toString())
                  .toList());
      throw new BadInput(
          Wording.of("machine.calibration.otherTuning", offWords(whole), tuning, other));
    }
    for (StringMatch string : match.matches()) {
      double cents = 100 * (off(string) - match.wholeOff());
      if (Math.abs(cents) > MOST_STRING_OFF_CENTS) {
        throw new BadInput(
            Wording.of("machine.calibration.outOfTune", named(string.string), offWords(cents)));
      }
    }
  }

  private LearntString learnt(StringMatch string) {
    List<LearntString.At> values = new ArrayList<>();
    for (int f = 0; f < frets.size(); f++) {
      for (Pluck pluck : string.plucks.get(f)) {
        if (pluck.stiffness().isPresent()) {
          values.add(new LearntString.At(frets.get(f), pluck));
        }
      }
    }
    if (values.size() < leastPlucks()) {
      throw new BadInput(
          values.isEmpty()
              ? Wording.of("machine.calibration.stiffness.none", named(string.string))
              : Wording.of(
                  "machine.calibration.stiffness.few", named(string.string), values.size()));
    }
    return new LearntString(tuning.openMidi(string.string), values);
  }

  private double off(StringMatch string) {
    return string.middleOff(tuning.openMidi(string.string), frets);
  }

  private int leastPlucks() {
    return Math.min(LEAST_PLUCKS, frets.size());
  }

  private String named(GuitarString string) {
    return CalibrationFindings.named(tuning, string);
  }

  private String named(List<GuitarString> strings) {
    return String.join(", ", strings.stream().map(this::named).toList());
  }

  private String fretList() {
    return CalibrationFindings.list(frets);
  }

  private String sequence() {
    return Wording.of("machine.calibration.sequence", fretList());
  }

  static String offWords(double cents) {
    return Wording.of(
        cents < 0 ? "machine.calibration.flat" : "machine.calibration.sharp",
        Math.round(Math.abs(cents)));
  }
}
