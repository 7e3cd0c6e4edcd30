package neckway.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.words.GermanSaid;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;

/** What is said of plucks, where German is spoken. */
class GermanCalibrationTests {
  private static final List<Integer> FRETS = List.of(0, 3, 7, 12);
  private static final Tuning STANDARD = Tuning.STANDARD;

  private static List<Pluck> whole() {
    return new ArrayList<>(Plucked.whole(STANDARD, FRETS).all());
  }

  private static String refusal(List<Integer> frets, List<Pluck> heard) {
    return GermanSaid.complaint(() -> new Calibration(STANDARD, frets).learn(heard));
  }

  private static List<String> findings(List<Pluck> heard) {
    return Wording.in(
        Tongue.GERMAN,
        () ->
            new Calibration(STANDARD, FRETS)
                .learn(heard).findings().stream().map(Finding::words).toList());
  }

  private static List<Pluck> withCents(double all, int string, double cents) {
    Plucked plucked = new Plucked(STANDARD);
    for (GuitarString s : STANDARD.strings()) {
      double off = s.number() == string ? all + cents : all;
      FRETS.forEach(fret -> plucked.pluck(s.number(), fret, off, 0));
    }
    return plucked.all();
  }

  @Test
  void whatIsRefusedIsRefusedInGerman() {
    List<Pluck> noneOfFour = whole();
    noneOfFour.subList(8, 12).clear();
    List<Pluck> oneOfFour = whole();
    oneOfFour.subList(9, 12).clear();
    List<Pluck> untold =
        whole().stream().map(p -> new Pluck(p.time(), p.pitch(), Optional.empty())).toList();
    assertThat(
            List.of(
                refusal(List.of(), whole()),
                refusal(List.of(30), whole()),
                refusal(List.of(3, 3), whole()),
                refusal(FRETS, List.of()),
                refusal(FRETS, whole().subList(0, 5)),
                refusal(FRETS, noneOfFour),
                refusal(FRETS, oneOfFour),
                refusal(FRETS, withCents(200, 1, 0)),
                refusal(FRETS, withCents(0, 3, 90)),
                refusal(FRETS, untold)))
        .doesNotHaveDuplicates()
        .contains(
            "Saite 3 (G3) ist gegenüber den anderen Saiten 90 Cent zu hoch; stimm sie und nimm die"
                + " Folge noch einmal auf");
  }

  @Test
  void whatIsFoundIsSaidInGerman() {
    List<Pluck> twice = whole();
    twice.add(6, twice.get(5));
    List<Pluck> stray = whole();
    stray.add(8, new Pluck(8.5, 85.4, Optional.empty()));
    List<String> said = new ArrayList<>();
    said.addAll(findings(withCents(-20, 4, -32)));
    said.addAll(findings(twice));
    said.addAll(findings(stray));
    said.addAll(findings(Plucked.whole(STANDARD, FRETS).without(2, 3, 14)));
    said.addAll(
        findings(
            new Plucked(STANDARD)
                .string(6, FRETS)
                .string(5, List.of(0, 3, 8, 12))
                .string(4, FRETS)
                .string(3, FRETS)
                .string(2, FRETS)
                .string(1, FRETS)
                .all()));
    GermanSaid.isGerman(said);
    assertThat(said)
        .contains(
            "Saite 4 (D3) ist gegenüber den übrigen 32 Cent zu tief; stimm sie, bevor du spielst.",
            "Die ganze Gitarre ist gegenüber A4 = 440 Hz 20 Cent zu tief; das schadet nicht.",
            "Saite 6 (E2), die Bünde 7, 12 waren nicht zu hören; die Saite wurde aus 2 Anschlägen"
                + " gelernt.",
            "Saite 5 (A2): Bund 8 klang (bei 7,0 s), wo Bund 7 dran war; er wurde übergangen.");
  }
}
