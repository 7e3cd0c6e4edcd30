package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Where the measured round trip of each pair of devices is kept: a small JSON in the folder that
 * the platform gives programs for their settings.
 */
public final class RoundTripFile {
  private static final String FORMAT = "neckway-round-trip/1";

  private final Path path;

  /** The file at its usual place. */
  public RoundTripFile() {
    this(settingsFolder().resolve("round-trip.json"));
  }

  /** The file at another place. */
  public RoundTripFile(Path path) {
    this.path = path;
  }

  /**
   * One measured pair.
   *
   * @param input name of the input device
   * @param output name of the output device
   * @param sampleRate frames a second
   * @param extraMs what the pair adds to the offset that it reports, milliseconds
   * @param spreadMs spread of the single clicks, milliseconds
   * @param clicks how many were heard
   */
  public record Pair(
      String input, String output, int sampleRate, double extraMs, double spreadMs, int clicks) {
    private boolean same(JsonNode node) {
      return node.path("input").asText().equals(input)
          && node.path("output").asText().equals(output)
          && node.path("sampleRate").asInt() == sampleRate;
    }
  }

  /** Where it is. */
  public Path path() {
    return path;
  }

  /** What was measured for a pair of devices at a rate. A file that cannot be read has none. */
  public Optional<Pair> find(String input, String output, int sampleRate) {
    Pair wanted = new Pair(input, output, sampleRate, 0, 0, 0);
    for (JsonNode node : pairs()) {
      if (wanted.same(node) && node.path("extraMs").isNumber()) {
        return Optional.of(
            new Pair(
                input,
                output,
                sampleRate,
                node.path("extraMs").asDouble(),
                node.path("spreadMs").asDouble(),
                node.path("clicks").asInt()));
      }
    }
    return Optional.empty();
  }

  /**
   * Keeps a pair in place of an older measurement of it.
   *
   * @throws BadInput where the file cannot be written
   */
  public void keep(Pair pair) {
    ObjectNode root = JsonNodeFactory.instance.objectNode().put("format", FORMAT);
    ArrayNode kept = root.putArray("pairs");
    for (JsonNode node : pairs()) {
      if (!pair.same(node)) {
        kept.add(node);
      }
    }
    kept.addObject()
        .put("input", pair.input())
        .put("output", pair.output())
        .put("sampleRate", pair.sampleRate())
        .put("extraMs", pair.extraMs())
        .put("spreadMs", pair.spreadMs())
        .put("clicks", pair.clicks());
    try {
      Files.createDirectories(path.getParent());
    } catch (IOException e) {
      throw new BadInput(Wording.of("files.folderNotMade", path.getParent(), e.getMessage()), e);
    }
    JsonFile.write(path, root);
  }

  private JsonNode pairs() {
    try {
      return Files.exists(path)
          ? JsonFile.read(path).path("pairs")
          : JsonNodeFactory.instance.arrayNode();
    } catch (BadInput e) {
      return JsonNodeFactory.instance.arrayNode();
    }
  }

  /** The platform's folder for a program's settings, with ours in it; it need not exist yet. */
  static Path settingsFolder() {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    Path home = Path.of(System.getProperty("user.home", "."));
    if (system.contains("win")) {
      String data = System.getenv("APPDATA");
      return (data == null ? home : Path.of(data)).resolve("Neckway");
    }
    if (system.contains("mac")) {
      return home.resolve("Library").resolve("Application Support").resolve("Neckway");
    }
    String config = System.getenv("XDG_CONFIG_HOME");
    boolean given = config != null && !config.isBlank();
    return (given ? Path.of(config) : home.resolve(".config")).resolve("neckway");
  }
}
