package neckway.folder;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import neckway.file.AtomicFile;
import neckway.file.JsonFile;
import neckway.neck.BadInput;

/** The table of a folder: a line a recording, as comma separated values and as JSON. */
final class TakeTable {
  /** The format's name and version. */
  static final String FORMAT = "neckway-takes/1";

  private static final String CSV = "table.csv";
  private static final String JSON = "table.json";

  private final Path folder;

  TakeTable(Path folder) {
    this.folder = folder;
  }

  /** The rows of an earlier call that were read, by their digests. */
  Map<String, TakeRow> earlier() {
    Map<String, TakeRow> rows = new HashMap<>();
    Path file = folder.resolve(JSON);
    if (Files.isRegularFile(file)) {
      try {
        for (JsonNode each : JsonFile.read(file).path("takes")) {
          TakeRow row = TakeRow.fromJson(each);
          if (row.isRead()) {
            rows.put(row.digest(), row);
          }
        }
      } catch (BadInput unreadable) {
        return Map.of();
      }
    }
    return rows;
  }

  /** Writes both. */
  void write(List<TakeRow> rows) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    ArrayNode takes = json.putArray("takes");
    rows.forEach(row -> takes.add(row.toJson()));
    AtomicFile.write(folder.resolve(CSV), csv(rows).getBytes(StandardCharsets.UTF_8));
    JsonFile.write(folder.resolve(JSON), json);
  }

  private static String csv(List<TakeRow> rows) {
    CsvSchema.Builder columns = CsvSchema.builder();
    TakeRow.COLUMNS.forEach(columns::addColumn);
    ArrayNode cells = JsonNodeFactory.instance.arrayNode();
    rows.forEach(row -> cells.add(row.cells()));
    try {
      return new CsvMapper()
          .writer(columns.setUseHeader(true).build().withLineSeparator("\n"))
          .writeValueAsString(cells);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
