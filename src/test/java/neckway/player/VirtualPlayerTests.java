package neckway.player;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import neckway.player.plan.Mistake;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedShift;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class VirtualPlayerTests {
  private static Performance play(PlayerSettings settings, long seed, Mistake... mistakes) {
    return new VirtualPlayer(settings)
        .play(TestRoutes.majorIntoDorian(1), TestRoutes.pulse(), List.of(mistakes), seed);
  }

  @ParameterizedTest
  @EnumSource(Condition.class)
  void sameSeedSameSamples(Condition condition) {
    Performance one = play(PlayerSettings.random(5, condition), 9);
    Performance same = play(PlayerSettings.random(5, condition), 9);
    Performance other = play(PlayerSettings.random(5, condition), 10);
    assertThat(same.samples()).isEqualTo(one.samples());
    assertThat(same.notes()).isEqualTo(one.notes());
    assertThat(other.samples()).isNotEqualTo(one.samples());
    assertThat(other.notes()).isNotEqualTo(one.notes());
  }

  @Test
  void withoutMistakesEveryStepIsPlayedOnceInOrder() {
    Performance take = play(PlayerSettings.plain(), 1);
    assertThat(take.notes()).extracting(n -> n.step().getAsInt()).isSorted().hasSize(25);
    assertThat(take.notes()).extracting(PlayedNote::kind).containsOnly(PlayedNote.Kind.RIGHT);
    assertThat(take.skipped()).isEmpty();
    assertThat(take.shifts())
        .extracting(PlayedShift::outcome)
        .containsExactly(PlayedShift.Outcome.MADE, PlayedShift.Outcome.MADE);
  }
}
