package neckway.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.practice.PlanItem.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is planned, on logs that are made up. */
final class PlanMakerTests {
  private static final Neck NECK = new Neck(Key.parse("A minor"), Tuning.STANDARD, 22);
  private static final LocalDate FIRST = LocalDate.of(2026, 5, 1);

  private final List<PlayedRound> rounds = new ArrayList<>();

  private PlanMakerTests play(Exercise exercise, int day, double tempo, String played) {
    LocalDate date = FIRST.plusDays(day);
    for (char round : played.toCharArray()) {
      rounds.add(
          new PlayedRound(
              exercise,
              date.atStartOfDay().toInstant(ZoneOffset.UTC).plusSeconds(rounds.size()),
              date,
              round == 'c',
              tempo,
              OptionalDouble.empty()));
    }
    return this;
  }

  private Plan plan(int minutes, int day) {
    Reach reach = Reach.of(NECK, rounds, 100, FIRST.plusDays(day));
    return new PlanMaker(reach).plan(minutes, Optional.empty());
  }

  private static Exercise join(Shape lower, Direction direction) {
    Reach empty = Reach.of(NECK, List.of(), 100, FIRST);
    return empty.joins(lower, direction).get(0).exercise();
  }

  private void open(Shape lower) {
    for (Direction direction : Direction.values()) {
      play(join(lower, direction), 0, 90, "ccc").play(join(lower, direction), 1, 90, "ccc");
    }
  }

  private static List<Kind> kinds(Plan plan) {
    return plan.items().stream().map(PlanItem::kind).toList();
  }

  @Test
  void whoHasNothingLoggedBeginsWithTheShapesOfTheFirstPairAlone() {
    Plan plan = plan(20, 0);
    assertThat(kinds(plan)).startsWith(Kind.WARM_UP, Kind.SHAPE, Kind.SHAPE, Kind.JOIN);
    assertThat(plan.items().get(1).drill().orElseThrow().shapes()).containsExactly(Shape.MINOR);
    assertThat(plan.items().get(3).why()).contains("cleanest join");
  }

  @Test
  void whatFadesComesFirstAndSaysSinceWhen() {
    open(Shape.MINOR);
    PlanItem first = plan(20, 30).items().get(1);
    assertThat(first.kind()).isEqualTo(Kind.JOIN);
    assertThat(first.why())
        .startsWith("Up on string 3 from minor to major was open")
        .contains("29 days ago");
  }

  @Test
  void whatFailedThreeTimesIsPlayedSlower() {
    play(join(Shape.MINOR, Direction.UP), 0, 80, "cxxx");
    PlanItem item = plan(20, 1).items().get(1);
    assertThat(item.drill().orElseThrow().pulse().tempo()).isEqualTo(68);
    assertThat(item.why()).contains("failed three times running");
  }

  /** Something is changed after three tries, and something else after three more. */
  @Test
  void whatFailsSlowerTooIsHalved() {
    play(join(Shape.MINOR, Direction.UP), 0, 80, "cxxx");
    play(join(Shape.MINOR, Direction.UP), 1, 68, "xxx");
    List<PlanItem> items = plan(20, 2).items();
    assertThat(items.get(1).drill().orElseThrow().shapes()).containsExactly(Shape.MAJOR);
    assertThat(items.get(1).why()).contains("failed slower too", "major shape");
    assertThat(items.get(2).drill().orElseThrow().shapes())
        .containsExactly(Shape.MINOR, Shape.MAJOR);
    assertThat(items.get(2).drill().orElseThrow().pulse().tempo()).isEqualTo(58);
  }

  @Test
  void cleanTwiceIsFasterAndNeverFasterThanTheTarget() {
    play(join(Shape.MINOR, Direction.UP), 0, 60, "cc");
    assertThat(plan(20, 1).items().get(1).drill().orElseThrow().pulse().tempo()).isEqualTo(64);
    play(join(Shape.MINOR, Direction.UP), 1, 99, "cc");
    assertThat(plan(20, 2).items().get(1).drill().orElseThrow().pulse().tempo()).isEqualTo(100);
  }

  @Test
  void openPairsAreChainedAndWithAllOpenAnotherKeyComes() {
    open(Shape.MINOR);
    open(Shape.MAJOR);
    assertThat(plan(30, 2).items())
        .filteredOn(item -> item.kind() == Kind.CHAIN)
        .first()
        .satisfies(
            item ->
                assertThat(item.drill().orElseThrow().shapes())
                    .containsExactly(Shape.MINOR, Shape.MAJOR, Shape.DORIAN));
    for (Shape lower : Shape.values()) {
      open(lower);
    }
    assertThat(plan(60, 2).items())
        .filteredOn(item -> item.drill().isPresent())
        .extracting(item -> item.drill().orElseThrow().key())
        .contains(Key.parse("D minor"));
  }

  @Test
  void drillOfATeacherComesFirst() {
    PlayableDrill set = neckway.drill.Drills.example();
    Plan plan = new PlanMaker(Reach.of(NECK, rounds, 100, FIRST)).plan(20, Optional.of(set));
    assertThat(plan.items().get(1).drill().orElseThrow().route().steps().subList(0, 5))
        .isEqualTo(set.route().steps().subList(0, 5));
  }

  /** Ten minutes of rest in an hour is the usual caution. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 8, 12, 20, 45, 61, 90, 120})
  void anyTimeIsFilledWithReasonsWhateverWasPlayed(int minutes) {
    Random random = new Random(minutes);
    for (int logged : new int[] {0, 1, 50, 2000}) {
      rounds.clear();
      for (int i = 0; i < logged; i++) {
        Shape lower = Shape.values()[random.nextInt(5)];
        Direction direction = Direction.values()[random.nextInt(2)];
        String played = random.nextInt(3) > 0 ? "c" : "x";
        play(join(lower, direction), i / 20, 60 + random.nextInt(50), played);
      }
      Plan plan = plan(minutes, logged / 20 + random.nextInt(20));
      assertThat(plan.items().stream().mapToInt(PlanItem::minutes).sum())
          .isLessThanOrEqualTo(minutes)
          .isPositive();
      assertThat(plan.items()).allMatch(item -> item.minutes() > 0 && item.why().endsWith("."));
      noDrillThreeTimesRunning(plan);
      restInEveryHour(plan);
    }
  }

  private static void noDrillThreeTimesRunning(Plan plan) {
    List<PlayableDrill> drills =
        plan.items().stream().flatMap(item -> item.drill().stream()).toList();
    for (int i = 2; i < drills.size(); i++) {
      boolean same =
          drills.get(i).once().route().equals(drills.get(i - 1).once().route())
              && drills.get(i).once().route().equals(drills.get(i - 2).once().route());
      assertThat(same).isFalse();
    }
  }

  private static void restInEveryHour(Plan plan) {
    int played = 0;
    for (PlanItem item : plan.items()) {
      played = item.kind() == Kind.REST ? 0 : played + item.minutes();
      assertThat(played).isLessThanOrEqualTo(58);
    }
  }
}
