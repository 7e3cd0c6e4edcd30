package neckway.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.BiConsumer;
import neckway.drill.Pulse;
import neckway.hear.HeardNote;
import neckway.neck.Route;
import org.junit.jupiter.api.Test;

/** Many players in symbols, on random routes at random tempos, with slips made on purpose. */
class FollowerSimulationTests {
  private static final int RUNS = 400;
  private static final double FIRST = 2;
  private static final String[] KINDS = {"wrong", "skipped", "skipped silent", "repeat", "extra"};

  private enum Beat {
    GIVEN,
    HIDDEN,
    A_BEAT_OFF
  }

  private static Route route(Random random) {
    int shapes = 1 + random.nextInt(random.nextInt(4) == 0 ? 5 : 2);
    int rounds = random.nextInt(4) == 0 ? 2 : 1;
    return Routes.bare(
        38 + random.nextInt(16), random.nextInt(5), shapes, rounds, 4 + random.nextInt(5));
  }

  private static FollowerFigures run(long seed, Beat beat, BiConsumer<NotePlayer, Random> script) {
    FollowerFigures figures = new FollowerFigures();
    Random seeds = new Random(seed);
    for (int i = 0; i < RUNS; i++) {
      Random random = new Random(seeds.nextLong());
      Pulse pulse = new Pulse(60 + random.nextInt(80), 1 + random.nextInt(2), 4, 4);
      double jitter = 0.003 + 0.015 * random.nextDouble();
      NotePlayer player = new NotePlayer(route(random), pulse.slotSeconds(), FIRST, jitter, random);
      script.accept(player, random);
      OptionalDouble first =
          switch (beat) {
            case GIVEN -> OptionalDouble.of(FIRST);
            case HIDDEN -> OptionalDouble.empty();
            case A_BEAT_OFF -> OptionalDouble.of(FIRST - pulse.beatSeconds());
          };
      figures.add(player, Following.of(player.route, pulse, first, player.heard()));
    }
    return figures;
  }

  private static NotePlayer.Slip slip(Random random, int from, int to) {
    return new NotePlayer.Slip(
        KINDS[random.nextInt(KINDS.length)], from + random.nextInt(to - from));
  }

  private static int steps(NotePlayer player) {
    return player.route.steps().size();
  }

  private static void threeApart(NotePlayer player, Random random) {
    int third = steps(player) / 3;
    player.playWithSlips(
        List.of(
            slip(random, 1, third - 2),
            slip(random, third, 2 * third - 2),
            slip(random, 2 * third, 3 * third - 2)),
        0,
        0);
  }

  @Test
  void slipsApartAreFoundAndNothingElseIsSaid() {
    for (Beat beat : Beat.values()) {
      FollowerFigures figures = run(11, beat, FollowerSimulationTests::threeApart);
      assertThat(figures.foundShare()).as("%s: %s", beat, figures).isGreaterThanOrEqualTo(0.99);
      assertThat(figures.falsePerThousand()).as("%s: %s", beat, figures).isLessThanOrEqualTo(0.5);
    }
  }

  @Test
  void rightNotesAreSaidAsSoonAsTheEarHasThem() {
    FollowerFigures figures =
        run(12, Beat.GIVEN, (player, random) -> player.playWithSlips(List.of(), 0, 0));
    assertThat(figures.said).as(figures.toString()).isZero();
    assertThat(figures.addedDelaySeconds(0.5)).isZero();
    assertThat(figures.addedDelaySeconds(0.95)).isZero();
  }

  @Test
  void twoSlipsWithinTwoStepsAreFound() {
    FollowerFigures figures =
        run(
            13,
            Beat.GIVEN,
            (player, random) -> {
              NotePlayer.Slip one = slip(random, 1, steps(player) - 4);
              int at = one.step() + 1 + random.nextInt(2);
              player.playWithSlips(List.of(one, slip(random, at, at + 1)), 0, 0);
            });
    assertThat(figures.foundShare()).as(figures.toString()).isGreaterThanOrEqualTo(0.95);
  }

  @Test
  void freshStartsStopsAndStumblesAreNoSlips() {
    for (Beat beat : Beat.values()) {
      FollowerFigures figures =
          run(
              14,
              beat,
              (player, random) -> {
                int one = random.nextInt(4);
                int other = random.nextInt(9);
                int stumble = 10 + random.nextInt(10);
                player
                    .rights(0, one, 0)
                    .pause(1 + 3 * random.nextDouble())
                    .rights(0, other, 1)
                    .pause(1 + 3 * random.nextDouble())
                    .rights(0, stumble, 2)
                    .pause(3 * random.nextDouble())
                    .rights(stumble + 1, steps(player) - 1 - random.nextInt(2), 2);
              });
      assertThat(figures.falsePerThousand()).as("%s: %s", beat, figures).isLessThanOrEqualTo(0.5);
    }
  }

  @Test
  void turningEarlyInAChainLeavesOutTheStepsAboveAndNothingElse() {
    FollowerFigures figures = run(15, Beat.GIVEN, FollowerSimulationTests::turnEarly);
    assertThat(figures.foundShare()).as(figures.toString()).isGreaterThanOrEqualTo(0.99);
    assertThat(figures.falsePerThousand()).as(figures.toString()).isLessThanOrEqualTo(0.5);
  }

  private static void turnEarly(NotePlayer player, Random random) {
    int top = (player.route.stepsPerRound() - 1) / 2;
    int below = 1 + random.nextInt(Math.max(1, player.route.shapes().size() - 1));
    boolean struckAgain = random.nextInt(3) == 0;
    int on = struckAgain ? top + below : top + below + 1;
    player.rights(0, top - below, 0);
    for (int s = top - below + 1; s < on; s++) {
      player.skip(s, false);
    }
    player.rights(on, steps(player) - 1, 0);
  }

  @Test
  void playersOfOtherTemposAreFollowed() {
    for (double pace : new double[] {0.72, 0.85, 1.2, 1.38}) {
      FollowerFigures figures = new FollowerFigures();
      Random seeds = new Random(16);
      for (int i = 0; i < RUNS / 4; i++) {
        Random random = new Random(seeds.nextLong());
        Pulse pulse = new Pulse(80, 2, 4, 4);
        NotePlayer player =
            new NotePlayer(route(random), pulse.slotSeconds() / pace, FIRST, 0.01, random);
        threeApart(player, random);
        figures.add(
            player, Following.of(player.route, pulse, OptionalDouble.empty(), player.heard()));
      }
      assertThat(figures.foundShare())
          .as("pace %s: %s", pace, figures)
          .isGreaterThanOrEqualTo(0.97);
      assertThat(figures.falsePerThousand())
          .as("pace %s: %s", pace, figures)
          .isLessThanOrEqualTo(3);
    }
  }

  @Test
  void randomNotesAreHardlyEverRight() {
    Random random = new Random(17);
    int right = 0;
    int notes = 0;
    for (int i = 0; i < RUNS; i++) {
      Pulse pulse = new Pulse(80, 2, 4, 4);
      NotePlayer player = new NotePlayer(route(random), pulse.slotSeconds(), FIRST, 0.02, random);
      for (int s = 0; s < 30; s++) {
        player.wrong(0, 40 + random.nextInt(36), 0);
      }
      List<HeardNote> heard = player.heard();
      notes += heard.size();
      right +=
          (int)
              Following.of(player.route, pulse, OptionalDouble.of(FIRST), heard).stream()
                  .filter(v -> v.verdict() == Verdict.RIGHT)
                  .count();
    }
    assertThat(right / (double) notes).isLessThan(0.01);
  }
}
