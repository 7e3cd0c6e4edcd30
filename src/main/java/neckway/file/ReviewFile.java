package neckway.file;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.Locale;
import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.hand.PlaceGuess;
import neckway.neck.BadInput;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedRound;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.Summary;
import neckway.review.TakeFigures;

/** Reviews to JSON, format {@value #FORMAT}. */
public final class ReviewFile {
  /** The format's name and version. */
  public static final String FORMAT = "neckway-review/1";

  private static final int MICROSECONDS = 6;
  private static final int HUNDREDTHS = 2;
  private static final int TEN_THOUSANDTHS = 4;

  private ReviewFile() {}

  /**
   * Writes a review beside its target and moves it into place.
   *
   * @throws BadInput if it cannot be written
   */
  public static void write(Path file, Review review, String takeFile, PlayableDrill drill) {
    JsonFile.write(file, toJson(review, takeFile, drill));
  }

  /**
   * A review as JSON.
   *
   * @param takeFile the recording's name
   * @param drill what was to be played
   */
  public static ObjectNode toJson(Review review, String takeFile, PlayableDrill drill) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.set("take", take(review.take(), takeFile));
    json.set("drill", DrillFile.toJson(drill));
    json.set("grid", grid(review.grid(), review.clock()));
    json.put("attempts", review.attempts());
    json.put("attempt", review.reviewed());
    ArrayNode rounds = json.putArray("rounds");
    ReviewedRound.of(drill, review).forEach(r -> rounds.add(round(r)));
    ArrayNode notes = json.putArray("notes");
    review.notes().forEach(n -> notes.add(note(n)));
    ArrayNode steps = json.putArray("steps");
    review.steps().forEach(s -> steps.add(step(s)));
    ArrayNode shifts = json.putArray("shifts");
    review.shifts().forEach(s -> shifts.add(shift(s)));
    json.set("summary", summary(review.summary()));
    return json;
  }

  private static ObjectNode take(TakeFigures take, String file) {
    ObjectNode json = object();
    json.put("file", file);
    put(json, "seconds", take.seconds(), MICROSECONDS);
    put(json, "sampleRate", take.sampleRateHz(), 0);
    put(json, "peakDbfs", take.peakDbfs(), 1);
    put(json, "noiseDbfs", take.noiseDbfs(), 1);
    put(json, "tuningCents", take.tuningCents(), 1);
    return json;
  }

  private static ObjectNode grid(Grid grid, Clock clock) {
    ObjectNode json = object();
    json.put("source", grid.source().word());
    put(json, "tempo", grid.tempo(), TEN_THOUSANDTHS);
    put(json, "firstBeat", grid.firstBeat(), MICROSECONDS);
    json.put("delayMeasured", clock == Clock.MEASURED);
    return json;
  }

  private static ObjectNode round(ReviewedRound round) {
    ObjectNode json = object();
    json.put("round", round.round());
    json.put("clean", round.clean());
    put(json, "tempo", round.tempo(), TEN_THOUSANDTHS);
    return json;
  }

  private static ObjectNode note(ReviewedNote note) {
    ObjectNode json = object();
    put(json, "time", note.time(), MICROSECONDS);
    json.put("midi", note.midi());
    put(json, "cents", note.cents(), 1);
    json.put("verdict", note.verdict().word());
    if (note.step().isPresent()) {
      json.put("step", note.step().getAsInt());
    } else {
      json.putNull("step");
    }
    json.put("attempt", note.attempt());
    json.put("slot", note.slot());
    put(json, "offMs", note.offMs(), HUNDREDTHS);
    json.put("timing", note.timing().word());
    put(json, "decided", note.decided(), MICROSECONDS);
    ArrayNode places = json.putArray("places");
    for (PlaceGuess guess : note.places()) {
      ObjectNode place = places.addObject();
      place.put("string", guess.place().string().number());
      place.put("fret", guess.place().fret());
      put(place, "p", guess.p(), TEN_THOUSANDTHS);
    }
    return json;
  }

  private static ObjectNode step(ReviewedStep step) {
    ObjectNode json = object();
    json.put("step", step.step().index());
    json.put("string", step.step().place().string().number());
    json.put("fret", step.step().place().fret());
    json.put("midi", step.step().midi());
    put(json, "due", step.due(), MICROSECONDS);
    json.put("verdict", step.verdict().word());
    return json;
  }

  private static ObjectNode shift(ReviewedShift shift) {
    ObjectNode json = object();
    json.put("round", shift.planned().round());
    json.put("direction", shift.planned().direction().name().toLowerCase(Locale.ROOT));
    ObjectNode planned = json.putObject("planned");
    planned.put("string", shift.planned().string().number());
    planned.put("finger", shift.planned().finger());
    json.put("verdict", shift.verdict().word());
    if (shift.string().isPresent()) {
      json.put("string", shift.string().get().number());
    } else {
      json.putNull("string");
    }
    put(json, "p", shift.p(), TEN_THOUSANDTHS);
    put(json, "lateMs", shift.lateMs(), HUNDREDTHS);
    put(json, "decided", shift.decided(), MICROSECONDS);
    return json;
  }

  private static ObjectNode summary(Summary summary) {
    ObjectNode json = object();
    json.put("notes", summary.notes());
    json.put("right", summary.right());
    json.put("wrong", summary.wrong());
    json.put("extra", summary.extra());
    json.put("repeat", summary.repeat());
    json.put("skipped", summary.skipped());
    put(json, "offMsMedian", summary.offMsMedian(), HUNDREDTHS);
    put(json, "offMsSpread", summary.offMsSpread(), HUNDREDTHS);
    put(json, "swing", summary.swing(), TEN_THOUSANDTHS);
    json.put("shiftsMade", summary.shiftsMade());
    json.put("shiftsPlanned", summary.shiftsPlanned());
    summary.words().forEach(json.putArray("words")::add);
    return json;
  }

  private static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode();
  }

  private static void put(ObjectNode json, String name, OptionalDouble value, int decimals) {
    if (value.isPresent()) {
      put(json, name, value.getAsDouble(), decimals);
    } else {
      json.putNull(name);
    }
  }

  private static void put(ObjectNode json, String name, double value, int decimals) {
    json.put(name, BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN));
  }
}
