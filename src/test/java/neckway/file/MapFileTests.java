package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.NeckMap;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import org.junit.jupiter.api.Test;

class MapFileTests {
  private static Neck neck(String key) {
    return new Neck(Key.parse(key), Tuning.STANDARD, 22);
  }

  /** The example of the format: the first note of the major shape and the join on string 3. */
  @Test
  void theExampleOfTheFormat() {
    JsonNode json =
        MapFile.toJson(
            NeckMap.ofChain(
                neck("A major"), List.of(Shape.MAJOR, Shape.DORIAN), OptionalInt.of(5)));

    assertThat(json.get("format").textValue()).isEqualTo("neckway-map/1");
    assertThat(json.get("key").textValue()).isEqualTo("A major");
    assertThat(json.get("tuning")).hasSize(6);
    assertThat(json.get("frets").intValue()).isEqualTo(22);
    JsonNode major = json.get("shapes").get(0);
    assertThat(major.get("name").textValue()).isEqualTo("major");
    assertThat(major.get("number").intValue()).isEqualTo(1);
    assertThat(json.get("shapes").get(1).get("number").intValue()).isEqualTo(2);
    assertThat(json.get("tuningName").textValue()).isEqualTo("standard");
    assertThat(major.get("start").intValue()).isEqualTo(5);
    assertThat(major.get("notes")).hasSize(12);
    assertThat(major.get("notes").get(0))
        .hasToString(
            "{\"string\":6,\"fret\":5,\"finger\":2,\"midi\":45,\"name\":\"A2\",\"degree\":\"1\"}");
    JsonNode join = json.get("joins").get(0);
    assertThat(join.toString())
        .startsWith(
            "{\"lower\":\"major\",\"upper\":\"dorian\",\"string\":3,\"finger\":1,\"from\":4,"
                + "\"to\":6,\"travel\":2,\"rank\":1,");
    assertThat(join.get("why").textValue()).isNotBlank();
  }

  @Test
  void allFiveShapesWithTheJoinsOfAllFivePairs() {
    JsonNode json = MapFile.toJson(NeckMap.ofAll(neck("A major")));

    List<String> placed = new ArrayList<>();
    for (JsonNode shape : json.get("shapes")) {
      placed.add(shape.get("name").textValue() + " " + shape.get("start").intValue());
    }
    assertThat(placed)
        .containsExactly("major 5", "dorian 7", "phrygian 9", "mixolydian 12", "minor 2");
    for (Shape lower : Shape.values()) {
      long strings =
          json.get("joins").findParents("lower").stream()
              .filter(join -> join.get("lower").textValue().equals(lower.word()))
              .map(join -> join.get("string").intValue())
              .distinct()
              .count();
      assertThat(strings).isEqualTo(6);
    }
  }

  @Test
  void theRelativeMinorHasTheSameNotes() {
    assertThat(MapFile.toJson(NeckMap.ofAll(neck("F# minor"))).get("shapes"))
        .isEqualTo(MapFile.toJson(NeckMap.ofAll(neck("A major"))).get("shapes"));
  }

  @Test
  void flatKeysAreWrittenWithFlats() {
    assertThat(
            MapFile.toJson(NeckMap.ofAll(neck("Bb major"))).get("shapes").findValuesAsText("name"))
        .noneMatch(name -> name.contains("#"))
        .contains("Bb2");
  }
}
