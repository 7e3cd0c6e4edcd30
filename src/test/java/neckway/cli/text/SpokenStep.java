package neckway.cli.text;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A step as the window says it, read back.
 *
 * @param string the number of the one that it is said to be played on
 * @param planned the sign of the planned place, where it was played on another string
 * @param sign its fret with the marks that a page in characters would have
 */
record SpokenStep(
    int number, int string, String sign, String planned, String heard, String stray, String ms) {
  private static final List<String> ORDINALS =
      List.of("first", "second", "third", "fourth", "fifth", "sixth");

  private static final Pattern SAID =
      Pattern.compile(
          "Note (?<number>\\d+): (?<string>\\w+) string, fret (?<fret>\\d+), finger \\d\\. "
              + "(?:(?<verdict>Not reached|Right|Left out|Played; what it was is not known"
              + "|Right, but not played there; where is not known)"
              + "|Right, but played on the (?<elsewhere>\\w+) string at fret (?<elsewhereFret>\\d+)"
              + "|Wrong: (?:fret )?(?<heard>\\S+) was heard)\\. "
              + "(?<twice>Struck twice\\. )?"
              + "(?:Stray beside it: (?<strays>[^.]+)\\. )?"
              + "(?:On the beat \\((?<on>[+\u2212]?\\d+) ms\\)\\."
              + "|(?<early>\\d+) ms early\\."
              + "|(?:The shift landed )?(?<late>\\d+) ms late\\."
              + "|(?<unsure>When it began cannot be told exactly\\.))?");

  static SpokenStep read(String words) {
    Matcher said = SAID.matcher(words);
    if (!said.matches()) {
      throw new IllegalStateException(words);
    }
    String verdict = said.group("verdict");
    String fret = said.group("fret");
    boolean elsewhere = said.group("elsewhere") != null;
    String sign = elsewhere ? said.group("elsewhereFret") : sign(verdict, fret);
    String string = said.group(elsewhere ? "elsewhere" : "string");
    return new SpokenStep(
        Integer.parseInt(said.group("number")) - 1,
        1 + ORDINALS.indexOf(string),
        said.group("twice") == null ? sign : sign + "\"",
        elsewhere ? ":" + fret : "",
        said.group("heard") == null ? "" : said.group("heard"),
        stray(said.group("strays")),
        ms(said));
  }

  private static String sign(String verdict, String fret) {
    if (verdict == null) {
      return fret + "x";
    }
    return switch (verdict) {
      case "Not reached" -> "." + fret;
      case "Right" -> fret;
      case "Left out" -> "(" + fret + ")";
      case "Played; what it was is not known" -> fret + "?";
      default -> ":" + fret + "?";
    };
  }

  private static String stray(String names) {
    if (names == null) {
      return "";
    }
    String[] each = names.split(", ");
    return each[0] + (each.length > 1 ? "+" + (each.length - 1) : "");
  }

  private static String ms(Matcher said) {
    if (said.group("on") != null) {
      return said.group("on").replace('\u2212', '-');
    }
    if (said.group("early") != null) {
      return "-" + said.group("early");
    }
    if (said.group("late") != null) {
      return "+" + said.group("late");
    }
    return said.group("unsure") == null ? "" : "?";
  }
}
