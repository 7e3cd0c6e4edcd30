package neckway.calls;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import neckway.calls.CalledRun.Heard;
import neckway.calls.CalledRun.Outcome;
import neckway.drill.Drills;
import neckway.practice.State;
import neckway.words.EnglishWords;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of called runs that are made up, in German and as before in English. */
class GermanCallsTests {
  private static CalledRun run(Outcome often, double lateMs) {
    Caller caller = new Caller(Drills.example(), exercise -> State.NEW, 4);
    caller.growTo(60);
    List<Heard> heard = new ArrayList<>();
    for (Call call : caller.calls()) {
      Outcome outcome = heard.size() % 3 == 1 ? often : Outcome.MADE;
      boolean lands = outcome == Outcome.MADE && call.join().isPresent();
      heard.add(
          new Heard(call, outcome, lands ? OptionalDouble.of(lateMs) : OptionalDouble.empty()));
    }
    return new CalledRun(caller.drill(), heard);
  }

  private static List<String> german(CalledRun run) {
    return Wording.in(Tongue.GERMAN, run::words);
  }

  @ParameterizedTest
  @CsvSource({"MADE, 5", "MADE, 150", "MISSED, -150", "UNHEARD, 5", "UNPLAYED, 150"})
  void everySentenceIsGermanAndThereAreAsMany(Outcome often, double lateMs) {
    CalledRun run = run(often, lateMs);
    assertThat(german(run)).hasSameSizeAs(run.words());
    for (String said : german(run)) {
      // "up on A" names a string, which is the same in German
      assertThat(EnglishWords.in(said.replaceAll(" A\\b", ""))).as(said).isEmpty();
      assertThat(said).endsWith(".").doesNotContain("{", "  ", "..");
    }
  }

  @Test
  void theCallThatCostMostIsSaidAsItWasCalledAndKeptInEnglish() {
    CalledRun run = run(Outcome.MISSED, 150);
    CalledRun.Cost cost = run.costliest().orElseThrow();
    assertThat(Wording.in(Tongue.GERMAN, () -> run.costliest().orElseThrow())).isEqualTo(cost);
    assertThat(cost.words()).matches("(up|down) on .*");
    assertThat(run.words()).last().asString().startsWith("\"" + cost.words() + "\" cost most: ");
    assertThat(german(run)).last().asString().matches("„(hinauf|hinunter) auf .*“ fiel am .*");
  }
}
