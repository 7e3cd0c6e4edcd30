package neckway.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The named colours of the style sheet, light and dark, held against what eyes need. */
class ColourTests {
  private static final Path SHEET = Path.of("src/main/resources/neckway/desk/desk.css");
  private static final Pattern NAMED = Pattern.compile("(-[a-z]+): #([0-9a-f]{6});");

  /** WCAG 2.1, success criterion 1.4.3: text against its background, at least 4.5 to 1. */
  private static final double LEAST_CONTRAST = 4.5;

  /** Two colours are told apart at a glance beyond some 20 units of CIE 1976 difference. */
  private static final double LEAST_DIFFERENCE = 25;

  private static Map<String, Integer> colours(boolean dark) throws IOException {
    String sheet = Files.readString(SHEET);
    int second = sheet.indexOf(".desk.dark {");
    Map<String, Integer> colours = new HashMap<>(read(sheet.substring(0, second)));
    if (dark) {
      colours.putAll(read(sheet.substring(second, sheet.indexOf('}', second))));
    }
    return colours;
  }

  private static Map<String, Integer> read(String part) {
    Map<String, Integer> colours = new HashMap<>();
    Matcher matcher = NAMED.matcher(part);
    while (matcher.find()) {
      colours.put(matcher.group(1), Integer.parseInt(matcher.group(2), 16));
    }
    return colours;
  }

  @Test
  void textStandsOutInLightAndDark() throws IOException {
    for (boolean dark : new boolean[] {false, true}) {
      Map<String, Integer> colours = colours(dark);
      for (String text : List.of("-ink", "-soft", "-lower", "-upper", "-alarm", "-focus")) {
        for (String under : List.of("-paper", "-raised", "-field")) {
          assertThat(contrast(colours.get(text), colours.get(under)))
              .as(text + " on " + under + (dark ? ", dark" : ", light"))
              .isGreaterThanOrEqualTo(LEAST_CONTRAST);
        }
      }
    }
  }

  @Test
  void theTwoShapesAreToldApartByColourBlindEyes() throws IOException {
    for (boolean dark : new boolean[] {false, true}) {
      Map<String, Integer> colours = colours(dark);
      for (double[][] eye : List.of(Eyes.PROTANOPIA, Eyes.DEUTERANOPIA)) {
        double[] lower = lab(Eyes.seen(Eyes.linear(colours.get("-lower")), eye));
        double[] upper = lab(Eyes.seen(Eyes.linear(colours.get("-upper")), eye));
        assertThat(
                Math.hypot(
                    Math.hypot(lower[0] - upper[0], lower[1] - upper[1]), lower[2] - upper[2]))
            .isGreaterThan(LEAST_DIFFERENCE);
      }
    }
  }

  /** The measures themselves: black on white is 21 to 1, and the difference of the two is 100. */
  @Test
  void theMeasuresAreThoseOfTheStandards() {
    assertThat(contrast(0, 0xffffff)).isBetween(20.99, 21.01);
    assertThat(lab(Eyes.linear(0xffffff))[0] - lab(Eyes.linear(0))[0]).isBetween(99.9, 100.1);
    assertThat(Math.abs(lab(Eyes.seen(Eyes.linear(0xffffff), Eyes.DEUTERANOPIA))[1])).isLessThan(1);
  }

  private static double contrast(int one, int other) {
    double a = luminance(one) + 0.05;
    double b = luminance(other) + 0.05;
    return Math.max(a, b) / Math.min(a, b);
  }

  private static double luminance(int rgb) {
    double[] c = Eyes.linear(rgb);
    return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
  }

  /** CIE L*a*b* of linear sRGB under D65. */
  private static double[] lab(double[] c) {
    double x = f((0.4124 * c[0] + 0.3576 * c[1] + 0.1805 * c[2]) / 0.9505);
    double y = f(0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2]);
    double z = f((0.0193 * c[0] + 0.1192 * c[1] + 0.9505 * c[2]) / 1.089);
    return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
  }

  private static double f(double t) {
    return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
  }
}
