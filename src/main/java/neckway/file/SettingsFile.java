package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import neckway.drill.PlayableDrill;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * What a player has set, kept in a small JSON file in the folder that the platform gives programs
 * for that. A file that cannot be read costs nobody the program: it is kept aside under another
 * name, one line says so, and everything is as usual.
 *
 * <p>Values of the wrong kind or out of bounds count as left out. Not for use by several threads.
 */
public final class SettingsFile {
  /** The format's name and version. */
  public static final String FORMAT = "neckway-settings/1";

  private static final int MOST_BROKEN_KEPT = 99;

  private final Path path;
  private final ObjectNode root;
  private final Optional<String> complaint;

  /** What was put here since it was read: another window's values stay. */
  private final Set<String> changed = new LinkedHashSet<>();

  private SettingsFile(Path path, ObjectNode root, Optional<String> complaint) {
    this.path = path;
    this.root = root;
    this.complaint = complaint;
  }

  /** The settings at their usual place. */
  public static SettingsFile usual() {
    return at(folder().resolve("settings.json"));
  }

  /** The folder where settings, guitars, devices and drills are kept; it need not exist yet. */
  public static Path folder() {
    return RoundTripFile.settingsFolder();
  }

  /** The settings in a file, which need not exist yet. */
  public static SettingsFile at(Path path) {
    if (!Files.exists(path)) {
      return new SettingsFile(path, empty(), Optional.empty());
    }
    try {
      JsonNode node = JsonFile.read(path);
      Fields fields = Fields.of(node, path.toString());
      if (!fields.text("format").equals(Optional.of(FORMAT))) {
        throw fields.bad("format", Wording.of("files.format.settings", FORMAT));
      }
      return new SettingsFile(path, (ObjectNode) node, Optional.empty());
    } catch (BadInput e) {
      return new SettingsFile(path, empty(), Optional.of(setAside(path, e)));
    }
  }

  private static ObjectNode empty() {
    return JsonNodeFactory.instance.objectNode().put("format", FORMAT);
  }

  private static String setAside(Path path, BadInput why) {
    for (int number = 1; number <= MOST_BROKEN_KEPT; number++) {
      Path aside = path.resolveSibling(path.getFileName() + ".broken-" + number);
      if (!Files.exists(aside)) {
        try {
          Files.move(path, aside);
          return Wording.of("files.settings.setAside", why.getMessage(), aside);
        } catch (IOException e) {
          break;
        }
      }
    }
    return Wording.of("files.settings.usual", why.getMessage());
  }

  /** Where it is. */
  public Path path() {
    return path;
  }

  /** One line where the file could not be read, for the player. */
  public Optional<String> complaint() {
    return complaint;
  }

  /** Whether nothing was ever kept; settings that could not be read were. */
  public boolean isFirst() {
    return !Files.exists(path) && complaint().isEmpty();
  }

  /** A text. */
  public Optional<String> text(String name) {
    return Optional.of(root.path(name)).filter(JsonNode::isTextual).map(JsonNode::textValue);
  }

  /** Yes or no. */
  public boolean flag(String name, boolean usual) {
    return root.path(name).isBoolean() ? root.path(name).booleanValue() : usual;
  }

  /** A whole number within bounds. */
  public OptionalInt whole(String name, int least, int most) {
    JsonNode value = root.path(name);
    boolean good = value.isInt() && value.intValue() >= least && value.intValue() <= most;
    return good ? OptionalInt.of(value.intValue()) : OptionalInt.empty();
  }

  /** A number within bounds. */
  public OptionalDouble number(String name, double least, double most) {
    JsonNode value = root.path(name);
    boolean good = value.isNumber() && value.doubleValue() >= least && value.doubleValue() <= most;
    return good ? OptionalDouble.of(value.doubleValue()) : OptionalDouble.empty();
  }

  /** The drill that was chosen last, if one is kept and can still be read. */
  public Optional<PlayableDrill> drill(String name) {
    try {
      return root.path(name).isObject()
          ? Optional.of(DrillFile.fromJson(root.path(name), path.toString()))
          : Optional.empty();
    } catch (BadInput e) {
      return Optional.empty();
    }
  }

  public void put(String name, String value) {
    put(name, JsonNodeFactory.instance.textNode(value));
  }

  public void put(String name, boolean value) {
    put(name, JsonNodeFactory.instance.booleanNode(value));
  }

  public void put(String name, int value) {
    put(name, JsonNodeFactory.instance.numberNode(value));
  }

  public void put(String name, double value) {
    put(name, JsonNodeFactory.instance.numberNode(value));
  }

  public void put(String name, PlayableDrill drill) {
    put(name, DrillFile.toJson(drill));
  }

  private void put(String name, JsonNode value) {
    if (!value.equals(root.get(name))) {
      root.set(name, value);
      changed.add(name);
    }
  }

  /**
   * Writes everything that was put, beside the file, and moves it into place. What another window
   * has written meanwhile stays, but for the values that were put here.
   *
   * @throws BadInput if it cannot be written
   */
  public void save() {
    try {
      Files.createDirectories(path.toAbsolutePath().getParent());
    } catch (IOException e) {
      throw new BadInput(Wording.of("files.folderNotMade", path.getParent(), e.getMessage()), e);
    }
    SettingsFile now = at(path);
    if (now.complaint.isEmpty() && Files.exists(path)) {
      changed.forEach(name -> now.root.set(name, root.get(name)));
      root.setAll(now.root);
    }
    JsonFile.write(path, root);
  }
}
