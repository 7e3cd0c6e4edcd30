package neckway.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.JsonFile;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.JoinChoice;
import neckway.neck.Place;
import neckway.page.PageModel.Marks;
import neckway.page.PlayedPlace.Known;
import neckway.player.Performance;
import neckway.player.plan.Mistake;
import neckway.player.plan.PlayedNote;
import neckway.review.ReviewedShift;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The page says where notes were played; the player's own truth says whether that is so. */
class PlayedPlaceTests {
  private static final int SEEDS = 3;

  /** A take of the virtual player with its page and its truth. */
  private record Played(PagedTake take, Map<Integer, Place> truth) {
    PageModel page() {
      return take.read();
    }
  }

  private static final List<Played> KNOWN_GUITAR = new ArrayList<>();
  private static final List<Played> UNKNOWN_GUITAR = new ArrayList<>();

  @BeforeAll
  static void play() {
    PlayableDrill two = drill("major,dorian", List.of(3), List.of(5));
    PlayableDrill three = drill("major,dorian,phrygian", List.of(4, 2), List.of(2, 5));
    for (int seed = 0; seed < SEEDS; seed++) {
      for (int string = 2; string <= 5; string++) {
        KNOWN_GUITAR.add(play(two, shift(Direction.UP, 0, string), seed, true));
      }
      KNOWN_GUITAR.add(play(two, shift(Direction.DOWN, 0, 3), seed, true));
      KNOWN_GUITAR.add(play(three, shift(Direction.UP, 1, 3), seed, true));
      KNOWN_GUITAR.add(play(two, stayed(Direction.UP, 0), seed, true));
      KNOWN_GUITAR.add(play(three, stayed(Direction.UP, 1), seed, true));
      UNKNOWN_GUITAR.add(play(two, shift(Direction.UP, 0, 5), seed, false));
      UNKNOWN_GUITAR.add(play(two, stayed(Direction.UP, 0), seed, false));
    }
  }

  private static PlayableDrill drill(String shapes, List<Integer> up, List<Integer> down) {
    return Drills.of(
            "G major",
            shapes,
            OptionalInt.of(3),
            up.stream().map(JoinChoice::on).toList(),
            down.stream().map(JoinChoice::on).toList(),
            1)
        .drill()
        .withPulse(new Pulse(170, 2, 4, 4))
        .playable();
  }

  private static Mistake shift(Direction way, int pair, int string) {
    return new Mistake.ShiftElsewhere(
        0, way, OptionalInt.of(pair), Optional.of(new GuitarString(string)));
  }

  private static Mistake stayed(Direction way, int pair) {
    return new Mistake.ShiftElsewhere(0, way, OptionalInt.of(pair), Optional.empty());
  }

  private static Played play(PlayableDrill drill, Mistake mistake, int seed, boolean known) {
    Performance performance = PagedTake.performance(drill, List.of(mistake), seed);
    Map<Integer, Place> truth = new HashMap<>();
    performance.notes().stream()
        .filter(n -> n.kind() == PlayedNote.Kind.RIGHT)
        .forEach(n -> truth.put(n.step().getAsInt(), n.place()));
    String name = "seed " + seed + " " + mistake;
    return new Played(PagedTake.of(name, drill, performance, known), truth);
  }

  private static List<PageStep> steps(PageModel page) {
    return IntStream.range(0, page.steps()).mapToObj(page::at).toList();
  }

  private static long count(List<Played> takes, Known known) {
    return takes.stream()
        .flatMap(t -> steps(t.page()).stream())
        .filter(s -> s.played().known() == known)
        .count();
  }

  @Test
  void whereTheGuitarIsKnownANoteStandsWhereItWasPlayed() {
    int there = 0;
    int elsewhere = 0;
    for (Played played : KNOWN_GUITAR) {
      for (PageStep step : steps(played.page())) {
        Place truth = played.truth().get(step.due().index());
        String at = played.take().name() + ", step " + step.due().index();
        switch (step.played().known()) {
          case ELSEWHERE -> {
            assertThat(step.played().place()).as(at).isEqualTo(truth);
            assertThat(step.plannedSign()).isEqualTo(":" + step.due().place().fret());
          }
          case NOT_AS_PLANNED -> assertThat(step.due().place()).as(at).isNotEqualTo(truth);
          case AS_PLANNED -> assertThat(step.plannedSign()).isEmpty();
        }
        elsewhere += truth != null && !truth.equals(step.due().place()) ? 1 : 0;
        there += step.played().known() == Known.ELSEWHERE ? 1 : 0;
      }
    }
    // what is not told stays as planned, or has a question mark, and is never told wrongly
    assertThat(elsewhere).isGreaterThan(40);
    assertThat(there).isGreaterThan(elsewhere * 8 / 10);
  }

  /** The marks stand over the notes on which the hand landed, by the player's own truth. */
  @Test
  void landingsStandWhereTheHandLandedAndNoneWhereItStayed() {
    for (Played played : KNOWN_GUITAR) {
      List<LandingMark> marks =
          steps(played.page()).stream().flatMap(s -> s.landings().stream()).toList();
      for (ReviewedShift shift : played.take().review().shifts()) {
        List<LandingMark> own =
            marks.stream().filter(m -> m.planned().equals(shift.planned())).toList();
        if (shift.verdict() == ShiftVerdict.MISSED) {
          assertThat(own).as(played.take().name()).isEmpty();
        } else if (shift.verdict() == ShiftVerdict.MOVED) {
          Place landing = played.truth().get(own.get(0).step());
          assertThat(landing.string()).isEqualTo(shift.string().orElseThrow());
        } else {
          assertThat(own.get(0).step()).isEqualTo(shift.planned().landingStep());
        }
      }
    }
    assertThat(KNOWN_GUITAR)
        .anyMatch(t -> has(t, ShiftVerdict.MISSED))
        .anyMatch(t -> has(t, ShiftVerdict.MOVED));
  }

  private static boolean has(Played played, ShiftVerdict verdict) {
    return played.take().review().shifts().stream().anyMatch(s -> s.verdict() == verdict);
  }

  /** The hand is told to stay, but where it played is not: its notes are not where planned. */
  @Test
  void whereTheGuitarIsUnknownNoPlaceIsTold() {
    assertThat(count(UNKNOWN_GUITAR, Known.ELSEWHERE)).isZero();
    assertThat(count(UNKNOWN_GUITAR, Known.NOT_AS_PLANNED)).isPositive();
    for (Played played : UNKNOWN_GUITAR) {
      boolean missed = has(played, ShiftVerdict.MISSED);
      for (PageStep step : steps(played.page())) {
        if (step.played().known() == Known.NOT_AS_PLANNED) {
          assertThat(missed).isTrue();
          assertThat(step.due().place()).isNotEqualTo(played.truth().get(step.due().index()));
          assertThat(step.sign()).isEqualTo(":" + step.due().place().fret() + "?");
        }
      }
    }
  }

  /** Nothing is known to speak against the plan, so it stands. */
  @Test
  void aShiftThatTheSoundDoesNotTellLeavesThePlan() {
    Played moved = UNKNOWN_GUITAR.get(0);
    assertThat(has(moved, ShiftVerdict.UNHEARD)).isTrue();
    assertThat(steps(moved.page())).allMatch(s -> s.played().known() == Known.AS_PLANNED);
    assertThat(moved.page().at(7).landingSign()).isEqualTo("^?");
  }

  /** The hand over the page and on the neck is in the shape in which it stayed. */
  @Test
  void theHandIsShownWhereItStayed() {
    for (Played played : UNKNOWN_GUITAR) {
      if (has(played, ShiftVerdict.MISSED)) {
        PageModel page = played.page();
        assertThat(IntStream.range(0, page.steps()).map(page::stand)).containsOnly(0);
        assertThat(HandStand.now(page).stand()).isZero();
        page.show(Marks.HIDDEN);
        assertThat(page.stand(12)).isEqualTo(1);
        assertThat(steps(page)).allMatch(s -> s.played().known() == Known.AS_PLANNED);
        page.show(Marks.SHOWN);
      }
    }
  }

  /** The take of the test audio, held against its truth file. */
  @Test
  void theMovedShiftOfTheTestAudioStandsOnItsString() {
    PagedTake take = PagedTake.recordedOnItsGuitar("moved-shift");
    JsonNode notes = JsonFile.read(Path.of("test-audio/moved-shift.truth.json")).at("/notes");
    PageModel page = take.read();
    assertThat(page.at(6).played()).isEqualTo(new PlayedPlace(Known.ELSEWHERE, place("4:9")));
    for (JsonNode note : notes) {
      JsonNode place = note.at("/places/0");
      assertThat(page.at(note.at("/step").asInt()).played().place())
          .hasToString(place.at("/string").asInt() + ":" + place.at("/fret").asInt());
    }
    assertThat(page.at(5).landingSign()).isEqualTo("^4");
    assertThat(page.at(7).landingSign()).isEmpty();
  }

  private static Place place(String written) {
    String[] parts = written.split(":");
    return new Place(new GuitarString(Integer.parseInt(parts[0])), Integer.parseInt(parts[1]));
  }
}
