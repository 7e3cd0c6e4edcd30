package neckway.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.neck.Direction;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.practice.PlanItem.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class WarmUpTests {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);
  private static final Neck NECK = new Neck(Key.parse("A minor"), Tuning.STANDARD, 22);
  private final List<PlayedRound> played = new ArrayList<>();

  private Plan plan(int minutes, Optional<LocalDate> last, double minutesToday) {
    Reach reach = Reach.of(NECK, played, 100, TODAY);
    return new WarmUp(reach, new WarmUp.Day(last, minutesToday)).plan(minutes);
  }

  private void clean(Exercise exercise, int daysAgo, double tempo) {
    LocalDate day = TODAY.minusDays(daysAgo);
    Instant when = day.atTime(18, 0).toInstant(java.time.ZoneOffset.UTC);
    for (int i = 0; i < 3; i++) {
      played.add(new PlayedRound(exercise, when, day, true, tempo, OptionalDouble.empty()));
    }
  }

  private void open(Shape lower) {
    Reach empty = Reach.of(NECK, List.of(), 100, TODAY);
    for (int daysAgo : new int[] {5, 3}) {
      for (Direction direction : Direction.values()) {
        clean(empty.joins(lower, direction).get(0).exercise(), daysAgo, 80);
      }
    }
  }

  private static double fastest(Plan plan) {
    return plan.items().stream()
        .flatMap(item -> item.drill().stream())
        .mapToDouble(drill -> drill.pulse().tempo())
        .max()
        .orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 8, 10, 15, 30})
  void fillsTheMinutesAndBeginsWithTheTuner(int minutes) {
    open(Shape.MINOR);
    open(Shape.MAJOR);
    Plan plan = plan(minutes, Optional.of(TODAY.minusDays(3)), 0);
    assertThat(plan.items().stream().mapToInt(PlanItem::minutes).sum()).isEqualTo(minutes);
    assertThat(plan.items().get(0).why()).startsWith("Tune first");
    assertThat(plan.items())
        .allMatch(item -> item.kind() == Kind.WARM_UP || item.kind() == Kind.REST)
        .allMatch(item -> item.minutes() > 0 && item.why().endsWith("."));
  }

  @Test
  void tempoRisesAndNeverAboveWhatWasCleanInTwoWeeks() {
    open(Shape.MINOR);
    open(Shape.MAJOR);
    List<Double> tempos =
        plan(15, Optional.of(TODAY.minusDays(3)), 0).items().stream()
            .flatMap(item -> item.drill().stream())
            .map(drill -> drill.pulse().tempo())
            .toList();
    assertThat(tempos).hasSize(3).isSorted();
    assertThat(tempos.get(2)).isLessThan(80);
  }

  @Test
  void whatWasCleanLongAgoDoesNotCount() {
    clean(new Exercise.OfShape(Shape.MINOR), 100, 200);
    clean(new Exercise.OfShape(Shape.MINOR), 5, 60);
    assertThat(fastest(plan(10, Optional.of(TODAY.minusDays(5)), 0))).isLessThan(60);
  }

  @Test
  void joinThatIsOpenIsTakenAndNoneThatIsNot() {
    assertThat(plan(10, Optional.empty(), 0).items())
        .filteredOn(item -> item.drill().isPresent())
        .allMatch(item -> item.drill().get().shapes().size() == 1);
    open(Shape.MINOR);
    assertThat(plan(10, Optional.of(TODAY.minusDays(3)), 0).items())
        .anyMatch(
            item ->
                item.drill()
                    .map(drill -> drill.shapes().equals(List.of(Shape.MINOR, Shape.MAJOR)))
                    .orElse(false));
  }

  @Test
  void theDayChangesItAndItSaysWhy() {
    open(Shape.MINOR);
    Plan usual = plan(8, Optional.of(TODAY.minusDays(1)), 0);
    Plan longBreak = plan(8, Optional.of(TODAY.minusDays(20)), 0);
    Plan tired = plan(8, Optional.of(TODAY.minusDays(1)), 150);
    Plan warm = plan(8, Optional.of(TODAY.minusDays(1)), 20);
    assertThat(fastest(longBreak)).isLessThan(fastest(usual));
    assertThat(fastest(tired)).isLessThan(fastest(usual));
    assertThat(usual.items().get(1).why()).contains("first time today");
    assertThat(longBreak.items().get(1).why()).contains("20 days ago");
    assertThat(tired.items().get(1).why()).contains("150 minutes today");
    assertThat(warm.items().get(1).why()).contains("already");
  }
}
