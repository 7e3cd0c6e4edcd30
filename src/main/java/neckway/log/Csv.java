package neckway.log;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** A table as RFC 4180 has it; what is not known is left empty. */
final class Csv {
  private final Writer writer;

  Csv(Writer writer, String heading) {
    this.writer = writer;
    line(heading);
  }

  void row(Object... values) {
    line(Arrays.stream(values).map(Csv::shown).map(Csv::quoted).collect(Collectors.joining(",")));
  }

  private static String shown(Object value) {
    if (value instanceof OptionalDouble number) {
      return number.isPresent() ? shown((Object) number.getAsDouble()) : "";
    }
    if (value instanceof OptionalInt number) {
      return number.isPresent() ? Integer.toString(number.getAsInt()) : "";
    }
    if (value instanceof Optional<?> any) {
      return any.map(Csv::shown).orElse("");
    }
    if (value instanceof Double number && number == Math.rint(number) && Math.abs(number) < 1e9) {
      return Long.toString(number.longValue());
    }
    return String.valueOf(value);
  }

  private static String quoted(String text) {
    return text.matches("(?s).*[\",\r\n].*") ? '"' + text.replace("\"", "\"\"") + '"' : text;
  }

  private void line(String text) {
    try {
      writer.write(text + "\r\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void flush() {
    try {
      writer.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
