package neckway.cli.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A page as it was printed, read back as a player reads it: what stands in one column is of one
 * step.
 */
final class PrintedPage {
  /**
   * A step as printed; what is not there is empty.
   *
   * @param string its row from the top, from 1, which is the string's number
   * @param planned the row of a planned place that stands beside it, and its sign
   */
  record Printed(
      int string,
      String sign,
      String planned,
      String landing,
      String heard,
      String stray,
      String ms) {}

  private static final Pattern STRING_ROW = Pattern.compile("^ {1,4}[A-G][b#]? [|-].*[|-]$");
  private static final Pattern TEXT_ROW = Pattern.compile("^ *(shift|heard|stray|ms) ");
  private static final Pattern ON_STRING = Pattern.compile("[^-|]+");
  private static final Pattern IN_TEXT = Pattern.compile("\\S+");
  private static final int MARGIN = 6;

  private PrintedPage() {}

  static List<Printed> read(String page) {
    List<Printed> steps = new ArrayList<>();
    for (String block : page.split("\\R\\R")) {
      if (block.lines().anyMatch(line -> STRING_ROW.matcher(line).matches())) {
        steps.addAll(block(block.lines().toList()));
      }
    }
    return steps;
  }

  private record Sign(int string, String text) {}

  private static List<Printed> block(List<String> lines) {
    Map<Integer, Sign> signs = new TreeMap<>();
    Map<Integer, Sign> besides = new HashMap<>();
    Map<String, Map<Integer, String>> texts = new HashMap<>();
    int string = 0;
    for (String line : lines) {
      Matcher name = TEXT_ROW.matcher(line);
      if (STRING_ROW.matcher(line).matches()) {
        string++;
        for (Map.Entry<Integer, String> entry : byColumn(ON_STRING, line).entrySet()) {
          boolean planned = entry.getValue().matches(":\\d+");
          Sign sign = new Sign(string, entry.getValue());
          if ((planned ? besides : signs).put(entry.getKey(), sign) != null) {
            throw new IllegalStateException("two steps in one column: " + line);
          }
        }
      } else if (name.find()) {
        texts.put(name.group(1), byColumn(IN_TEXT, line));
      } else if (string > 0) {
        throw new IllegalStateException("no row of a page: " + line);
      }
    }
    List<Printed> steps = new ArrayList<>();
    signs.forEach(
        (column, sign) ->
            steps.add(
                new Printed(
                    sign.string(),
                    sign.text(),
                    planned(besides.remove(column)),
                    taken(texts, "shift", column),
                    taken(texts, "heard", column),
                    taken(texts, "stray", column),
                    taken(texts, "ms", column))));
    if (!besides.isEmpty()) {
      throw new IllegalStateException("planned places of no step: " + besides);
    }
    texts.forEach(
        (row, left) -> {
          if (!left.isEmpty()) {
            throw new IllegalStateException(row + " under no step: " + left);
          }
        });
    return steps;
  }

  private static String planned(Sign beside) {
    return beside == null ? "" : beside.string() + beside.text();
  }

  private static String taken(Map<String, Map<Integer, String>> texts, String row, int column) {
    String text =
        texts.getOrDefault(row, Map.of()).isEmpty() ? null : texts.get(row).remove(column);
    return text == null ? "" : text;
  }

  /** Entries by the column in which they end. */
  private static Map<Integer, String> byColumn(Pattern entry, String line) {
    Map<Integer, String> entries = new HashMap<>();
    Matcher matcher = entry.matcher(line);
    matcher.region(MARGIN, line.length());
    while (matcher.find()) {
      entries.put(matcher.end(), matcher.group());
    }
    return entries;
  }
}
