package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.drill.Drills;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Route;
import neckway.player.plan.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MistakesFileTests {
  private static final Route ROUTE = Drills.example().route();

  private static List<Mistake> read(String json) {
    byte[] text = json.getBytes(StandardCharsets.UTF_8);
    return MistakesFile.fromJson(JsonFile.parse(text, "m.json"), "m.json", ROUTE);
  }

  @Test
  void everyKindIsRead() {
    assertThat(
            read(
                """
                [{"kind": "wrong", "step": 4, "midi": 53}, {"kind": "skip", "step": 7},
                 {"kind": "repeat", "step": 8}, {"kind": "extra", "step": 9},
                 {"kind": "late", "step": 10, "ms": 120},
                 {"kind": "shift", "round": 0, "direction": "up", "string": 5},
                 {"kind": "shift", "round": 0, "direction": "down", "string": null}]
                """))
        .containsExactly(
            new Mistake.Slip(Mistake.Kind.WRONG, 4, OptionalInt.of(53)),
            new Mistake.Slip(Mistake.Kind.SKIP, 7, OptionalInt.empty()),
            new Mistake.Slip(Mistake.Kind.REPEAT, 8, OptionalInt.empty()),
            new Mistake.Slip(Mistake.Kind.EXTRA, 9, OptionalInt.empty()),
            new Mistake.Late(10, 120),
            new Mistake.ShiftElsewhere(
                0, Direction.UP, OptionalInt.empty(), Optional.of(new GuitarString(5))),
            new Mistake.ShiftElsewhere(0, Direction.DOWN, OptionalInt.empty(), Optional.empty()));
  }

  @Test
  void anEmptyListIsNoMistakes() {
    assertThat(read("[]")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | should be a list",
        "[3] | entry 1",
        "[{\"kind\": \"skip\", \"step\": 1}, {\"step\": 7}] | entry 2: kind: is missing",
        "[{\"kind\": \"slip\", \"step\": 7}] | entry 1: kind: \"slip\" should be wrong",
        "[{\"kind\": \"skip\", \"step\": 25}] | entry 1: step: 25",
        "[{\"kind\": \"skip\"}] | entry 1: step: is missing",
        "[{\"kind\": \"wrong\", \"step\": 0, \"midi\": 43}] | 43 is the right note",
        "[{\"kind\": \"late\", \"step\": 0}] | entry 1: ms: is missing",
        "[{\"kind\": \"shift\", \"direction\": \"left\", \"string\": 2}] | should be up or down",
        "[{\"kind\": \"shift\", \"direction\": \"up\"}] | entry 1: string: is missing",
        "[{\"kind\": \"shift\", \"direction\": \"up\", \"string\": 9}] | entry 1: string: 9",
        "[{\"kind\": \"shift\", \"round\": 1, \"direction\": \"up\", \"string\": 2}] | round: 1"
      })
  void whatCannotBeUsedIsNamedWithItsEntry(String json, String said) {
    assertThatThrownBy(() -> read(json))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith("m.json: ")
        .hasMessageContaining(said);
  }
}
