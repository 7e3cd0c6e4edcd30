package neckway.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import neckway.drill.Pulse;
import neckway.drill.Slots;
import neckway.follow.Following;
import neckway.follow.NotePlayer;
import neckway.follow.NoteVerdict;
import neckway.follow.Routes;
import neckway.follow.Verdict;
import neckway.hear.HeardNote;
import neckway.hear.RobustStatistics;
import org.junit.jupiter.api.Test;

class GridTests {
  private static final Pulse PULSE = new Pulse(80, 2, 4, 4);
  private static final double GAP = 0.375;

  private static NoteVerdict right(double time, int step) {
    HeardNote note = new HeardNote(0, time, 60, 60, HeardNote.Start.PLUCK, true, -20, time + 0.03);
    return new NoteVerdict(note, Verdict.RIGHT, OptionalInt.of(step), 0, time + 0.03);
  }

  @Test
  void aGivenGridByHand() {
    Grid grid = Grid.of(Grid.Source.GIVEN, PULSE, 2.0);
    assertThat(grid.due(3)).isEqualTo(3.125, within(1e-12));
    assertThat(grid.slot(3.13)).isEqualTo(3);
    assertThat(grid.offMs(3.13)).isEqualTo(5, within(1e-9));
    assertThat(grid.offMs(1.98)).isEqualTo(-20, within(1e-9));
    assertThat(grid.slot(1.6)).isEqualTo(-1);
  }

  @Test
  void theBandOfOnIsTwelveMsOrATwentiethOfASlot() {
    assertThat(Timing.bandMs(0.2)).isEqualTo(12);
    assertThat(Timing.bandMs(0.375)).isEqualTo(18.75, within(1e-9));
    assertThat(Timing.of(-18.7, GAP, true)).isEqualTo(Timing.ON);
    assertThat(Timing.of(-18.8, GAP, true)).isEqualTo(Timing.EARLY);
    assertThat(Timing.of(18.8, GAP, true)).isEqualTo(Timing.LATE);
    assertThat(Timing.of(100, GAP, false)).isEqualTo(Timing.UNSURE);
  }

  @Test
  void clicksGiveTheGridWithTheCountInCounted() {
    List<Double> clicks = Arrays.asList(1.0, 1.751, 2.499, 3.25, 4.0, 4.75);
    Grid grid = ClickGrid.of(clicks, 4.03, PULSE).orElseThrow();
    assertThat(grid.source()).isEqualTo(Grid.Source.CLICK);
    assertThat(grid.firstBeat()).isEqualTo(4.0, within(0.002));
    assertThat(grid.tempo()).isEqualTo(80);
  }

  @Test
  void whereTheFirstNoteIsFarFromTheCountInItsOwnBeatIsTheFirst() {
    List<Double> clicks = Arrays.asList(1.0, 1.75, 2.5, 3.25, 4.0, 4.75, 5.5, 6.25);
    Grid grid = ClickGrid.of(clicks, 5.52, PULSE).orElseThrow();
    assertThat(grid.firstBeat()).isEqualTo(5.5, within(0.002));
  }

  @Test
  void clicksOfAnotherTempoOrTooFewAreNoGrid() {
    assertThat(ClickGrid.of(List.of(1.0, 1.6, 2.2, 2.8, 3.4), 3.4, PULSE)).isEmpty();
    assertThat(ClickGrid.of(List.of(1.0, 1.75, 2.5), 4, PULSE)).isEmpty();
  }

  @Test
  void evenNotesGiveTheirOwnGrid() {
    List<NoteVerdict> notes = new ArrayList<>();
    for (int s = 0; s < 25; s++) {
      notes.add(right(1.234 + s * 0.3, s));
    }
    Grid grid = NoteGrid.of(notes, 1.234, PULSE, Slots.EVEN);
    assertThat(grid.source()).isEqualTo(Grid.Source.NOTES);
    assertThat(grid.tempo()).isEqualTo(100, within(1e-6));
    assertThat(grid.firstBeat()).isEqualTo(1.234, within(1e-9));
  }

  @Test
  void aFewNotesKeepTheDrillsTempo() {
    Grid grid = NoteGrid.of(List.of(right(1, 0), right(1.3, 1)), 1, PULSE, Slots.EVEN);
    assertThat(grid.tempo()).isEqualTo(80);
    assertThat(grid.firstBeat()).isEqualTo(1);
  }

  @Test
  void theGridIsFoundThroughSlipsStumblesAndFreshStarts() {
    Random seeds = new Random(23);
    List<Double> errors = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      Random random = new Random(seeds.nextLong());
      double pace = random.nextBoolean() ? 1 : 0.75 + 0.6 * random.nextDouble();
      double gap = GAP / pace;
      double first = 1 + random.nextDouble();
      double jitter = 0.004 + 0.012 * random.nextDouble();
      NotePlayer player =
          new NotePlayer(Routes.bare(45, random.nextInt(5), 2, 1, 6), gap, first, jitter, random);
      int breaks = 3 + random.nextInt(12);
      if (random.nextBoolean()) {
        player.rights(0, breaks, 0).pause(gap * (1 + random.nextInt(6)));
      }
      player.playWithSlips(
          List.of(
              new NotePlayer.Slip("wrong", 3),
              new NotePlayer.Slip("skipped", 8),
              new NotePlayer.Slip("extra", 12),
              new NotePlayer.Slip("repeat", 18)),
          0,
          1);
      List<NoteVerdict> verdicts =
          Following.of(player.route, PULSE, OptionalDouble.empty(), player.heard());
      NoteVerdict start = verdicts.get(0);
      Grid grid = NoteGrid.of(verdicts, start.note().time(), PULSE, Slots.EVEN);
      errors.add(Math.abs(Math.IEEEremainder(grid.firstBeat() - first, gap)) * 1000);
    }
    errors.sort(Double::compare);
    assertThat(errors.get(150)).as("median, ms").isLessThanOrEqualTo(6);
    assertThat(errors.get(285)).as("95 %%, ms").isLessThanOrEqualTo(20);
  }

  @Test
  void figuresByHand() {
    assertThat(RobustStatistics.median(new double[] {3, 1, 2})).isEqualTo(2);
    assertThat(RobustStatistics.median(new double[] {4, 1, 2, 3})).isEqualTo(2.5);
    assertThat(RobustStatistics.median(new double[] {})).isNaN();
    assertThat(RobustStatistics.spread(new double[] {1, 2, 3, 4, 100}))
        .isEqualTo(1.4826, within(1e-9));
  }
}
