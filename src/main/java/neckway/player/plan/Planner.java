package neckway.player.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.player.plan.PlayedNote.How;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Guitar;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.words.Wording;

/** Turns a route, mistakes and habits into the list of notes to be played, at human times. */
public final class Planner {
  private static final double SKIP_CLOSES_UP_SHARE = 0.75;
  private static final double LEAST_SLOT_SHARE = 0.2;

  /** A note that has its slot but not its time yet. */
  private record Draft(
      double slot,
      double extraMs,
      WrongNotes.Choice choice,
      PlayedNote.Kind kind,
      OptionalInt step,
      int attempt,
      Optional<PlannedShift> landing) {}

  private final PlayerSettings settings;
  private final Route route;
  private final Pulse pulse;
  private final Random random;
  private final List<Mistake> mistakes;
  private final HandPath path;
  private final WrongNotes wrongNotes;
  private final List<Draft> drafts = new ArrayList<>();

  public Planner(
      PlayerSettings settings, Route route, Pulse pulse, List<Mistake> listed, Random random) {
    this.settings = settings;
    this.route = route;
    this.pulse = pulse;
    this.random = random;
    mistakes = new ArrayList<>(listed);
    mistakes.addAll(new ChanceMistakes(route, random).draw(settings.behaviour(), listed));
    for (Mistake mistake : mistakes) {
      check(mistake);
    }
    path = new HandPath(route, all(Mistake.ShiftElsewhere.class), random);
    wrongNotes = new WrongNotes(route, path, random);
  }

  public Plan plan() {
    Behaviour behaviour = settings.behaviour();
    double firstBeat =
        settings
            .firstBeat()
            .orElse(0.2 + 0.2 * random.nextDouble() + pulse.countIn() * pulse.beatSeconds());
    double slot = behaviour.lateSlots();
    if (behaviour.stranger().isPresent()) {
      if (behaviour.stranger().get() == Behaviour.Stranger.RANDOM) {
        draftAnything();
      }
    } else if (behaviour.againAfter().isPresent()) {
      int after = behaviour.againAfter().getAsInt();
      slot = draftRun(slot, 0, after, List.of()) + behaviour.pauseSlots();
      draftRun(slot, 1, lastStep(), mistakes);
    } else {
      draftRun(slot, 0, lastStep(), mistakes);
    }
    List<PlayedNote> notes = timed(firstBeat);
    double slotSeconds = pulse.slotSeconds();
    double end = firstBeat + pulse.dueSeconds(route.steps().size());
    if (!notes.isEmpty()) {
      end = notes.get(notes.size() - 1).time() + slotSeconds;
    }
    return new Plan(
        firstBeat,
        end + settings.tailSeconds(),
        notes,
        shifts(notes),
        mistakes,
        bestAttempt(notes),
        skipped(notes, bestAttempt(notes)));
  }

  private int lastStep() {
    return settings.behaviour().stopAfter().orElse(route.steps().size() - 1);
  }

  private void check(Mistake mistake) {
    int step =
        mistake instanceof Mistake.Slip slip
            ? slip.step()
            : mistake instanceof Mistake.Late late ? late.step() : 0;
    if (step >= route.steps().size()) {
      throw new BadInput(Wording.of("music.player.noStep", step, route.steps().size() - 1));
    }
  }

  private <T extends Mistake> List<T> all(Class<T> sort) {
    return mistakes.stream().filter(sort::isInstance).map(sort::cast).toList();
  }

  /** Drafts steps up to the last one given; answers with the next free slot. */
  private double draftRun(double firstSlot, int attempt, int lastStep, List<Mistake> active) {
    Map<Integer, Mistake.Slip> instead = new HashMap<>();
    Map<Integer, List<Mistake.Slip>> after = new HashMap<>();
    Map<Integer, Double> lateMs = new HashMap<>();
    for (Mistake mistake : active) {
      if (mistake instanceof Mistake.Slip slip) {
        switch (slip.kind()) {
          case WRONG, SKIP -> instead.put(slip.step(), slip);
          case REPEAT, EXTRA ->
              after.computeIfAbsent(slip.step(), s -> new ArrayList<>()).add(slip);
        }
      } else if (mistake instanceof Mistake.Late late) {
        lateMs.merge(late.step(), late.ms(), Double::sum);
      }
    }
    boolean closesUp = random.nextDouble() < SKIP_CLOSES_UP_SHARE;
    double slot = firstSlot;
    WrongNotes.Choice before = null;
    for (HandPath.Stop stop : path.stops()) {
      int index = stop.step().index();
      if (index > lastStep) {
        break;
      }
      Mistake.Slip slip = instead.get(index);
      if (slip != null && slip.kind() == Mistake.Kind.SKIP) {
        slot += closesUp ? 0 : 1;
        continue;
      }
      WrongNotes.Choice right = new WrongNotes.Choice(stop.place(), stop.step().midi());
      boolean wrong = slip != null;
      WrongNotes.Choice played = wrong ? wrongNotes.instead(stop, slip.midi()) : right;
      double late = lateMs.getOrDefault(index, 0.0);
      OptionalInt step = OptionalInt.of(index);
      PlayedNote.Kind kind = wrong ? PlayedNote.Kind.WRONG : PlayedNote.Kind.RIGHT;
      drafts.add(new Draft(slot, late, played, kind, step, attempt, stop.landing()));
      slot += Math.max(0, Math.round(late / 1000 / pulse.slotSeconds()));
      List<Mistake.Slip> more = after.getOrDefault(index, List.of());
      for (int i = 0; i < more.size(); i++) {
        double part = (i + 0.85 + 0.25 * random.nextDouble()) / (more.size() + 0.95);
        boolean again = more.get(i).kind() == Mistake.Kind.REPEAT;
        drafts.add(
            new Draft(
                slot + part,
                0,
                again ? played : wrongNotes.stray(stop, more.get(i).midi()),
                again ? PlayedNote.Kind.REPEAT : PlayedNote.Kind.EXTRA,
                again ? step : OptionalInt.empty(),
                attempt,
                Optional.empty()));
      }
      slot++;
    }
    return slot;
  }

  private void draftAnything() {
    for (int slot = 0; slot < route.steps().size(); slot++) {
      drafts.add(
          new Draft(
              slot,
              0,
              wrongNotes.anything(),
              PlayedNote.Kind.EXTRA,
              OptionalInt.empty(),
              0,
              Optional.empty()));
    }
  }

  private List<PlayedNote> timed(double firstBeat) {
    Habits habits = settings.habits();
    double slotSeconds = pulse.slotSeconds();
    double wanderPhase = 2 * Math.PI * random.nextDouble();
    double wanderSlots = 12 + 20 * random.nextDouble();
    List<PlayedNote> notes = new ArrayList<>();
    double previous = -1;
    Draft last = null;
    for (Draft draft : drafts) {
      double wander =
          habits.timing().driftMs()
              * Math.sin(wanderPhase + 2 * Math.PI * draft.slot() / wanderSlots);
      double ms =
          habits.timing().biasMs()
              + wander
              + habits.timing().jitterMs() * Math.max(-2.6, Math.min(2.6, random.nextGaussian()))
              + draft.extraMs();
      double time =
          Math.max(
              0.01, firstBeat + pulse.slots().position(draft.slot()) * slotSeconds + ms / 1000);
      if (last != null) {
        time = Math.max(time, previous + LEAST_SLOT_SHARE * slotSeconds);
      }
      long frame = Math.round(time * settings.sampleRate());
      notes.add(note(draft, last, frame));
      previous = time;
      last = draft;
    }
    return notes;
  }

  private PlayedNote note(Draft draft, Draft last, long frame) {
    Habits habits = settings.habits();
    How how = How.PLUCK;
    OptionalInt slideFrom = OptionalInt.empty();
    boolean sameString =
        last != null
            && last.attempt() == draft.attempt()
            && last.choice().place().string().equals(draft.choice().place().string())
            && draft.slot() - last.slot() < 2.5;
    int from = sameString ? last.choice().place().fret() : 0;
    int travel = draft.choice().place().fret() - from;
    boolean stepwise =
        draft.kind() == PlayedNote.Kind.RIGHT || draft.kind() == PlayedNote.Kind.WRONG;
    if (sameString && stepwise && travel != 0) {
      if (draft.landing().isPresent()
          && random.nextDouble() < habits.legato().slideShare()
          && from > 0) {
        slideFrom = OptionalInt.of(from);
        how = random.nextDouble() < habits.legato().pluckedSlideShare() ? How.PLUCK : How.SLIDE;
      } else if (random.nextDouble() < habits.legato().share() && Math.abs(travel) <= 5) {
        how = travel > 0 ? How.HAMMER : How.PULL;
      }
    }
    double db = Math.max(-3, Math.min(3, random.nextGaussian())) * habits.pick().dynamicsDb();
    double velocity = Math.pow(10, db / 20);
    int transpose = settings.behaviour().transpose();
    WrongNotes.Choice choice = draft.choice().moved(transpose);
    if (slideFrom.isPresent()) {
      slideFrom = OptionalInt.of(Math.max(0, slideFrom.getAsInt() + transpose));
    }
    return new PlayedNote(
        frame,
        (double) frame / settings.sampleRate(),
        choice.place(),
        choice.midi(),
        cents(choice.place().string()),
        how,
        velocity,
        draft.kind(),
        draft.step(),
        draft.attempt(),
        slideFrom);
  }

  private double cents(GuitarString string) {
    Guitar guitar = settings.guitar();
    return guitar.stringCents().get(string.number() - 1)
        + guitar.fretCents() * random.nextGaussian();
  }

  /** The one that got furthest; of those that got equally far the least faulty, then the latest. */
  private int bestAttempt(List<PlayedNote> notes) {
    int attempts = notes.stream().mapToInt(PlayedNote::attempt).max().orElse(0) + 1;
    return IntStream.range(0, attempts)
        .boxed()
        .max(
            Comparator.comparingInt((Integer a) -> furthest(notes, a))
                .thenComparingInt(a -> -slips(notes, a))
                .thenComparingInt(a -> a))
        .orElse(0);
  }

  private static int slips(List<PlayedNote> notes, int attempt) {
    long faulty =
        notes.stream()
            .filter(n -> n.attempt() == attempt && n.kind() != PlayedNote.Kind.RIGHT)
            .count();
    return (int) faulty + skipped(notes, attempt).size();
  }

  private static int furthest(List<PlayedNote> notes, int attempt) {
    return notes.stream()
        .filter(n -> n.attempt() == attempt && n.step().isPresent())
        .mapToInt(n -> n.step().getAsInt())
        .max()
        .orElse(-1);
  }

  private static List<Integer> skipped(List<PlayedNote> notes, int attempt) {
    Set<Integer> played = new HashSet<>();
    notes.stream()
        .filter(n -> n.attempt() == attempt)
        .forEach(n -> n.step().ifPresent(played::add));
    List<Integer> left = new ArrayList<>();
    for (int step = 0; step < furthest(notes, attempt); step++) {
      if (!played.contains(step)) {
        left.add(step);
      }
    }
    return left;
  }

  private List<PlayedShift> shifts(List<PlayedNote> notes) {
    int best = bestAttempt(notes);
    int last = furthest(notes, best);
    double[] gaps =
        IntStream.range(1, notes.size())
            .filter(i -> notes.get(i).attempt() == notes.get(i - 1).attempt())
            .mapToDouble(i -> notes.get(i).time() - notes.get(i - 1).time())
            .sorted()
            .toArray();
    List<PlayedShift> shifts = new ArrayList<>();
    for (PlannedShift planned : route.shifts()) {
      int landing = path.landingStep(planned);
      Optional<GuitarString> hand = path.handAt(planned);
      if (last < landing && !(hand.isEmpty() && last == lastPlayable())) {
        shifts.add(
            new PlayedShift(
                planned, PlayedShift.Outcome.UNPLAYED, Optional.empty(), OptionalDouble.empty()));
      } else if (hand.isEmpty()) {
        shifts.add(
            new PlayedShift(
                planned, PlayedShift.Outcome.MISSED, Optional.empty(), OptionalDouble.empty()));
      } else {
        PlayedShift.Outcome outcome =
            hand.get().equals(planned.string())
                ? PlayedShift.Outcome.MADE
                : PlayedShift.Outcome.MOVED;
        shifts.add(new PlayedShift(planned, outcome, hand, lateMs(notes, best, landing, gaps)));
      }
    }
    return shifts;
  }

  private int lastPlayable() {
    return path.stops().get(path.stops().size() - 1).step().index();
  }

  private OptionalDouble lateMs(List<PlayedNote> notes, int attempt, int step, double[] gaps) {
    for (int i = 1; i < notes.size(); i++) {
      PlayedNote note = notes.get(i);
      if (note.attempt() == attempt
          && note.step().equals(OptionalInt.of(step))
          && notes.get(i - 1).attempt() == attempt) {
        double median = (gaps[(gaps.length - 1) / 2] + gaps[gaps.length / 2]) / 2;
        return OptionalDouble.of(1000 * (note.time() - notes.get(i - 1).time() - median));
      }
    }
    return OptionalDouble.empty();
  }
}
