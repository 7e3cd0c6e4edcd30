package neckway.file;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.hear.RobustStatistics;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.player.Performance;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedShift;
import neckway.review.Grid;

/** The truth of a performed take, as a review in which everything is as it was played. */
public final class TruthFile {
  /** The format's name and version: a review's. */
  public static final String FORMAT = "neckway-review/1";

  private static final double LEAST_ON_MS = 12;
  private static final double ON_SHARE_OF_SLOT = 0.05;
  private static final double FLOOR_DBFS = -120;

  private TruthFile() {}

  /**
   * The truth as JSON.
   *
   * @param takeFile the name of the take, as it is to stand in the truth
   * @param drill what was to be played; empty for a calibration sequence
   * @param tuningCents the guitar's offset from A4 = 440 Hz
   */
  public static ObjectNode toJson(
      String takeFile, Optional<PlayableDrill> drill, Performance played, double tuningCents) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    putTake(json.putObject("take"), takeFile, played, tuningCents);
    ArrayNode notes = json.putArray("notes");
    if (drill.isEmpty()) {
      played.notes().forEach(note -> putSound(notes.addObject(), note));
      return json;
    }
    Route route = drill.get().route();
    Pulse pulse = drill.get().pulse();
    json.set("drill", DrillFile.toJson(drill.get()));
    json.putObject("grid")
        .put("source", "given")
        .put("tempo", pulse.tempo())
        .put("firstBeat", played.firstBeat());
    for (PlayedNote note : played.notes()) {
      ObjectNode one = notes.addObject();
      putSound(one, note);
      putVerdict(one, note, played, pulse);
    }
    putSteps(json.putArray("steps"), route, played, pulse);
    played.shifts().forEach(shift -> putShift(json.withArray("shifts"), shift));
    json.withArray("shifts");
    putSummary(json.putObject("summary"), played, pulse);
    return json;
  }

  private static void putTake(
      ObjectNode take, String takeFile, Performance played, double tuningCents) {
    float peak = 0;
    for (float sample : played.samples()) {
      peak = Math.max(peak, Math.abs(sample));
    }
    take.put("file", takeFile);
    take.put("seconds", (double) played.samples().length / played.sampleRate());
    take.put("sampleRate", played.sampleRate());
    take.put("peakDbfs", decibels(peak));
    take.put("noiseDbfs", decibels(quietest(played)));
    take.put("tuningCents", rounded(tuningCents));
  }

  /** Root mean square of the quietest 100 ms. */
  private static double quietest(Performance played) {
    int length = played.sampleRate() / 10;
    double least = Double.MAX_VALUE;
    for (int from = 0; from + length <= played.samples().length; from += length) {
      double power = 0;
      for (int n = from; n < from + length; n++) {
        power += (double) played.samples()[n] * played.samples()[n] / length;
      }
      least = Math.min(least, power);
    }
    return Math.sqrt(least);
  }

  private static void putSound(ObjectNode one, PlayedNote note) {
    one.put("time", note.time());
    one.put("midi", note.midi());
    one.put("cents", rounded(note.cents()));
    one.put("decided", note.time());
    one.put("how", note.how().name().toLowerCase(Locale.ROOT));
    one.putArray("places")
        .addObject()
        .put("string", note.place().string().number())
        .put("fret", note.place().fret())
        .put("p", 1.0);
  }

  private static void putVerdict(ObjectNode one, PlayedNote note, Performance played, Pulse pulse) {
    long slot = grid(played, pulse).slot(note.time());
    double offMs = offMs(note, played, pulse);
    double on = Math.max(LEAST_ON_MS, ON_SHARE_OF_SLOT * 1000 * pulse.slotSeconds());
    one.put("verdict", note.kind().name().toLowerCase(Locale.ROOT));
    OptionalInt step = note.step();
    if (step.isPresent()) {
      one.put("step", step.getAsInt());
    } else {
      one.putNull("step");
    }
    one.put("attempt", note.attempt());
    one.put("slot", slot);
    one.put("offMs", rounded(offMs));
    one.put("timing", Math.abs(offMs) <= on ? "on" : offMs < 0 ? "early" : "late");
  }

  private static double offMs(PlayedNote note, Performance played, Pulse pulse) {
    return grid(played, pulse).offMs(note.time());
  }

  private static Grid grid(Performance played, Pulse pulse) {
    return Grid.of(Grid.Source.GIVEN, pulse, played.firstBeat());
  }

  private static void putSteps(ArrayNode steps, Route route, Performance played, Pulse pulse) {
    for (Step step : route.steps()) {
      ObjectNode one = steps.addObject();
      one.put("step", step.index());
      one.put("string", step.place().string().number());
      one.put("fret", step.place().fret());
      one.put("midi", step.midi());
      one.put("due", grid(played, pulse).due(step.index()));
      one.put("verdict", stepVerdict(step, played));
    }
  }

  private static String stepVerdict(Step step, Performance played) {
    OptionalInt index = OptionalInt.of(step.index());
    for (PlayedNote note : best(played)) {
      if (note.step().equals(index)) {
        return note.kind() == PlayedNote.Kind.WRONG ? "wrong" : "played";
      }
    }
    return played.skipped().contains(step.index()) ? "skipped" : "unplayed";
  }

  private static List<PlayedNote> best(Performance played) {
    return played.notes().stream().filter(n -> n.attempt() == played.attempt()).toList();
  }

  private static void putShift(ArrayNode shifts, PlayedShift shift) {
    ObjectNode one = shifts.addObject();
    one.put("round", shift.planned().round());
    one.put("direction", shift.planned().direction().name().toLowerCase(Locale.ROOT));
    one.putObject("planned")
        .put("string", shift.planned().string().number())
        .put("finger", shift.planned().finger());
    one.put("verdict", shift.outcome().name().toLowerCase(Locale.ROOT));
    one.put("string", shift.string().map(s -> s.number()).orElse(null));
    one.put("p", shift.outcome() == PlayedShift.Outcome.UNPLAYED ? null : Double.valueOf(1));
    one.put("lateMs", shift.lateMs().isPresent() ? rounded(shift.lateMs().getAsDouble()) : null);
  }

  private static void putSummary(ObjectNode summary, Performance played, Pulse pulse) {
    List<PlayedNote> notes = best(played);
    summary.put("notes", notes.size());
    for (PlayedNote.Kind kind : PlayedNote.Kind.values()) {
      summary.put(
          kind.name().toLowerCase(Locale.ROOT),
          notes.stream().filter(n -> n.kind() == kind).count());
    }
    summary.put("skipped", played.skipped().size());
    double[] off =
        notes.stream()
            .filter(n -> n.kind() == PlayedNote.Kind.RIGHT)
            .mapToDouble(n -> offMs(n, played, pulse))
            .toArray();
    if (off.length > 0) {
      summary.put("offMsMedian", rounded(RobustStatistics.median(off)));
      summary.put("offMsSpread", rounded(RobustStatistics.spread(off)));
    }
    summary.put(
        "shiftsMade",
        played.shifts().stream().filter(s -> s.outcome() == PlayedShift.Outcome.MADE).count());
    summary.put("shiftsPlanned", played.shifts().size());
    TruthWords.of(played, notes).forEach(summary.putArray("words")::add);
  }

  private static double decibels(double amplitude) {
    return amplitude <= 0 ? FLOOR_DBFS : rounded(Math.max(FLOOR_DBFS, 20 * Math.log10(amplitude)));
  }

  private static double rounded(double value) {
    return Math.round(value * 1000) / 1000.0;
  }
}
