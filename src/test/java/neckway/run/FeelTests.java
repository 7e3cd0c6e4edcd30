package neckway.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.review.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Swing, triplets and a start off the beat, played by the virtual player and reviewed. */
class FeelTests {
  private static final double JITTER_MS = 5;

  private static PlayableDrill drill(Pulse pulse) {
    return Drills.example().drill().withPulse(pulse).playable();
  }

  private static Review review(PlayableDrill asked, Pulse played, long seed, boolean beatKnown) {
    PlayerSettings settings =
        PlayerSettings.plain().withHabits(Habits.tidy().withTiming(0, JITTER_MS, 0));
    Performance take = new VirtualPlayer(settings).play(asked.route(), played, List.of(), seed);
    OptionalDouble firstBeat =
        beatKnown ? OptionalDouble.of(take.firstBeat()) : OptionalDouble.empty();
    Run run =
        new Run(
            asked, Optional.empty(), take.sampleRate(), firstBeat, Clock.MEASURED, verdict -> {});
    run.feed(take.samples(), 0, take.samples().length);
    return run.finish();
  }

  private static List<String> words(PlayableDrill drill, Review review) {
    return Words.of(drill, review);
  }

  @ParameterizedTest
  @CsvSource({
    "0.5, 2, 0",
    "0.58, 2, 0.5",
    "0.62, 2, 0",
    "0.667, 2, 1.5",
    "0.75, 2, 0",
    "0.62, 4, 0.25",
    "0.5, 3, 0",
    "0.5, 3, 0.33",
    "0.5, 4, 0",
    "0.5, 1, 2"
  })
  void whatIsAskedForAndPlayedIsRightAndInTime(double swing, int notesPerBeat, double offset) {
    double tempo = notesPerBeat > 2 ? 60 : 80;
    PlayableDrill drill = drill(new Pulse(tempo, notesPerBeat, 4, 4, swing, offset));
    for (boolean beatKnown : new boolean[] {true, false}) {
      Review review = review(drill, drill.pulse(), 31, beatKnown);
      assertThat(review.summary().right()).isEqualTo(25);
      assertThat(review.notes()).hasSize(25);
      assertThat(review.notes()).allMatch(note -> Math.abs(note.offMs()) < 30);
      assertThat(review.shifts()).allMatch(shift -> Math.abs(shift.lateMs().orElseThrow()) < 30);
      assertThat(words(drill, review)).noneMatch(text -> text.contains("and the drill"));
      if (notesPerBeat == 2) {
        assertThat(review.summary().swing().orElseThrow()).isCloseTo(swing, within(0.01));
      }
      if (beatKnown) {
        assertThat(review.notes()).allMatch(n -> n.slot() == n.step().getAsInt());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.57, 0.62, 0.667, 0.72})
  void inAStraightDrillASwingIsToldOnce(double swing) {
    Pulse straight = new Pulse(80, 2, 4, 4);
    PlayableDrill drill = drill(straight);
    for (boolean beatKnown : new boolean[] {true, false}) {
      Review review = review(drill, straight.withFeel(swing, 0), 32, beatKnown);
      assertThat(review.summary().right()).isEqualTo(25);
      assertThat(review.summary().swing().orElseThrow()).isCloseTo(swing, within(0.01));
      double shares = Math.rint(100 * review.summary().swing().getAsDouble());
      String told =
          String.format("You swing %.0f to %.0f, and the drill is straight.", shares, 100 - shares);
      List<String> words = words(drill, review);
      assertThat(words.stream().filter(text -> text.contains("swing")).limit(1))
          .containsExactly(told);
      assertThat(words).noneMatch(text -> text.contains("late") || text.contains("hesitat"));
      assertThat(words).noneMatch(text -> text.contains("beats a minute, and the"));
    }
  }

  @Test
  void inASwungDrillStraightPlayingIsTold() {
    PlayableDrill drill = drill(new Pulse(80, 2, 4, 4, 2 / 3.0, 0));
    Review review = review(drill, drill.pulse().withFeel(0.5, 0), 33, true);
    assertThat(review.summary().right()).isEqualTo(25);
    assertThat(words(drill, review)).contains("You swing 50 to 50, and the drill swings 67 to 33.");
  }

  /** A hundred takes by steady players (a jitter of 5 ms), half of them straight. */
  @Test
  void aStraightPlayerIsNeverSaidToSwing() {
    PlayableDrill drill = drill(new Pulse(90, 2, 4, 4));
    for (int take = 0; take < 50; take++) {
      Review straight = review(drill, drill.pulse(), 400 + take, take % 2 == 0);
      assertThat(words(drill, straight)).noneMatch(text -> text.contains("swing"));
      double swing = 0.55 + 0.004 * take;
      PlayableDrill swung = drill(drill.pulse().withFeel(swing, 0));
      Review review = review(swung, swung.pulse(), 500 + take, take % 2 == 0);
      assertThat(review.summary().right()).isEqualTo(25);
      assertThat(review.summary().swing().orElseThrow()).isCloseTo(swing, within(0.01));
    }
  }
}
