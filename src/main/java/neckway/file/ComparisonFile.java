package neckway.file;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import neckway.neck.Step;
import neckway.review.ReviewedShift;
import neckway.review.StepVerdict;
import neckway.review.Summary;

/** Takes of one drill side by side as JSON, format {@value #FORMAT}. */
public final class ComparisonFile {
  /** The format's name and version. */
  public static final String FORMAT = "neckway-compare/1";

  private ComparisonFile() {}

  /**
   * A review and the file that it is from.
   *
   * @param file as it was named
   */
  public record Named(String file, ReviewReader.DrillReviewed read) {
    /** What became of a step. */
    public StepVerdict verdict(int step) {
      return read.review().steps().get(step).verdict();
    }
  }

  /**
   * As JSON: the counts of each take, the steps that not all played right, and every shift.
   *
   * @param takes of one drill, one or more
   */
  public static ObjectNode toJson(List<Named> takes) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.set("drill", DrillFile.toJson(takes.get(0).read().drill()));
    ArrayNode counted = json.putArray("takes");
    takes.forEach(take -> count(counted.addObject(), take));
    ArrayNode steps = json.putArray("steps");
    slipped(takes).forEach(step -> step(steps.addObject(), step, takes));
    ArrayNode shifts = json.putArray("shifts");
    for (int i = 0; i < takes.get(0).read().review().shifts().size(); i++) {
      shift(shifts.addObject(), i, takes);
    }
    return json;
  }

  private static void count(ObjectNode one, Named take) {
    Summary summary = take.read().review().summary();
    one.put("file", take.file());
    one.put("tempo", take.read().review().grid().tempo());
    one.put("notes", summary.notes());
    one.put("right", summary.right());
    one.put("wrong", summary.wrong());
    one.put("extra", summary.extra());
    one.put("repeat", summary.repeat());
    one.put("skipped", summary.skipped());
    one.put("shiftsMade", summary.shiftsMade());
    one.put("shiftsPlanned", summary.shiftsPlanned());
    summary
        .offMsMedian()
        .ifPresentOrElse(ms -> one.put("offMsMedian", ms), () -> one.putNull("offMsMedian"));
    summary
        .offMsSpread()
        .ifPresentOrElse(ms -> one.put("offMsSpread", ms), () -> one.putNull("offMsSpread"));
  }

  /** The steps that not every take has right, in their order. */
  public static List<Step> slipped(List<Named> takes) {
    return takes.get(0).read().drill().route().steps().stream()
        .filter(step -> takes.stream().anyMatch(t -> t.verdict(step.index()) != StepVerdict.PLAYED))
        .toList();
  }

  private static void step(ObjectNode one, Step step, List<Named> takes) {
    one.put("step", step.index());
    one.put("string", step.place().string().number());
    one.put("fret", step.place().fret());
    ArrayNode verdicts = one.putArray("verdicts");
    takes.forEach(take -> verdicts.add(take.verdict(step.index()).word()));
  }

  private static void shift(ObjectNode one, int index, List<Named> takes) {
    ReviewedShift first = takes.get(0).read().review().shifts().get(index);
    one.put("round", first.planned().round());
    one.put("direction", first.planned().direction().name().toLowerCase(Locale.ROOT));
    one.put("string", first.planned().string().number());
    ArrayNode verdicts = one.putArray("verdicts");
    ArrayNode late = one.putArray("lateMs");
    for (Named take : takes) {
      ReviewedShift shift = take.read().review().shifts().get(index);
      verdicts.add(shift.verdict().word());
      shift.lateMs().ifPresentOrElse(late::add, late::addNull);
    }
  }
}
