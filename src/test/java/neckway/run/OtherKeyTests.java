package neckway.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import neckway.drill.Drill;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.neck.Key;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Review;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** That a drill played in another key is told as that, and slips never are. */
class OtherKeyTests {
  private static final int RATE = 44_100;
  private static final String ANOTHER = "This sounds like ";

  private final PlayableDrill drill = inKey(Key.parse("A major"), Drills.example());

  /** The same shapes in another key, with the cleanest joins, in its lowest place. */
  static PlayableDrill inKey(Key key, PlayableDrill drill) {
    Drill of = drill.drill();
    return new Drill(
            Optional.empty(),
            of.tuning(),
            of.frets(),
            key,
            of.shapes(),
            OptionalInt.empty(),
            List.of(),
            List.of(),
            of.rounds(),
            of.pulse())
        .playable();
  }

  static Review heard(PlayableDrill drill, Performance played) {
    Run run =
        new Run(
            drill,
            Optional.empty(),
            played.sampleRate(),
            OptionalDouble.of(played.firstBeat()),
            Clock.MEASURED,
            verdict -> {});
    run.feed(played.samples(), 0, played.samples().length);
    return run.finish();
  }

  static Performance play(PlayableDrill drill, List<Mistake> mistakes, long seed) {
    return new VirtualPlayer(PlayerSettings.plain().withSampleRate(RATE))
        .play(drill.route(), drill.pulse(), mistakes, seed);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 3, 5, 7, 10, 11})
  void anotherKeyIsToldWithHowFarItIs(int semitones) {
    Key key = drill.key().up(semitones);
    PlayableDrill played = inKey(key, drill);
    List<String> words = heard(drill, play(played, List.of(), semitones)).summary().words();
    int far = played.route().steps().get(0).midi() - drill.route().steps().get(0).midi();
    assertThat(words.get(0))
        .startsWith(ANOTHER + key + ", and the drill is in " + drill.key())
        .contains(far > 0 ? "higher" : "lower");
    assertThat(words.get(1)).contains("tuned");
  }

  @Test
  void slipInTheOtherKeyDoesNotHideIt() {
    PlayableDrill played = inKey(drill.key().up(3), drill);
    List<Mistake> slips =
        List.of(
            new Mistake.Slip(Mistake.Kind.WRONG, 6, OptionalInt.empty()),
            new Mistake.Slip(Mistake.Kind.SKIP, 15, OptionalInt.empty()));
    assertThat(heard(drill, play(played, slips, 4)).summary().words().get(0))
        .startsWith(ANOTHER + played.key());
  }

  /** From a clean take to one in which more than half of the steps are slips. */
  @ParameterizedTest
  @ValueSource(ints = {0, 3, 6, 9, 12, 15})
  void slipsAreNeverToldAsAnotherKey(int slips) {
    Performance played = play(drill, slips(drill, slips, 100 + slips), 100 + slips);
    assertThat(heard(drill, played).summary().words())
        .noneMatch(words -> words.startsWith(ANOTHER));
  }

  /** So many slips of all sorts at steps of their own. */
  static List<Mistake> slips(PlayableDrill drill, int count, long seed) {
    Random random = new Random(seed);
    Mistake.Kind[] kinds = Mistake.Kind.values();
    return random
        .ints(0, drill.route().steps().size())
        .distinct()
        .limit(count)
        .mapToObj(
            step ->
                (Mistake)
                    new Mistake.Slip(
                        kinds[random.nextInt(kinds.length)], step, OptionalInt.empty()))
        .toList();
  }
}
