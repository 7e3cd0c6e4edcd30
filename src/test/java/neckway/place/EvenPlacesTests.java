package neckway.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import neckway.hear.HeardNote;
import neckway.neck.Tuning;
import org.junit.jupiter.api.Test;

class EvenPlacesTests {
  private final EvenPlaces places = new EvenPlaces(Tuning.STANDARD, 22);

  private List<PlaceGuess> of(int midi) {
    HeardNote note = new HeardNote(1, midi, midi, HeardNote.Start.PLUCK, true, -20, 1.03);
    return places.of(note, midi);
  }

  /** E4 is the open first string, and the fifth fret of the second: common practice of tuning. */
  @Test
  void theOpenFirstStringSoundsOnFiveStringsOfTwentyTwoFrets() {
    assertThat(of(64))
        .extracting(g -> g.place().toString())
        .containsExactlyInAnyOrder("1:0", "2:5", "3:9", "4:14", "5:19");
  }

  @Test
  void probabilitiesAreEvenAndSumToOne() {
    for (int midi = 40; midi <= 86; midi++) {
      List<PlaceGuess> guesses = of(midi);
      assertThat(guesses).isNotEmpty();
      assertThat(guesses.stream().mapToDouble(PlaceGuess::p).sum()).isEqualTo(1, within(1e-12));
      assertThat(guesses).extracting(PlaceGuess::p).containsOnly(guesses.get(0).p());
    }
  }

  @Test
  void whatTheNeckDoesNotHaveIsNowhere() {
    assertThat(of(39)).isEmpty();
    assertThat(of(87)).isEmpty();
  }

  @Test
  void aNeckHasNoFewerThanNoFrets() {
    assertThatThrownBy(() -> new EvenPlaces(Tuning.STANDARD, -1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
