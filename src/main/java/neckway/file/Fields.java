package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Reads the fields of a JSON object, checks them, and names the one that is wrong. A field that is
 * missing or null is left out.
 */
public final class Fields {
  private final JsonNode node;
  private final String where;
  private final String path;

  private Fields(JsonNode node, String where, String path) {
    this.node = node;
    this.where = where;
    this.path = path;
  }

  /**
   * @param where what a complaint begins with: the file's name
   * @throws BadInput if it is no object
   */
  public static Fields of(JsonNode node, String where) {
    if (!node.isObject()) {
      throw new BadInput(Wording.of("files.json.noObject", where));
    }
    return new Fields(node, where, "");
  }

  /** A complaint about a field. */
  public BadInput bad(String name, String what) {
    return new BadInput(where + ": " + path + name + ": " + what);
  }

  /** A complaint about a field that has to be there. */
  public BadInput missing(String name, String example) {
    return bad(name, Wording.of("files.field.missing", name, example));
  }

  /** An object within, read as if empty where left out. */
  public Fields object(String name) {
    JsonNode inner = node.path(name);
    if (!absent(inner) && !inner.isObject()) {
      throw bad(name, Wording.of("files.field.object", shown(inner)));
    }
    return new Fields(inner, where, path + name + ".");
  }

  /** A text. */
  public Optional<String> text(String name) {
    JsonNode value = node.path(name);
    if (absent(value)) {
      return Optional.empty();
    }
    if (!value.isTextual()) {
      throw bad(name, Wording.of("files.field.text", shown(value)));
    }
    return Optional.of(value.textValue());
  }

  /** A whole number within bounds. */
  public OptionalInt whole(String name, int least, int most) {
    JsonNode value = node.path(name);
    if (absent(value)) {
      return OptionalInt.empty();
    }
    boolean whole = value.isNumber() && value.doubleValue() == Math.rint(value.doubleValue());
    if (!whole || value.doubleValue() < least || value.doubleValue() > most) {
      throw bad(name, Wording.of("files.field.whole", shown(value), least, most));
    }
    return OptionalInt.of((int) value.doubleValue());
  }

  /** A number within bounds. */
  public OptionalDouble number(String name, double least, double most) {
    JsonNode value = node.path(name);
    if (absent(value)) {
      return OptionalDouble.empty();
    }
    if (!value.isNumber() || !(value.doubleValue() >= least && value.doubleValue() <= most)) {
      throw bad(name, Wording.of("files.field.number", shown(value), plain(least), plain(most)));
    }
    return OptionalDouble.of(value.doubleValue());
  }

  /** A list of texts, empty where left out. */
  public List<String> texts(String name) {
    List<String> texts = new ArrayList<>();
    for (JsonNode value : list(name)) {
      if (!value.isTextual()) {
        throw bad(name, Wording.of("files.field.text", shown(value)));
      }
      texts.add(value.textValue());
    }
    return texts;
  }

  /** A list of texts, or one text alone; empty where left out. */
  public List<String> textOrTexts(String name) {
    return node.path(name).isTextual() ? List.of(node.path(name).textValue()) : texts(name);
  }

  /** A list of objects, empty where left out. */
  public <T> List<T> objects(String name, Function<Fields, T> read) {
    List<T> objects = new ArrayList<>();
    for (JsonNode value : list(name)) {
      String at = name + "[" + objects.size() + "]";
      if (!value.isObject()) {
        throw bad(at, Wording.of("files.field.object", shown(value)));
      }
      objects.add(read.apply(new Fields(value, where, path + at + ".")));
    }
    return objects;
  }

  /** Whether a field is there and not null. */
  public boolean has(String name) {
    return !absent(node.path(name));
  }

  /** Runs something that may complain, and puts file and field in front. */
  public <T> T read(String name, java.util.function.Supplier<T> reading) {
    try {
      return reading.get();
    } catch (BadInput e) {
      throw e.in(where + ": " + path + name);
    }
  }

  private JsonNode list(String name) {
    JsonNode list = node.path(name);
    if (!absent(list) && !list.isArray()) {
      throw bad(name, Wording.of("files.field.list", shown(list)));
    }
    return list;
  }

  private static boolean absent(JsonNode value) {
    return value.isMissingNode() || value.isNull();
  }

  private static String shown(JsonNode value) {
    String text = value.toString();
    return text.length() > 40 ? text.substring(0, 37) + "..." : text;
  }

  /** As it is written in JSON. */
  private static String plain(double bound) {
    return bound == Math.rint(bound) ? Long.toString((long) bound) : Double.toString(bound);
  }
}
