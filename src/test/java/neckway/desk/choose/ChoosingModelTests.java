package neckway.desk.choose;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import neckway.desk.Desk;
import neckway.desk.LookModel;
import neckway.file.SettingsFile;
import neckway.neck.Direction;
import neckway.neck.Key;
import neckway.neck.Shape;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChoosingModelTests {
  @TempDir private Path folder;
  private Desk desk;
  private ChoosingModel model;

  @BeforeEach
  void open() {
    desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
    model = new ChoosingModel(desk);
  }

  @Test
  void theDrillIsSaidInTwoLines() {
    desk.drill().tempo(72);
    model.takeBy(Direction.DOWN, 2);
    assertThat(model.headline().get()).isEqualTo("A major pentatonic, shape 1 to 2, fret 5, 72");
    assertThat(model.details().get()).isEqualTo("up on 3, down on 5   two a beat");
    desk.drill().rounds(4);
    assertThat(model.details().get()).endsWith("4 rounds");
    model.count(1);
    assertThat(model.details().get()).startsWith("two");
    assertThat(model.headline().get()).isEqualTo("A major pentatonic, shape 1, fret 5, 72");
    assertThat(model.rows().get()).isEmpty();
  }

  /** Which fingers lead where between these two shapes: common practice, no published source. */
  @Test
  void joinsAreListedCleanestFirst() {
    List<String> texts = model.rows().get().stream().map(ChoosingModel.Row::text).toList();
    assertThat(texts)
        .containsExactly(
            "string 3, first finger, 2 frets",
            "string 4, fourth finger, 2 frets",
            "string 5, fourth finger, 2 frets",
            "string 6, fourth finger, 2 frets",
            "string 6, second finger, 2 frets",
            "string 2, fourth finger, 3 frets",
            "string 1, from the fourth finger to the third, 2 frets");
    assertThat(model.rows().get().get(0).up()).isTrue();
    assertThat(model.whys().get()).startsWith("Up and down: The first finger stays down");
    model.takeBy(Direction.UP, 1);
    assertThat(model.whys().get().lines()).hasSize(2);
  }

  @Test
  void theStandsAreWalkedAndTheChainComesAlong() {
    model.standBy(1);
    assertThat(desk.drill().drill().shapes()).containsExactly(Shape.DORIAN, Shape.PHRYGIAN);
    model.standBy(-1);
    assertThat(desk.drill().drill().shapes()).containsExactly(Shape.MAJOR, Shape.DORIAN);
    assertThat(desk.drill().drill().start()).isEqualTo(5);
    for (int i = 0; i < 30; i++) {
      model.standBy(1);
    }
    assertThat(desk.drill().drill().shapes()).hasSize(1);
    assertThat(desk.notice().get()).contains("only one");
    for (int i = 0; i < 30; i++) {
      model.standBy(-1);
    }
    assertThat(desk.drill().drill().start()).isLessThan(4);
  }

  @Test
  void aWishThatCannotBeMetIsSaidAtTheFoot() {
    desk.drill().tuning("E2");
    assertThat(desk.notice().get()).contains("four to eight");
    desk.drill().tempo(90);
    assertThat(desk.notice().get()).isEmpty();
  }

  @Test
  void pairsOfALongChainAreListedInTurn() {
    model.count(3);
    assertThat(model.severalPairs().get()).isTrue();
    assertThat(model.pairText().get()).contains("shape 1 to 2");
    assertThat(model.headline().get()).contains("shapes 1, 2, 3");
    model.nextPair();
    assertThat(model.pairText().get()).contains("shape 2 to 3");
    model.count(2);
    assertThat(model.pairText().get()).contains("shape 1 to 2");
  }

  /** The legend tells of double figures only where there are some. */
  @Test
  void theLegendNamesTheRootAndExplainsADoubleFigureOnce() {
    assertThat(model.legend().get())
        .contains("Ringed: A, the root.")
        .containsOnlyOnce("4·2: finger 4 in the lower shape, 2 in the upper.");
    desk.look().label().set(LookModel.Label.DEGREE);
    assertThat(model.legend().get()).contains("Ringed: A").doesNotContain("finger ");
    desk.drill().key(Key.parse("Eb minor"));
    assertThat(model.legend().get()).contains("Ringed: Eb");
  }

  @Test
  void aBridgeOfAnotherPairIsTakenThereAndItsPairListed() {
    model.count(3);
    NeckPicture.Bridge other =
        model.picture().get().bridges().stream().filter(b -> b.pair() == 1).findFirst().get();
    model.take(Direction.DOWN, other);
    assertThat(model.pair().get()).isEqualTo(1);
    assertThat(desk.drill().join(1, Direction.DOWN)).isEqualTo(other.join());
  }

  @Test
  void theKeysOfferedAreTwelveMajorAndTheirRelatives() {
    assertThat(ChoosingModel.KEYS).hasSize(24).doesNotHaveDuplicates();
    for (int i = 0; i < 24; i += 2) {
      Key major = ChoosingModel.KEYS.get(i);
      Key minor = ChoosingModel.KEYS.get(i + 1);
      assertThat(minor.minor()).isTrue();
      assertThat(minor.majorTonic()).isEqualTo(major.majorTonic());
    }
  }

  @Test
  void whatWasChosenIsThereNextTime() {
    desk.drill().key(Key.parse("E minor"));
    model.takeBy(Direction.UP, 1);
    desk.look().text(200);
    desk.keep();
    Desk again = new Desk(SettingsFile.at(folder.resolve("settings.json")));
    assertThat(again.drill().drill()).isEqualTo(desk.drill().drill());
    assertThat(again.look().textPercent().get()).isEqualTo(200);
  }
}
