package neckway.hand;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hear.HeardNote;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.string.GuitarProfile;
import neckway.string.Lessons;
import neckway.string.StringEvidence;
import neckway.string.Telling;

/**
 * Follows the hand through a run as verdicts and the sound of the notes come, and says of each
 * shift what became of it as soon as that is likely enough. What was said is kept. Of an open
 * drill, the steps of which do not go up and down its shapes in rounds, nothing is said.
 */
public final class ShiftDetector {
  /** A verdict is given from this probability on. */
  static final double SURE = 0.9;

  /**
   * The same of a shift made where planned. The plan alone makes 0.84 against one next string, so
   * the sound must speak for it twofold.
   */
  static final double SURE_MADE = 0.92;

  /**
   * The same, in clean sound, on a string that is told only fairly from the next one, or worse:
   * threefold.
   */
  static final double SURE_FAIRLY_TOLD = 0.94;

  /**
   * The same, in clean sound, on a string that sounds like the next one: the sound alone must make
   * 0.9 of it, ninefold.
   */
  static final double SURE_ALIKE = 0.98;

  /**
   * Strings nearer each other than that, in standard deviations of one note, sound alike: one note
   * in six or more would be taken for the other's.
   */
  static final double ALIKE = 2;

  /**
   * A string may have been learnt wrongly, and each of its notes then speaks against the plan: a
   * shift is said to be made elsewhere from this probability on.
   */
  public static final double SURE_ELSEWHERE = 0.95;

  /** What is as likely as this is worth a closer look at notes that are not quite certain. */
  private static final double LIKELY = 0.5;

  private final PlayableDrill drill;
  private final Optional<GuitarProfile> guitar;
  private final BiConsumer<Integer, ShiftSaid> listener;
  private int notes;
  private int drivenNotes;
  private final List<HandTrack> attempts = new ArrayList<>();

  /** The attempt of each note that has its verdict, by the note's index. */
  private final Map<Integer, Integer> attemptOf = new HashMap<>();

  /**
   * What the sound of notes told that have no verdict yet, by the note's index. Verdicts come in
   * the order of the notes; one that was passed over gets none.
   */
  private final NavigableMap<Integer, StringEvidence> undecided = new TreeMap<>();

  private final List<Map<PlannedShift, ShiftSaid>> said = new ArrayList<>();

  /**
   * @param drill what the run is held against
   * @param guitar the guitar played, if it was learnt
   * @param listener told of each attempt what became of its shifts
   */
  public ShiftDetector(
      PlayableDrill drill,
      Optional<GuitarProfile> guitar,
      BiConsumer<Integer, ShiftSaid> listener) {
    this.guitar = guitar;
    this.listener = listener;
    this.drill = drill;
  }

  /** A verdict was given. */
  public void decided(NoteVerdict v) {
    if (drill.isCalled()) {
      return;
    }
    HandTrack track = track(v.attempt());
    if (v.step().isPresent()) {
      track.inStep(v.note(), v.step().getAsInt(), v.verdict() != Verdict.WRONG);
    } else {
      track.stray(v.note());
    }
    int index = v.note().index();
    attemptOf.put(index, v.attempt());
    Optional.ofNullable(undecided.remove(index)).ifPresent(e -> track.sounded(index, e));
    undecided.headMap(index).clear();
    if (v.step().isPresent()) {
      judge(v.attempt(), v.decided());
    }
  }

  /** A step was heard in its time, but not what it was. */
  public void unnamed(int attempt, int step) {
    if (drill.isCalled()) {
      return;
    }
    track(attempt).unnamed(step);
  }

  /**
   * The sound of a note was heard out, before its verdict or after it.
   *
   * @param now seconds of the take heard so far
   */
  public void sounded(HeardNote note, StringEvidence evidence, double now) {
    if (drill.isCalled()) {
      return;
    }
    notes++;
    drivenNotes += evidence.driven() ? 1 : 0;
    Integer attempt = attemptOf.get(note.index());
    if (attempt == null) {
      undecided.put(note.index(), evidence);
      return;
    }
    attempts.get(attempt).sounded(note.index(), evidence);
    judge(attempt, now);
  }

  /** The take is over: what is still open cannot be told. */
  public void finish(double seconds) {
    for (int a = 0; a < attempts.size(); a++) {
      giveUp(a, Integer.MAX_VALUE, seconds);
      attempts.get(a).settle();
    }
  }

  /** What was said of a shift in an attempt. */
  public Optional<ShiftSaid> said(int attempt, PlannedShift shift) {
    return attempt < said.size()
        ? Optional.ofNullable(said.get(attempt).get(shift))
        : Optional.empty();
  }

  /** Where a note may have been played, from all that was heard. */
  public List<PlaceGuess> places(int attempt, HeardNote note, int midi) {
    return drill.isCalled() ? anywhere(midi) : track(attempt).places(note, midi);
  }

  /** Every place of a pitch, one as likely as another. */
  private List<PlaceGuess> anywhere(int midi) {
    List<Place> places =
        drill.tuning().strings().stream()
            .filter(string -> isOn(string, midi))
            .map(string -> new Place(string, midi - drill.tuning().openMidi(string)))
            .toList();
    return places.stream().map(place -> new PlaceGuess(place, 1.0 / places.size())).toList();
  }

  private boolean isOn(GuitarString string, int midi) {
    int fret = midi - drill.tuning().openMidi(string);
    return fret >= 0 && fret <= drill.frets();
  }

  /** What the run teaches of the guitar; empty where that is not known. */
  public Optional<Lessons> lessons() {
    return guitar.map(
        learnt -> {
          Lessons lessons = new Lessons(learnt);
          attempts.forEach(track -> track.teach(lessons));
          return lessons;
        });
  }

  /** Whether the notes that are certain do not sound like the guitar that was learnt. */
  public boolean hearsAnotherGuitar() {
    return lessons().filter(Lessons::areOfAnotherGuitar).isPresent();
  }

  private boolean sure(ShiftSaid s) {
    double enough =
        switch (s.verdict()) {
          case MADE -> sureMade(s.planned().string());
          case MOVED -> SURE_ELSEWHERE;
          case MISSED, UNHEARD, UNPLAYED -> SURE;
        };
    return s.p().orElse(0) >= enough;
  }

  /**
   * From which probability on a shift is said to be made as planned on a string. It differs from
   * one on the next string in one note, which lies on the one string or on the other. The more
   * these sound alike, the more of the probability is the plan alone. In overdriven sound a
   * string's spread is mostly what all its notes have alike, so there the notes are asked.
   */
  private double sureMade(GuitarString string) {
    double apart = apart(string);
    if (drivenShare() < 1 && apart < ALIKE) {
      return SURE_ALIKE;
    }
    return Telling.of(apart) == Telling.WELL
        ? SURE_MADE
        : SURE_FAIRLY_TOLD + drivenShare() * (SURE_MADE - SURE_FAIRLY_TOLD);
  }

  /** 0 in clean sound, 1 where half of the notes were overdriven or more. */
  private double drivenShare() {
    return notes == 0 ? 0 : Math.min(1, 2.0 * drivenNotes / notes);
  }

  private HandTrack track(int attempt) {
    while (attempts.size() <= attempt) {
      attempts.forEach(HandTrack::settle);
      attempts.add(
          new HandTrack(
              drill.route(),
              drill.tuning(),
              drill.frets(),
              drill.pulse().slotSeconds(),
              drill.pulse().slots()));
      said.add(new HashMap<>());
    }
    return attempts.get(attempt);
  }

  private void judge(int attempt, double now) {
    HandTrack track = attempts.get(attempt);
    if (track.last().isEmpty()) {
      return;
    }
    int last = track.last().getAsInt();
    for (PlannedShift shift : drill.route().shifts()) {
      if (!said.get(attempt).containsKey(shift)) {
        verdict(track, shift, LIKELY, false, now).ifPresent(s -> say(attempt, s));
      }
    }
    giveUp(attempt, last, now);
  }

  /**
   * What became of a shift, if that is certain enough, or becomes so by a closer look.
   *
   * @param likely how likely something must be for that
   * @param over whether nothing more of its way will come
   */
  private Optional<ShiftSaid> verdict(
      HandTrack track, PlannedShift shift, double likely, boolean over, double now) {
    while (true) {
      List<ShiftSaid> outcomes = outcomes(track, shift, over, now);
      Optional<ShiftSaid> said = outcomes.stream().filter(this::sure).findFirst();
      boolean worthALook = outcomes.stream().anyMatch(s -> s.p().orElse(0) >= likely);
      if (said.isPresent() && hearsAnotherGuitar()) {
        return Optional.empty();
      }
      if (said.isPresent() || !worthALook || !track.lookCloser(shift.round())) {
        return said;
      }
    }
  }

  /** What may have become of a shift by the notes that were heard out. */
  private List<ShiftSaid> outcomes(HandTrack track, PlannedShift shift, boolean over, double now) {
    List<ShiftSaid> outcomes = new ArrayList<>();
    int last = track.last().orElse(-1);
    for (GuitarString string : drill.tuning().strings()) {
      int shows = track.shows(shift, string);
      boolean known = shows <= last && track.heard(shows) && track.heardOut(shows);
      if (known) {
        outcomes.add(ShiftSaid.on(shift, string, track.made(shift, string), now));
      }
    }
    if (last > track.top(shift.round())) {
      double missed = track.stayedBelow(shift);
      if (shift.direction() == Direction.DOWN) {
        missed = Math.max(missed, track.stayedAbove(shift, over));
      }
      outcomes.add(ShiftSaid.missed(shift, missed, now));
    }
    return outcomes;
  }

  /** How far a string lies from the next one on either side, the nearer of both. */
  private double apart(GuitarString string) {
    return guitar
        .map(learnt -> learnt.apartFromNeighbours(string))
        .orElse(Double.POSITIVE_INFINITY);
  }

  private void say(int attempt, ShiftSaid shift) {
    said.get(attempt).put(shift.planned(), shift);
    listener.accept(attempt, shift);
  }

  /** Shifts whose way is over by a step, and of which nothing could be said. */
  private void giveUp(int attempt, int last, double now) {
    HandTrack track = attempts.get(attempt);
    for (PlannedShift shift : drill.route().shifts()) {
      int over = track.top(shift.round()) + 2;
      if (shift.direction() == Direction.DOWN) {
        over = track.top(shift.round() + 1) - track.top(0) + 2;
      }
      if (last >= over && !said.get(attempt).containsKey(shift)) {
        boolean played =
            shift.landingStep() <= track.last().orElse(-1) || track.endsAbove(shift) >= LIKELY;
        verdict(track, shift, 0, true, now)
            .or(() -> Optional.of(ShiftSaid.unheard(shift, now)).filter(unheard -> played))
            .ifPresent(s -> say(attempt, s));
      }
    }
  }
}
