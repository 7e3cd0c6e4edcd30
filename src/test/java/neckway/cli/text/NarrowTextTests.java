package neckway.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import neckway.neck.GuitarString;
import neckway.neck.Pitch;
import neckway.neck.Tuning;
import neckway.page.PagedTake;
import neckway.string.AlikeStrings;
import neckway.string.GuitarProfile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is printed keeps to the columns that there are. */
class NarrowTextTests {
  private static final GuitarProfile GUITAR = AlikeStrings.of(-12, 80e-6, 0.05, 12);

  private static String tuned(Tuning tuning, double hz, int width) {
    StringWriter out = new StringWriter();
    TunerLine line = new TunerLine(new PrintWriter(out), tuning, true, width);
    line.tone(1, hz);
    line.tone(1.1, hz);
    return TerminalScreen.showing(out.toString(), width).text();
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 50, 70, 79, 80, 100})
  void theTunerKeepsToOneLineAndAlwaysHasItsNeedle(int width) {
    for (int midi = 28; midi < 80; midi++) {
      String line = tuned(Tuning.STANDARD, Pitch.hz(midi + 0.3), width);
      assertThat(line).doesNotContain("\n").contains("+30.0 cents").contains("#").contains("|");
    }
  }

  @Test
  void aWideTunerLineHasStringAndFrequency() {
    assertThat(tuned(Tuning.STANDARD, 109.5, 90)).contains("109.50 Hz").contains("string 5 (A2)");
    assertThat(tuned(Tuning.STANDARD, 109.5, 70)).contains("string 5 (A2)").doesNotContain("Hz");
  }

  /** As it is tuned: the flat of a tuning is not turned into a sharp. */
  @Test
  void theTunerNamesStringsAsTheyAreTuned() {
    Tuning half = Tuning.parse("Eb2 Ab2 Db3 Gb3 Bb3 Eb4");
    assertThat(tuned(half, Pitch.hz(half.openMidi(new GuitarString(6))), 90))
        .contains("string 6 (Eb2)");
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 60, 79, 80, 120})
  void aProfileIsATableOrWordsAndNeverTooWide(int width) {
    List<String> lines = ProfileTable.lines(GUITAR, Tuning.STANDARD, width);
    assertThat(lines).allMatch(line -> line.length() <= width);
    String all = String.join(" ", lines).replaceAll("\\s+", " ");
    assertThat(all).contains("6 E2").contains("-12 cents").contains("80.0 +- 5 %");
    assertThat(all.contains("plucks from the next higher string")).isEqualTo(width >= 80);
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 55, 80})
  void aPageKeepsToItsColumnsAndReadsBackTheSame(int width) {
    for (String name : List.of("missed-shift", "three-slips", "loud-room")) {
      PagedTake take = PagedTake.recorded(name);
      assertThat(PrintedPage.read(printed(take, width)))
          .as(name)
          .isEqualTo(PrintedPage.read(printed(take, 200)));
      assertThat(printed(take, width).lines()).allMatch(line -> line.length() <= width);
    }
  }

  private static String printed(PagedTake take, int width) {
    StringWriter out = new StringWriter();
    new Page(take.drill(), take.review(), width).print(new PrintWriter(out, true));
    return out.toString();
  }
}
