package neckway.hand;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import neckway.drill.Slots;
import neckway.hear.HeardNote;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Tuning;
import neckway.string.Lessons;
import neckway.string.StiffnessEstimate;
import neckway.string.StringEvidence;

/**
 * Where the hand was in one attempt at a route, from the notes in its steps and what their sound
 * tells of the string. It can be asked at any time; the more has been heard, the more it knows.
 */
public final class HandTrack {
  /** A silence longer by this share of a slot leaves time for a note that was not heard. */
  private static final double TIME_FOR_IT = 0.6;

  private static final double OUT_OF_REACH = 0.03;

  /** A finger that errs mostly lands so near on the string meant: common practice, no source. */
  private static final int BESIDE_FRETS = 3;

  /** How likely a wrong note is to lie at one place farther off, against one beside. */
  private static final double NOT_BESIDE = 0.25;

  private static final double EVEN_SHARE = 0.01;

  /** A string less likely than this is left out of a closer look. */
  private static final double THOUGHT_OF = 0.006;

  /** Where the second string is less likely than this, none is worth the work. */
  private static final double WORTH_THE_WORK = 0.03;

  /**
   * A second string as likely as this is looked into at once; where it is less likely, the notes to
   * come may rule it out.
   */
  private static final double IN_DOUBT = 0.2;

  private final StandMap map;
  private final Tuning tuning;
  private final int frets;
  private final double slotSeconds;
  private final Slots slots;
  private final List<Note> notes = new ArrayList<>();
  private final Map<Integer, Note> byIndex = new HashMap<>();
  private final List<List<Note>> bySteps = new ArrayList<>();
  private final HandHmm[] decoders;
  private final StandPosterior[] posteriors;

  /** Notes that may be looked at more closely, which holds their sound. */
  private final List<Note> open = new ArrayList<>();

  private final Set<Integer> unnamed = new HashSet<>();
  private int last = -1;

  private static final class Note {
    final HeardNote heard;
    final int step;
    final boolean onPitch;
    final boolean stray;
    final int midi;
    Optional<StringEvidence> evidence = Optional.empty();

    Note(HeardNote heard, int step, int midi, boolean onPitch, boolean stray) {
      this.heard = heard;
      this.step = step;
      this.midi = midi;
      this.onPitch = onPitch;
      this.stray = stray;
    }

    boolean driven() {
      return evidence.filter(StringEvidence::driven).isPresent();
    }
  }

  /**
   * @param route up and down its shapes
   * @param tuning of the strings
   * @param frets of the neck
   * @param slotSeconds between notes, on the whole
   * @param slots how the notes lie between the beats
   */
  public HandTrack(Route route, Tuning tuning, int frets, double slotSeconds, Slots slots) {
    this.map = new StandMap(route, tuning, frets);
    this.tuning = tuning;
    this.frets = frets;
    this.slotSeconds = slotSeconds;
    this.slots = slots;
    this.decoders = new HandHmm[route.rounds()];
    this.posteriors = new StandPosterior[route.rounds()];
    for (int i = 0; i < route.steps().size(); i++) {
      bySteps.add(new ArrayList<>());
    }
  }

  /** A step's own pitch, or another one in its place. */
  public void inStep(HeardNote note, int step, boolean onPitch) {
    Note n = new Note(note, step, note.midi(), onPitch, false);
    notes.add(n);
    byIndex.put(note.index(), n);
    bySteps.get(step).add(n);
    last = Math.max(last, step);
    forget(step);
  }

  /** A step was played, but neither its pitch nor its sound is known. */
  public void unnamed(int step) {
    unnamed.add(step);
    forget(step);
  }

  /** A note that belongs to no step. */
  public void stray(HeardNote note) {
    Note n = new Note(note, Math.max(0, last), note.midi(), false, true);
    notes.add(n);
    byIndex.put(note.index(), n);
  }

  /**
   * What the sound of a note told.
   *
   * @param index of the note, which has its verdict
   */
  public void sounded(int index, StringEvidence evidence) {
    Note n = byIndex.get(index);
    if (n.stray || !n.onPitch || !evidence.open()) {
      n.evidence = Optional.of(evidence.settled());
    } else {
      n.evidence = Optional.of(evidence);
      open.add(n);
    }
    if (!n.stray) {
      forget(n.step);
      settle(round(n.step));
      boolean looked = true;
      while (looked) {
        looked = lookCloser(round(n.step), IN_DOUBT);
      }
    }
  }

  /**
   * Has the sound of the note whose string is least certain fitted, if any is not quite certain.
   * What one note tells often makes up for a closer look at its neighbours.
   *
   * @return whether there was one
   */
  public boolean lookCloser(int round) {
    return lookCloser(round, WORTH_THE_WORK);
  }

  /** Looks closer at all notes so far that are not quite certain, and lets go of their sound. */
  public void settle() {
    settle(posteriors.length);
  }

  /** The same for the rounds before one. */
  private void settle(int before) {
    for (int round = 0; round < before && !open.isEmpty(); round++) {
      boolean looked = true;
      while (looked) {
        looked = lookCloser(round);
      }
    }
    open.removeIf(
        n -> {
          boolean over = round(n.step) < before;
          n.evidence = over ? n.evidence.map(StringEvidence::settled) : n.evidence;
          return over;
        });
  }

  private boolean lookCloser(int round, double doubt) {
    Note least = null;
    double most = doubt;
    for (Note n : open) {
      double second = round(n.step) == round ? second(strings(n)) : 0;
      if (second >= most) {
        least = n;
        most = second;
      }
    }
    if (least == null) {
      return false;
    }
    Map<GuitarString, Double> strings = strings(least);
    strings.values().removeIf(p -> p < THOUGHT_OF);
    least.evidence = least.evidence.map(e -> e.closer(strings.keySet()).settled());
    open.remove(least);
    forget(least.step);
    return true;
  }

  /** The second highest probability, 0 where there is only one. */
  private static double second(Map<GuitarString, Double> strings) {
    double[] p = strings.values().stream().mapToDouble(Double::doubleValue).sorted().toArray();
    return p.length < 2 ? 0 : p[p.length - 2];
  }

  /** How likely each string is that a note's pitch is under the hand on. */
  private Map<GuitarString, Double> strings(Note n) {
    int round = round(n.step);
    int step = n.step - map.index(round, 0);
    StandPosterior posterior = posterior(round);
    Map<GuitarString, Double> strings = new HashMap<>();
    for (int s = 0; s < map.stands(); s++) {
      double p = posterior.stand(step, s + StandMap.LOWEST);
      map.place(step, s + StandMap.LOWEST)
          .ifPresent(place -> strings.merge(place.string(), p, Double::sum));
    }
    return strings;
  }

  /** The furthest step so far; empty before the first. */
  public OptionalInt last() {
    return last < 0 ? OptionalInt.empty() : OptionalInt.of(last);
  }

  /** Whether the sound of every note of a step has been heard out; a step left out has none. */
  public boolean heardOut(int step) {
    return bySteps.get(step).stream().allMatch(n -> n.evidence.isPresent());
  }

  /** Whether a step's own pitch was heard. */
  public boolean heard(int step) {
    return bySteps.get(step).stream().anyMatch(n -> n.onPitch);
  }

  /** Index into the route's steps of the one on which a shift made on a string first shows. */
  public int shows(PlannedShift shift, GuitarString string) {
    return map.index(shift.round(), map.shows(shift.direction(), shift.pair(), string));
  }

  /** Index into the route's steps of the top note of a round. */
  public int top(int round) {
    return map.index(round, map.top());
  }

  /** Probability that a shift was made on a string, from what was heard so far. */
  public double made(PlannedShift shift, GuitarString string) {
    if (map.index(shift.round(), 0) > last || comesTooLate(shift, string)) {
      return 0;
    }
    return posterior(shift.round()).shifted(shift.direction(), shift.pair(), string);
  }

  /**
   * Whether a shift made there would first show on the next round's first note, for which the hand
   * has to come down all the same: that is none of this round's, unless it was planned so.
   */
  private boolean comesTooLate(PlannedShift shift, GuitarString string) {
    int shows = map.shows(shift.direction(), shift.pair(), string);
    return anotherRoundAfter(shift) && shows == map.steps() - 1 && !string.equals(shift.string());
  }

  /** Probability that the hand never went up to the upper shape; 0 before the round's top. */
  public double stayedBelow(PlannedShift shift) {
    if (top(shift.round()) > last) {
      return 0;
    }
    return posterior(shift.round()).below(map.top(), shift.pair() + 1);
  }

  /**
   * Probability that the hand is still above at the end of a round; 0 before that. A hand that
   * stays above cannot reach the round's last notes: where nothing more of it comes, the last note
   * that it does reach is the end. A shift that it did not make leaves it no way to those farther
   * down. Where another round follows, the end is the note before the one that they share.
   *
   * @param over whether nothing more of the round will come
   */
  public double stayedAbove(PlannedShift shift, boolean over) {
    int end = map.steps() - 1;
    if (heardOf(shift.round()) == end && anotherRoundAfter(shift)) {
      int lowest = shift.pair() + (plannedForItsEnd(shift) ? 2 : 1);
      return shift.direction() == Direction.UP
          ? 0
          : 1 - posterior(shift.round()).below(end - 1, lowest);
    }
    return above(shift, over, true);
  }

  /**
   * Probability that the last note heard is the last one in reach of a hand that stays above. A
   * player who stops there, and whose shift was planned for what follows, has stopped or could not
   * go on.
   */
  public double endsAbove(PlannedShift shift) {
    return above(shift, true, false);
  }

  /**
   * @param passed whether the hand must have passed the planned landing of the first shift that it
   *     did not make
   */
  private double above(PlannedShift shift, boolean over, boolean passed) {
    int end = map.steps() - 1;
    int heard = heardOf(shift.round());
    double above = 0;
    for (int stand = shift.pair() + 1; stand <= map.pairs(); stand++) {
      boolean ended = heard == end || over && heard >= end - stand;
      boolean down = shift.direction() == Direction.DOWN && ended;
      if (down && (!passed || landing(shift.round(), stand - 1) <= last)) {
        above += posterior(shift.round()).stand(heard, stand);
      }
    }
    return above;
  }

  /** Step of a round on which a shift down lands if it is made where planned. */
  private int landing(int round, int pair) {
    return map.shift(round, Direction.DOWN, pair).landingStep();
  }

  /** The furthest step of a round so far, negative before its first. */
  private int heardOf(int round) {
    return Math.min(map.steps() - 1, last - map.index(round, 0));
  }

  private boolean anotherRoundAfter(PlannedShift shift) {
    return map.anotherRoundAfter(shift.round());
  }

  private boolean plannedForItsEnd(PlannedShift shift) {
    return map.shows(shift.direction(), shift.pair(), shift.string()) == map.steps() - 1;
  }

  /**
   * Every place where a note's pitch can be played, from the lowest string up.
   *
   * @param midi its MIDI note number
   */
  public List<PlaceGuess> places(HeardNote note, int midi) {
    Note n = byIndex.get(note.index());
    List<Place> candidates = candidates(midi);
    if (n == null || last < 0 || candidates.isEmpty()) {
      return even(candidates);
    }
    int round = round(n.step);
    int step = n.step - map.index(round, 0);
    StandPosterior posterior = posterior(round);
    double[] p = new double[candidates.size()];
    for (int s = 0; s < map.stands(); s++) {
      double stand = posterior.stand(step, s + StandMap.LOWEST);
      double[] share = shares(n, step, s, candidates);
      for (int i = 0; i < p.length; i++) {
        p[i] += stand * share[i];
      }
    }
    double sum = Arrays.stream(p).sum();
    List<PlaceGuess> guesses = new ArrayList<>();
    for (int i = 0; i < p.length; i++) {
      double own = sum > 0 ? p[i] / sum : 1.0 / p.length;
      guesses.add(
          new PlaceGuess(candidates.get(i), (1 - EVEN_SHARE) * own + EVEN_SHARE / p.length));
    }
    return guesses;
  }

  /** Gives the notes in their steps to those who learn from what is certain. */
  public void teach(Lessons lessons) {
    for (Note n : notes) {
      Optional<StiffnessEstimate> estimate = n.evidence.flatMap(StringEvidence::estimate);
      if (n.onPitch && estimate.isPresent()) {
        teach(n, estimate.get(), lessons);
      }
    }
  }

  private void teach(Note n, StiffnessEstimate estimate, Lessons lessons) {
    int round = round(n.step);
    int step = n.step - map.index(round, 0);
    Map<Place, Double> others = new HashMap<>();
    double sum = 0;
    for (int s = 0; s < map.stands(); s++) {
      Optional<Place> place = map.place(step, s + StandMap.LOWEST);
      if (place.isPresent()) {
        double own = Math.exp(evidence(n, place.get().string()));
        double p = posterior(round).stand(step, s + StandMap.LOWEST) / own;
        others.merge(place.get(), p, Double::sum);
        sum += p;
      }
    }
    double all = sum;
    others.forEach((place, p) -> lessons.note(place, p / all, estimate));
  }

  private int round(int step) {
    return Math.min(posteriors.length - 1, step / (map.steps() - 1));
  }

  private double[] shares(Note n, int step, int s, List<Place> candidates) {
    double[] share = new double[candidates.size()];
    if (n.onPitch) {
      Optional<Place> place = map.place(step, s + StandMap.LOWEST);
      place.map(candidates::indexOf).filter(i -> i >= 0).ifPresent(i -> share[i] = 1);
      return share;
    }
    double sum = 0;
    for (int i = 0; i < share.length; i++) {
      Place place = candidates.get(i);
      share[i] = reach(place.fret(), s) * Math.exp(evidence(n, place.string()));
      sum += share[i];
    }
    for (int i = 0; i < share.length; i++) {
      share[i] /= sum;
    }
    return share;
  }

  private static double evidence(Note n, GuitarString string) {
    return n.evidence.map(e -> e.log(string)).orElse(0.0);
  }

  private List<Place> candidates(int midi) {
    List<Place> places = new ArrayList<>();
    for (GuitarString string : tuning.strings()) {
      int fret = midi - tuning.openMidi(string);
      if (fret >= 0 && fret <= frets) {
        places.add(new Place(string, fret));
      }
    }
    return places;
  }

  private static List<PlaceGuess> even(List<Place> places) {
    return places.stream().map(place -> new PlaceGuess(place, 1.0 / places.size())).toList();
  }

  /** 1 for a fret under the hand in a stand, little for one that is not; open strings are near. */
  private double reach(int fret, int s) {
    int low = Integer.MAX_VALUE;
    int high = Integer.MIN_VALUE;
    for (int step = 0; step <= map.top(); step++) {
      Optional<Place> place = map.place(step, s + StandMap.LOWEST);
      if (place.isPresent()) {
        low = Math.min(low, place.get().fret());
        high = Math.max(high, place.get().fret());
      }
    }
    return fret == 0 || fret >= low - 1 && fret <= high + 1 ? 1 : OUT_OF_REACH;
  }

  private void forget(int step) {
    int round = step / (map.steps() - 1);
    if (round < posteriors.length) {
      posteriors[round] = null;
    }
    if (round > 0) {
      posteriors[round - 1] = null;
    }
  }

  private StandPosterior posterior(int round) {
    if (posteriors[round] == null) {
      posteriors[round] = solve(round);
    }
    return posteriors[round];
  }

  private StandPosterior solve(int round) {
    if (decoders[round] == null) {
      decoders[round] = new HandHmm(map, round, ShiftPrior.USUAL);
    }
    HandHmm decoder = decoders[round];
    decoder.clear();
    int end = Math.min(map.steps() - 1, last - map.index(round, 0));
    for (int step = 0; step <= end; step++) {
      List<Note> here = bySteps.get(map.index(round, step));
      for (Note n : here) {
        if (n.onPitch) {
          decoder.heard(step, n.evidence);
        } else {
          decoder.heardElsewhere(step, elsewhere(n, step));
        }
      }
      if (here.isEmpty() && unnamed.contains(map.index(round, step))) {
        decoder.heard(step, Optional.empty());
      } else if (here.isEmpty()) {
        decoder.leftOut(step, timeForIt(map.index(round, step)));
      } else if (step > 0 && followsOn(map.index(round, step))) {
        decoder.tied(step);
      }
    }
    return decoder.solve(end);
  }

  /** How well another pitch in a step's place fits each stand. */
  private double[] elsewhere(Note n, int step) {
    double[] log = new double[map.stands()];
    List<Place> candidates = candidates(n.midi);
    for (int s = 0; s < log.length; s++) {
      Optional<Place> meant = map.place(step, s + StandMap.LOWEST);
      double sum = 0;
      for (Place place : candidates) {
        double beside = meant.filter(m -> beside(place, m)).isPresent() ? 1 : NOT_BESIDE;
        sum += beside * reach(place.fret(), s) * Math.exp(evidence(n, place.string()));
      }
      log[s] = Math.log(sum);
    }
    return log;
  }

  private static boolean beside(Place place, Place meant) {
    return place.string().equals(meant.string())
        && Math.abs(place.fret() - meant.fret()) <= BESIDE_FRETS;
  }

  /**
   * Whether a step's note began without a stroke and straight after the step before. In overdriven
   * sound a stroke may be missed, more often where the string before still rings than on the same
   * string; there only a slide counts.
   */
  private boolean followsOn(int step) {
    Note first = bySteps.get(step).get(0);
    int at = notes.indexOf(first);
    return first.onPitch
        && first.heard.start() != HeardNote.Start.PLUCK
        && (first.heard.start() == HeardNote.Start.SLIDE || !first.driven())
        && at > 0
        && !notes.get(at - 1).stray
        && notes.get(at - 1).onPitch
        && notes.get(at - 1).step == step - 1;
  }

  /** Whether the notes around a step left out are so far apart that it was played unheard. */
  private boolean timeForIt(int step) {
    int before = step;
    while (before >= 0 && bySteps.get(before).isEmpty()) {
      before--;
    }
    int after = step;
    while (after <= last && bySteps.get(after).isEmpty()) {
      after++;
    }
    if (before < 0 || after > last) {
      return true;
    }
    List<Note> first = bySteps.get(before);
    double from = first.get(first.size() - 1).heard.time();
    double seconds = bySteps.get(after).get(0).heard.time() - from;
    double due = slots.position((long) after) - slots.position((long) before);
    return seconds > (due - 1 + TIME_FOR_IT) * slotSeconds;
  }
}
