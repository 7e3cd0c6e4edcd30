package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.review.HeardAs;
import neckway.review.StepVerdict;
import neckway.words.Wording;

/** Notes played wrong or left out, and how each is worked on: by how it was missed. */
final class SpoiltNotes {
  private static final double NOTE = 1;

  /** Common practice, no source: the same slip in the same place is a habit. */
  private static final double AGAIN = 1.5;

  /** The stretch missed at so many places is worked on as such, and not note by note. */
  private static final int SEVERAL = 2;

  /**
   * A note of the round that was spoilt, or several that follow on one another.
   *
   * @param first steps of its first note, one a round in which it was spoilt
   * @param length notes in it
   * @param steps all steps, in order
   */
  private record Spot(List<Integer> first, int length, List<Integer> steps) {
    boolean isRow() {
      return length > 1;
    }

    boolean isAgain() {
      return first.size() > 1;
    }
  }

  private final Played played;
  private final MissedShifts missed;

  SpoiltNotes(Played played) {
    this.played = played;
    this.missed = new MissedShifts(played);
  }

  List<Cause> causes() {
    List<Spot> spots = spots();
    List<Spot> stretches =
        spots.stream().filter(spot -> !spot.isRow() && has(spot, Miss.Kind.REACH)).toList();
    List<Cause> causes = new ArrayList<>();
    if (stretches.size() >= SEVERAL) {
      causes.add(stretchInSeveralPlaces(stretches));
    }
    spots.stream()
        .filter(spot -> stretches.size() < SEVERAL || !stretches.contains(spot))
        .map(spot -> new Cause(cost(spot), spot.first().get(0), spot.steps(), advice(spot)))
        .forEach(causes::add);
    return causes;
  }

  /** Spoilt notes by their place in the round; those that follow on one another are one spot. */
  private List<Spot> spots() {
    Map<Integer, List<Integer>> places = new LinkedHashMap<>();
    for (Step step : played.drill().route().steps()) {
      if (spoilt(step.index())) {
        places
            .computeIfAbsent(played.inRound(step.index()), p -> new ArrayList<>())
            .add(step.index());
      }
    }
    List<Spot> spots = new ArrayList<>();
    for (List<Integer> steps : places.values()) {
      Optional<Spot> before =
          spots.stream()
              .filter(
                  spot -> steps.equals(spot.first().stream().map(s -> s + spot.length()).toList()))
              .findFirst();
      before.ifPresent(spots::remove);
      spots.add(before.map(spot -> longer(spot, steps)).orElse(new Spot(steps, 1, steps)));
    }
    return spots;
  }

  private static Spot longer(Spot spot, List<Integer> next) {
    List<Integer> all = new ArrayList<>(spot.steps());
    all.addAll(next);
    return new Spot(spot.first(), spot.length() + 1, all.stream().sorted().toList());
  }

  private boolean spoilt(int step) {
    return is(step, StepVerdict.WRONG) || is(step, StepVerdict.SKIPPED) && !missed.explain(step);
  }

  private boolean is(int step, StepVerdict verdict) {
    return played.review().steps().get(step).verdict() == verdict;
  }

  private static double cost(Spot spot) {
    return spot.steps().size() * (spot.isAgain() ? AGAIN : NOTE);
  }

  /** Whether the first note of a spot was missed in one way, each time that it was spoilt. */
  private boolean has(Spot spot, Miss.Kind kind) {
    return spot.first().stream().allMatch(s -> miss(s).filter(m -> m.kind() == kind).isPresent());
  }

  /** Whether all notes of a spot were wrong, off by as much and to the same side. */
  private boolean alike(Spot spot) {
    return spot.steps().stream().map(s -> miss(s).map(Miss::semitones)).distinct().count() == 1
        && spot.steps().stream().allMatch(s -> miss(s).isPresent());
  }

  /** How a step was missed; empty where it was left out. */
  private Optional<Miss> miss(int step) {
    return played
        .inPlace(step)
        .filter(note -> is(step, StepVerdict.WRONG))
        .map(note -> Miss.of(played, played.step(step), note.midi()));
  }

  private String advice(Spot spot) {
    int first = spot.first().get(0);
    Step step = played.step(first);
    if (!spot.isRow() || alike(spot)) {
      if (has(spot, Miss.Kind.LANDED_SHORT)) {
        return landing("landed.short", step);
      }
      if (has(spot, Miss.Kind.LANDED_FAR)) {
        return landing("landed.far", step);
      }
      if (has(spot, Miss.Kind.HAND_STAYED)) {
        return handStayed(step);
      }
    }
    if (spot.isRow()) {
      Step last = played.step(first + spot.length() - 1);
      return Wording.of(
          "spoilt.row", Phrases.fretOnString(step.place()), Phrases.fretOnString(last.place()));
    }
    if (has(spot, Miss.Kind.OPEN)) {
      return Wording.of("spoilt.open", Phrases.fretOnString(step.place()));
    }
    if (has(spot, Miss.Kind.REACH)) {
      return stretch(step);
    }
    return has(spot, Miss.Kind.NEXT_STRING) ? nextString(step) : again(spot, step);
  }

  private String landing(String key, Step landing) {
    PlannedShift shift = Miss.landedBy(played, landing).orElseThrow();
    return Wording.of(
        key,
        Phrases.shift(shift.direction(), shift.string()),
        Phrases.ordinal(landing.finger()),
        landing.place().fret());
  }

  private String handStayed(Step step) {
    Step before = played.step(step.index() - 1);
    boolean up = miss(step.index()).orElseThrow().semitones() < 0;
    return Wording.of(
        up ? "spoilt.stayed.up" : "spoilt.stayed.down",
        Phrases.fretOnString(step.place()),
        Phrases.fretOnString(before.place()));
  }

  private String stretch(Step step) {
    Step held = Miss.otherEnd(played, step).orElseThrow();
    return Wording.of(
        "stretch.once",
        Phrases.ordinal(step.place().string()),
        held.place().fret(),
        Phrases.ordinal(held.finger()),
        Phrases.ordinal(step.finger()),
        step.place().fret());
  }

  private Cause stretchInSeveralPlaces(List<Spot> stretches) {
    List<Integer> steps =
        stretches.stream().flatMap(spot -> spot.steps().stream()).sorted().toList();
    double cost = stretches.stream().mapToDouble(SpoiltNotes::cost).sum();
    return new Cause(
        cost, steps.get(0), steps, Wording.of("stretch.several", Phrases.count(stretches.size())));
  }

  private String nextString(Step step) {
    int midi = played.inPlace(step.index()).orElseThrow().midi();
    GuitarString string = Miss.nextString(played, step, midi).orElseThrow();
    return Wording.of(
        "spoilt.nextString",
        Phrases.from(step.index()),
        Phrases.before(step.place()),
        HeardAs.note(played.drill(), midi),
        Phrases.ordinal(string));
  }

  /** The plain way: come upon the note slowly from where it is played from. */
  private String again(Spot spot, Step step) {
    Place place = step.place();
    if (step.index() == 0) {
      return Wording.of(Phrases.at("spoilt.first", place), Phrases.fretOnString(place));
    }
    boolean leftOut = spot.steps().stream().allMatch(s -> is(s, StepVerdict.SKIPPED));
    String key = spot.isAgain() ? "spoilt.again" : leftOut ? "spoilt.leftOut" : "spoilt.wrong";
    return Wording.of(
        Phrases.towards(key, played.into(step.index())),
        Phrases.from(step.index()),
        Phrases.before(place));
  }
}
