package neckway.file;

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
        throw new BadInput(file + ": is far too long for a JSON file; is it the right one?");
      }
      return parse(Files.readAllBytes(file), file.toString());
    } catch (IOException e) {
      throw new BadInput(file + ": cannot be read (" + e.getMessage() + "); name another file", e);
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
        throw new BadInput(where + ": is empty; it should hold a JSON object");
      }
      return node;
    } catch (JsonProcessingException e) {
      String at = "";
      if (e.getLocation() != null) {
        at = " line " + e.getLocation().getLineNr() + ", column " + e.getLocation().getColumnNr();
      }
      String what = e instanceof JsonEOFException ? " ends too early" : " is not JSON there";
      throw new BadInput(
          where + ":" + at + ":" + what + "; mend it there, or take another copy", e);
    } catch (IOException e) {
      throw new BadInput(where + ": is not JSON; take another copy", e);
    }
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
