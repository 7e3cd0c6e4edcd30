package neckway.cli.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import neckway.file.ComparisonFile;
import neckway.file.ComparisonFile.Named;
import neckway.hand.ShiftVerdict;
import neckway.neck.Step;
import neckway.review.ReviewedShift;
import neckway.review.StepVerdict;
import neckway.review.Summary;
import neckway.review.words.Phrases;
import neckway.words.Wording;

/** Takes of one drill side by side, a column each. */
public final class ComparisonText {
  private static final int LEAST_FIRST_COLUMN = 22;
  private static final int LEAST_COLUMN = 10;
  private static final int MOST_COLUMN = 20;
  private static final String NOTHING = "-";

  private final List<Named> takes;
  private final List<Row> rows = new ArrayList<>();

  /**
   * A row.
   *
   * @param name what it is about
   * @param cells one a take
   */
  private record Row(String name, List<String> cells) {}

  private ComparisonText(List<Named> takes) {
    this.takes = takes;
    fill();
  }

  /**
   * The lines.
   *
   * @param takes of one drill
   * @param width columns of the terminal; more takes than fit beside each other go below
   */
  public static List<String> of(List<Named> takes, int width) {
    return new ComparisonText(takes).lines(width);
  }

  private List<String> lines(int width) {
    int first = columns(rows.stream().map(Row::name), LEAST_FIRST_COLUMN);
    int narrowest = columns(rows.stream().flatMap(row -> row.cells().stream()), LEAST_COLUMN);
    int beside = Math.max(1, (width - first) / narrowest);
    List<String> lines = new ArrayList<>();
    lines.add(takes.get(0).read().drill().spokenTitle());
    for (int from = 0; from < takes.size(); from += beside) {
      int to = Math.min(takes.size(), from + beside);
      int column = Math.max(narrowest, Math.min(MOST_COLUMN, (width - first) / (to - from)));
      lines.add("");
      lines.addAll(new ComparisonText(takes.subList(from, to)).table(first, column));
    }
    return lines;
  }

  private List<String> table(int first, int column) {
    List<String> lines = new ArrayList<>();
    lines.add(line("", takes.stream().map(take -> stem(take.file())).toList(), first, column));
    rows.forEach(row -> lines.add(line(row.name(), row.cells(), first, column)));
    return lines;
  }

  /** Columns for the longest of some texts and a space after it. */
  private static int columns(Stream<String> texts, int least) {
    return Math.max(least, 1 + texts.mapToInt(String::length).max().orElse(0));
  }

  private static String line(String name, List<String> cells, int first, int column) {
    StringBuilder line = new StringBuilder(padded(name, first));
    cells.forEach(cell -> line.append(padded(cell, column)));
    return line.toString().stripTrailing();
  }

  private void fill() {
    row(
        Wording.of("terminal.compare.right"),
        take ->
            Wording.of("terminal.compare.rightOf", summary(take).right(), summary(take).notes()));
    row(Wording.of("terminal.compare.wrong"), take -> count(summary(take).wrong()));
    row(Wording.of("terminal.compare.stray"), take -> count(summary(take).extra()));
    row(Wording.of("terminal.compare.twice"), take -> count(summary(take).repeat()));
    row(Wording.of("terminal.compare.leftOut"), take -> count(summary(take).skipped()));
    row(
        Wording.of("terminal.compare.steadiness"),
        take -> ms(summary(take).offMsSpread(), "%.0f ms"));
    row(Wording.of("terminal.compare.beat"), take -> ms(summary(take).offMsMedian(), "%+.0f ms"));
    row(
        Wording.of("terminal.compare.tempo"),
        take -> Wording.fixed(take.read().review().grid().tempo(), 0));
    for (int i = 0; i < takes.get(0).read().review().shifts().size(); i++) {
      int index = i;
      row(shiftName(i), take -> shift(take.read().review().shifts().get(index)));
    }
    for (Step step : ComparisonFile.slipped(takes)) {
      row(
          Wording.of("terminal.compare.note", step.index() + 1, step.place()),
          take -> word(take, step));
    }
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
    return Wording.of(
        Phrases.towards("terminal.compare.shift", planned.direction()),
        index + 1,
        planned.string().number());
  }

  private static String shift(ReviewedShift shift) {
    String late = ms(shift.lateMs(), "%+.0f");
    String word = word(shift.verdict());
    return late.equals(NOTHING) ? word : word + " " + late;
  }

  private static String word(ShiftVerdict verdict) {
    return switch (verdict) {
      case MADE -> Wording.of("terminal.compare.shift.made");
      case MOVED -> Wording.of("terminal.compare.shift.moved");
      case MISSED -> Wording.of("terminal.compare.shift.missed");
      case UNHEARD -> Wording.of("terminal.compare.shift.unheard");
      case UNPLAYED -> Wording.of("terminal.compare.shift.unplayed");
    };
  }

  private static String word(Named take, Step step) {
    StepVerdict verdict = take.verdict(step.index());
    return switch (verdict) {
      case PLAYED -> NOTHING;
      case WRONG -> Wording.of("terminal.compare.note.wrong");
      case SKIPPED -> Wording.of("terminal.compare.note.leftOut");
      case UNPLAYED -> Wording.of("terminal.compare.note.unplayed");
    };
  }

  private static String stem(String file) {
    String name = file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    return name.replaceFirst("(\\.review)?\\.json$", "");
  }

  private void row(String name, Function<Named, String> cell) {
    rows.add(new Row(name, takes.stream().map(cell).toList()));
  }

  private static String padded(String text, int columns) {
    String cut = text.length() > columns - 1 ? text.substring(0, columns - 1) : text;
    return cut + " ".repeat(columns - cut.length());
  }
}
