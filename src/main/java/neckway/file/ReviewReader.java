package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.GuitarKnown;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.review.Summary;
import neckway.review.TakeFigures;
import neckway.review.Timing;
import neckway.words.Wording;

/**
 * Reviews from JSON, format {@value ReviewFile#FORMAT}. What is asked of them later is read: where
 * the notes may have been played is not.
 */
public final class ReviewReader {
  private static final int MOST_STEPS = 1_000_000;
  private static final double LONGEST_SECONDS = 1e7;
  private static final double MOST_MS = 1e10;
  private static final int HIGHEST_MIDI = 127;

  /**
   * A review and what it was held against.
   *
   * @param drill the drill
   * @param review the review
   */
  public record DrillReviewed(PlayableDrill drill, Review review) {}

  private final Fields fields;
  private final PlayableDrill drill;
  private int shiftsRead;

  private ReviewReader(Fields fields, PlayableDrill drill) {
    this.fields = fields;
    this.drill = drill;
  }

  /**
   * Reads a review.
   *
   * @param where what a complaint begins with: the file's name
   * @throws BadInput naming the field and the mend
   */
  public static DrillReviewed read(JsonNode json, String where) {
    return read(json, where, drill -> DrillFile.fromJson(drill, where + ": drill"));
  }

  /**
   * The same for many, whose drills are the same again and again.
   *
   * @param drills reads a drill, or knows it already
   */
  public static DrillReviewed read(
      JsonNode json, String where, Function<JsonNode, PlayableDrill> drills) {
    Fields fields = Fields.of(json, where);
    String format =
        fields
            .text("format")
            .orElseThrow(() -> fields.missing("format", "\"" + ReviewFile.FORMAT + "\""));
    if (!format.equals(ReviewFile.FORMAT)) {
      throw fields.bad("format", Wording.of("files.format.review", format, ReviewFile.FORMAT));
    }
    if (!json.path("drill").isObject()) {
      throw fields.missing("drill", "{\"format\": \"" + DrillFile.FORMAT + "\", ...}");
    }
    PlayableDrill drill = CallsFile.drill(drills.apply(json.path("drill")), json, where);
    return new DrillReviewed(drill, new ReviewReader(fields, drill).review(clock(json)));
  }

  /** Measured where it is not said, as in reviews from before it was. */
  private static Clock clock(JsonNode json) {
    return json.path("grid").path("delayMeasured").asBoolean(true)
        ? Clock.MEASURED
        : Clock.UNMEASURED;
  }

  private Review review(Clock clock) {
    Grid grid = grid(fields.object("grid"));
    List<ReviewedNote> notes = fields.objects("notes", this::note);
    List<ReviewedStep> steps = fields.objects("steps", this::step);
    if (steps.size() != drill.route().steps().size()) {
      throw fields.bad(
          "steps", Wording.of("files.review.steps", steps.size(), drill.route().steps().size()));
    }
    List<ReviewedShift> read = fields.objects("shifts", this::shift);
    if (read.size() != drill.route().shifts().size()) {
      throw fields.bad(
          "shifts", Wording.of("files.review.shifts", read.size(), drill.route().shifts().size()));
    }
    int last = notes.stream().mapToInt(ReviewedNote::attempt).max().orElse(0);
    return new Review(
        take(fields.object("take")),
        GuitarKnown.NOT_LEARNT,
        clock,
        grid,
        notes,
        fields.whole("attempts", 0, MOST_STEPS).orElse(notes.isEmpty() ? 0 : last + 1),
        fields.whole("attempt", 0, MOST_STEPS).orElseGet(() -> furthest(notes)),
        steps,
        read,
        summary(fields.object("summary")));
  }

  /** Of the notes alone, as in reviews that do not say it: the try that got furthest. */
  private static int furthest(List<ReviewedNote> notes) {
    int furthest = -1;
    int attempt = 0;
    for (ReviewedNote note : notes) {
      if (note.inPlace() && note.step().getAsInt() >= furthest) {
        furthest = note.step().getAsInt();
        attempt = note.attempt();
      }
    }
    return attempt;
  }

  private static TakeFigures take(Fields take) {
    return new TakeFigures(
        take.number("seconds", 0, LONGEST_SECONDS).orElse(0),
        take.number("sampleRate", 0, LONGEST_SECONDS).orElse(0),
        take.number("peakDbfs", -MOST_MS, MOST_MS).orElse(0),
        take.number("noiseDbfs", -MOST_MS, MOST_MS).orElse(0),
        take.number("tuningCents", -MOST_MS, MOST_MS));
  }

  private Grid grid(Fields grid) {
    double tempo =
        grid.number("tempo", 1, LONGEST_SECONDS).orElseThrow(() -> grid.missing("tempo", "80"));
    double slot = 60 / tempo / drill.pulse().notesPerBeat();
    Grid.Source source = Grid.Source.NOTES;
    for (Grid.Source known : Grid.Source.values()) {
      if (grid.text("source").equals(Optional.of(known.word()))) {
        source = known;
      }
    }
    double firstBeat = grid.number("firstBeat", -LONGEST_SECONDS, LONGEST_SECONDS).orElse(0);
    return new Grid(source, tempo, firstBeat, slot, drill.pulse().slots());
  }

  private ReviewedNote note(Fields note) {
    double time = required(note, "time");
    Verdict verdict = word(note, "verdict", Verdict.values(), Verdict::word);
    OptionalInt step = note.whole("step", 0, drill.route().steps().size() - 1);
    if (verdict != Verdict.EXTRA && step.isEmpty()) {
      throw note.missing("step", "0");
    }
    return new ReviewedNote(
        time,
        note.whole("midi", 0, HIGHEST_MIDI).orElseThrow(() -> note.missing("midi", "45")),
        note.number("cents", -MOST_MS, MOST_MS).orElse(0),
        verdict,
        step,
        note.whole("attempt", 0, MOST_STEPS).orElse(0),
        Math.round(note.number("slot", -MOST_MS, MOST_MS).orElse(0)),
        note.number("offMs", -MOST_MS, MOST_MS).orElse(0),
        word(note, "timing", Timing.values(), Timing::word),
        note.number("decided", 0, LONGEST_SECONDS).orElse(time),
        List.of());
  }

  private ReviewedStep step(Fields step) {
    int index =
        step.whole("step", 0, drill.route().steps().size() - 1)
            .orElseThrow(() -> step.missing("step", "0"));
    Step planned = drill.route().steps().get(index);
    return new ReviewedStep(
        planned,
        step.number("due", -LONGEST_SECONDS, LONGEST_SECONDS).orElse(0),
        word(step, "verdict", StepVerdict.values(), StepVerdict::word));
  }

  private ReviewedShift shift(Fields shift) {
    int round = shift.whole("round", 0, drill.rounds() - 1).orElse(0);
    String direction =
        shift.text("direction").orElseThrow(() -> shift.missing("direction", "\"up\""));
    int string =
        shift
            .object("planned")
            .whole("string", 1, GuitarString.MAX_STRINGS)
            .orElseThrow(() -> shift.missing("planned", "{\"string\": 3, \"finger\": 1}"));
    int at = shiftsRead++;
    List<PlannedShift> asked = drill.route().shifts();
    if (at >= asked.size()) {
      throw shift.bad("planned", Wording.of("files.review.noShift", asked.size()));
    }
    PlannedShift planned = asked.get(at);
    if (planned.round() != round
        || !planned.direction().name().equalsIgnoreCase(direction)
        || planned.string().number() != string) {
      throw shift.bad("planned", Wording.of("files.review.otherShift", at + 1));
    }
    return new ReviewedShift(
        planned,
        word(shift, "verdict", ShiftVerdict.values(), ShiftVerdict::word),
        shift.whole("string", 1, drill.tuning().count()).isPresent()
            ? Optional.of(
                new GuitarString(shift.whole("string", 1, drill.tuning().count()).getAsInt()))
            : Optional.empty(),
        shift.number("p", 0, 1),
        shift.number("lateMs", -MOST_MS, MOST_MS),
        shift.number("decided", 0, LONGEST_SECONDS));
  }

  private static Summary summary(Fields summary) {
    return new Summary(
        count(summary, "notes"),
        count(summary, "right"),
        count(summary, "wrong"),
        count(summary, "extra"),
        count(summary, "repeat"),
        count(summary, "skipped"),
        summary.number("offMsMedian", -MOST_MS, MOST_MS),
        summary.number("offMsSpread", -MOST_MS, MOST_MS),
        count(summary, "shiftsMade"),
        count(summary, "shiftsPlanned"),
        summary.number("swing", 0, 1),
        summary.texts("words"));
  }

  private static int count(Fields summary, String name) {
    return summary.whole(name, 0, MOST_STEPS).orElse(0);
  }

  private static double required(Fields fields, String name) {
    OptionalDouble value = fields.number(name, -LONGEST_SECONDS, LONGEST_SECONDS);
    return value.orElseThrow(() -> fields.missing(name, "2.0"));
  }

  private static <T> T word(Fields fields, String name, T[] values, Function<T, String> wordOf) {
    String given =
        fields
            .text(name)
            .orElseThrow(() -> fields.missing(name, "\"" + wordOf.apply(values[0]) + "\""));
    for (T value : values) {
      if (wordOf.apply(value).equals(given)) {
        return value;
      }
    }
    throw fields.bad(name, Wording.of("files.unknown", given));
  }
}
