package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.calls.Call;
import neckway.calls.CalledRun;
import neckway.drill.Cue;
import neckway.drill.PlayableDrill;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlacedNote;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.review.Review;
import neckway.words.Wording;

/** The calls of a run, the field {@value #FIELD} of its review. */
public final class CallsFile {
  /** The field's name. */
  public static final String FIELD = "calls";

  private static final int MOST = 1_000_000;
  private static final double TENTHS = 10;

  private CallsFile() {}

  /**
   * A review as JSON, with the calls of its run and what became of each.
   *
   * @param takeFile the recording's name
   */
  public static ObjectNode review(Review review, String takeFile, CalledRun run) {
    ObjectNode json = ReviewFile.toJson(review, takeFile, run.drill());
    json.set(FIELD, toJson(run));
    return json;
  }

  private static ObjectNode toJson(CalledRun run) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    for (CalledRun.Outcome outcome : CalledRun.Outcome.values()) {
      json.put(outcome.word(), run.count(outcome));
    }
    put(json, "lateMsMedian", run.lateMsMedian());
    run.costliest()
        .ifPresentOrElse(
            cost -> {
              ObjectNode most = json.putObject("costliest");
              most.put("words", cost.words());
              most.put("times", cost.times());
              most.put("missed", cost.missed());
              put(most, "lateMs", cost.lateMs());
            },
            () -> json.putNull("costliest"));
    ArrayNode said = json.putArray("said");
    for (CalledRun.Heard heard : run.heard()) {
      Call call = heard.call();
      ObjectNode one = said.addObject();
      one.put("beat", call.cue().beat());
      one.put("call", word(call.cue().move()));
      one.put("words", call.words(run.drill().tuning()));
      one.put("step", call.landingStep());
      one.put("turn", call.turnStep());
      one.put("verdict", heard.outcome().word());
      put(one, "lateMs", heard.lateMs());
    }
    return json;
  }

  private static String word(Cue.Move move) {
    return move.name().toLowerCase(Locale.ROOT);
  }

  private static void put(ObjectNode json, String name, OptionalDouble ms) {
    if (ms.isPresent()) {
      json.put(name, Math.round(ms.getAsDouble() * TENTHS) / TENTHS);
    } else {
      json.putNull(name);
    }
  }

  /**
   * The drill of a review as it was called, from its calls and its steps; as it is where nothing
   * was called.
   *
   * @param plain the review's drill
   * @throws BadInput where calls and steps do not go together
   */
  static PlayableDrill drill(PlayableDrill plain, JsonNode review, String where) {
    Fields fields = Fields.of(review, where);
    if (!fields.has(FIELD)) {
      return plain;
    }
    List<Said> said = fields.object(FIELD).objects("said", CallsFile::said);
    List<Step> steps = new ArrayList<>();
    fields.objects("steps", step -> steps.add(step(step, plain, stand(said, steps.size()), steps)));
    if (said.isEmpty() || steps.isEmpty()) {
      throw fields.bad(FIELD, Wording.of("files.calls.none"));
    }
    Route route = new Route(plain.shapes(), steps, List.of(), 1);
    return plain.once().called(route, said.stream().map(call -> call.cue(steps)).toList());
  }

  private record Said(long beat, Cue.Move move, int landingStep) {
    /** A hand that moves lands on the string on which it was called to go. */
    Cue cue(List<Step> steps) {
      boolean goes = move != Cue.Move.STAY && landingStep < steps.size();
      return new Cue(
          beat,
          move,
          goes ? Optional.of(steps.get(landingStep).place().string()) : Optional.empty());
    }
  }

  private static Said said(Fields call) {
    String word = call.text("call").orElseThrow(() -> call.missing("call", "\"up\""));
    for (Cue.Move move : Cue.Move.values()) {
      if (word(move).equals(word)) {
        int beat = call.whole("beat", 0, MOST).orElseThrow(() -> call.missing("beat", "8"));
        int step = call.whole("step", 0, MOST).orElseThrow(() -> call.missing("step", "16"));
        return new Said(beat, move, step);
      }
    }
    throw call.bad("call", Wording.of("files.unknown", word));
  }

  /** The shape that the hand is in at a step; the chain's first one at the beginning. */
  private static int stand(List<Said> said, int step) {
    int stand = 0;
    for (Said call : said) {
      if (call.landingStep() <= step) {
        stand +=
            switch (call.move()) {
              case UP -> 1;
              case STAY -> 0;
              case DOWN -> -1;
            };
      }
    }
    return stand;
  }

  private static Step step(Fields step, PlayableDrill plain, int stand, List<Step> before) {
    int string =
        step.whole("string", 1, plain.tuning().count())
            .orElseThrow(() -> step.missing("string", "6"));
    int fret = step.whole("fret", 0, plain.frets()).orElseThrow(() -> step.missing("fret", "3"));
    Place place = new Place(new GuitarString(string), fret);
    if (stand < 0 || stand >= plain.chain().size()) {
      throw step.bad("string", Wording.of("files.calls.outside"));
    }
    PlacedNote note =
        plain.chain().get(stand).notes().stream()
            .filter(n -> n.place().equals(place))
            .findFirst()
            .orElseThrow(() -> step.bad("fret", Wording.of("files.calls.noShape")));
    return new Step(before.size(), place, note.midi(), note.finger(), stand);
  }
}
