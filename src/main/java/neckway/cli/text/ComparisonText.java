package neckway.cli.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import neckway.file.ComparisonFile;
import neckway.file.ComparisonFile.Named;
import neckway.neck.Direction;
import neckway.neck.Step;
import neckway.review.ReviewedShift;
import neckway.review.StepVerdict;
import neckway.review.Summary;

/** Takes of one drill side by side, a column each. */
public final class ComparisonText {
  private static final int FIRST_COLUMN = 22;
  private static final int NARROWEST = 10;
  private static final String NOTHING = "-";

  private final List<Named> takes;
  private final int width;
  private final List<String> lines = new ArrayList<>();

  private ComparisonText(List<Named> takes, int width) {
    this.takes = takes;
    this.width = width;
  }

  /**
   * The lines.
   *
   * @param takes of one drill
   * @param width columns of the terminal; more takes than fit beside each other go below
   */
  public static List<String> of(List<Named> takes, int width) {
    int beside = Math.max(1, (width - FIRST_COLUMN) / NARROWEST);
    List<String> lines = new ArrayList<>();
    lines.add(takes.get(0).read().drill().title());
    for (int from = 0; from < takes.size(); from += beside) {
      List<Named> some = takes.subList(from, Math.min(takes.size(), from + beside));
      lines.add("");
      lines.addAll(new ComparisonText(some, width).table());
    }
    return lines;
  }

  private List<String> table() {
    row("", take -> stem(take.file()));
    row("right", take -> summary(take).right() + " of " + summary(take).notes());
    row("wrong", take -> count(summary(take).wrong()));
    row("stray", take -> count(summary(take).extra()));
    row("struck twice", take -> count(summary(take).repeat()));
    row("left out", take -> count(summary(take).skipped()));
    row("steadiness", take -> ms(summary(take).offMsSpread(), "%.0f ms"));
    row("against the beat", take -> ms(summary(take).offMsMedian(), "%+.0f ms"));
    row("tempo", take -> String.format(Locale.ROOT, "%.0f", take.read().review().grid().tempo()));
    for (int i = 0; i < takes.get(0).read().review().shifts().size(); i++) {
      int index = i;
      row(shiftName(i), take -> shift(take.read().review().shifts().get(index)));
    }
    for (Step step : ComparisonFile.slipped(takes)) {
      row("note " + (step.index() + 1) + ", " + step.place(), take -> word(take, step));
    }
    return lines;
  }

  private static Summary summary(Named take) {
    return take.read().review().summary();
  }

  private static String count(int count) {
    return count == 0 ? NOTHING : Integer.toString(count);
  }

  private static String ms(OptionalDouble ms, String format) {
    return ms.isEmpty() ? NOTHING : String.format(Locale.ROOT, format, ms.getAsDouble());
  }

  private String shiftName(int index) {
    var planned = takes.get(0).read().review().shifts().get(index).planned();
    String way = planned.direction() == Direction.UP ? "up" : "down";
    return "shift " + (index + 1) + ", " + way + " on " + planned.string().number();
  }

  private static String shift(ReviewedShift shift) {
    String late = ms(shift.lateMs(), "%+.0f");
    return late.equals(NOTHING) ? shift.verdict().word() : shift.verdict().word() + " " + late;
  }

  private static String word(Named take, Step step) {
    StepVerdict verdict = take.verdict(step.index());
    return switch (verdict) {
      case PLAYED -> NOTHING;
      case WRONG -> "wrong";
      case SKIPPED -> "left out";
      case UNPLAYED -> "not played";
    };
  }

  private static String stem(String file) {
    String name = file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    return name.replaceFirst("(\\.review)?\\.json$", "");
  }

  private void row(String name, Function<Named, String> cell) {
    int column = Math.max(NARROWEST, Math.min(20, (width - FIRST_COLUMN) / takes.size()));
    StringBuilder line = new StringBuilder(padded(name, FIRST_COLUMN));
    takes.forEach(take -> line.append(padded(cell.apply(take), column)));
    lines.add(line.toString().stripTrailing());
  }

  private static String padded(String text, int columns) {
    String cut = text.length() > columns - 1 ? text.substring(0, columns - 1) : text;
    return cut + " ".repeat(columns - cut.length());
  }
}
