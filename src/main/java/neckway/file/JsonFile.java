package neckway.file;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.neck.BadInput;
import neckway.words.Wording;

/** JSON texts to and from files. */
public final class JsonFile {
  private static final long MOST_BYTES = 64L << 20;
  private static final ObjectMapper MAPPER =
      new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

  private JsonFile() {}

  /**
   * Reads a file.
   *
   * @throws BadInput if it is missing, cannot be read or is not JSON; the line says where
   */
  public static JsonNode read(Path file) {
    try {
      InputFile.check(file);
      if (Files.size(file) > MOST_BYTES) {
        throw new BadInput(Wording.of("files.json.long", file));
      }
      return parse(Files.readAllBytes(file), file.toString());
    } catch (IOException e) {
      throw new BadInput(Wording.of("files.json.unread", file, e.getMessage()), e);
    }
  }

  /**
   * Reads a text.
   *
   * @param where what a complaint begins with
   * @throws BadInput if it is not JSON
   */
  public static JsonNode parse(byte[] text, String where) {
    try {
      JsonNode node = MAPPER.readTree(text);
      if (node == null || node.isMissingNode()) {
        throw new BadInput(Wording.of("files.json.empty", where));
      }
      return node;
    } catch (JsonProcessingException e) {
      throw new BadInput(fault(e, where), e);
    } catch (IOException e) {
      throw new BadInput(Wording.of("files.json.none", where), e);
    }
  }

  private static String fault(JsonProcessingException why, String where) {
    JsonLocation at = why.getLocation();
    if (at == null) {
      return Wording.of("files.json.noPlace", where);
    }
    String key = why instanceof JsonEOFException ? "files.json.early" : "files.json.noneThere";
    return Wording.of(key, where, at.getLineNr(), at.getColumnNr());
  }

  /** A readable text of a node, ending in a line feed whatever the system. */
  public static String text(JsonNode node) {
    DefaultIndenter lines = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(lines);
    ObjectWriter writer = MAPPER.writer(printer);
    try {
      return writer.writeValueAsString(node) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Writes a node beside its target and moves it into place.
   *
   * @throws BadInput if it cannot be written
   */
  public static void write(Path file, JsonNode node) {
    AtomicFile.write(file, text(node).getBytes(StandardCharsets.UTF_8));
  }
}
