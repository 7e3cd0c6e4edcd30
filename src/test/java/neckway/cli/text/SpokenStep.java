package neckway.cli.text;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A step as the window says it, read back.
 *
 * @param sign its fret with the marks that a page in characters would have
 */
record SpokenStep(int number, String sign, String heard, String stray, String ms) {
  private static final Pattern SAID =
      Pattern.compile(
          "Note (?<number>\\d+): \\w+ string, fret (?<fret>\\d+), finger \\d\\. "
              + "(?:(?<verdict>Not reached|Right|Left out|Played; what it was is not known)"
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
    String sign =
        verdict == null
            ? fret + "x"
            : switch (verdict) {
              case "Not reached" -> "." + fret;
              case "Right" -> fret;
              case "Left out" -> "(" + fret + ")";
              default -> fret + "?";
            };
    return new SpokenStep(
        Integer.parseInt(said.group("number")) - 1,
        said.group("twice") == null ? sign : sign + "\"",
        said.group("heard") == null ? "" : said.group("heard"),
        stray(said.group("strays")),
        ms(said));
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
