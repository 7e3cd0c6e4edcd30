package neckway.practice;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.PlacedShape;
import neckway.neck.Shape;
import neckway.practice.PlanItem.Kind;
import neckway.review.words.Phrases;
import neckway.words.Wording;

/**
 * Makes a plan from what is open.
 *
 * <p>First what fades, then what is being worked at, the longest unplayed first, then what comes
 * next: no more than two pairs that are unsure at a time, the shapes of a pair alone before they
 * are joined, three shapes and more once the pairs hold, joins mixed once each is known alone,
 * another key once one is open. What is practised is spread over days and not repeated in a row
 * (Simmons 2012; Carter and Grahn 2016), and slow enough to be clean, since the share of clean
 * rounds tells what is kept (Duke, Simmons and Cash 2009). Where no source is named, it is common
 * practice.
 */
public final class PlanMaker {
  /** From so many minutes on there is a warm-up. */
  private static final int WARM_UP_FROM = 12;

  private static final int SHORT_WARM_UP = 3;
  private static final int WARM_UP = 5;
  private static final int LONG_SESSION = 30;

  /** Ten minutes of rest in an hour: the usual caution. */
  private static final int PLAYED_AT_MOST = 50;

  private static final int REST = 10;

  /** One thing is played so long before another one comes. */
  private static final int BLOCK = 5;

  private static final int SHORT_BLOCK = 3;
  private static final int SHORT_SESSION = 15;

  private static final int FEWEST_ROUNDS = 2;

  /** So many pairs may be unsure at a time; another one waits until one of them is mostly clean. */
  private static final int AT_A_TIME = 2;

  /** Of the last rounds, so many are looked at, and so large a share clean is mostly clean. */
  private static final int LAST_ROUNDS = 6;

  private static final double MOSTLY = 0.5;

  private static final int FOURTH = 5;

  /** Something that can be played next. */
  private record Candidate(Kind kind, PlayableDrill drill, String why) {}

  private final Reach reach;
  private final Key key;
  private final double target;

  /**
   * @param reach what is open
   */
  public PlanMaker(Reach reach) {
    this.reach = reach;
    this.key = reach.key();
    this.target = reach.target();
  }

  /** At what tempo an exercise is played next, beats a minute of two notes. */
  public static double nextTempo(Progress progress, double target) {
    return Tempos.next(progress, target);
  }

  /**
   * A plan.
   *
   * @param minutes there are, 1 or more
   * @param set a drill that a teacher set, which comes first
   */
  public Plan plan(int minutes, Optional<PlayableDrill> set) {
    List<Candidate> candidates = new ArrayList<>();
    set.ifPresent(
        drill -> candidates.add(new Candidate(kindOf(drill), drill, Wording.of("plan.teacher"))));
    candidates.addAll(candidates());
    return new Plan(reach.today(), minutes, laidOut(minutes, candidates));
  }

  private static Kind kindOf(PlayableDrill drill) {
    return switch (drill.shapes().size()) {
      case 1 -> Kind.SHAPE;
      case 2 -> Kind.JOIN;
      default -> Kind.CHAIN;
    };
  }

  private List<PlanItem> laidOut(int minutes, List<Candidate> candidates) {
    List<PlanItem> items = new ArrayList<>();
    int left = minutes;
    int sinceRest = 0;
    if (minutes >= WARM_UP_FROM) {
      int warmUp = minutes >= LONG_SESSION ? WARM_UP : SHORT_WARM_UP;
      items.add(new PlanItem(Kind.WARM_UP, warmUp, 0, Optional.empty(), Wording.of("plan.warmUp")));
      left -= warmUp;
      sinceRest = warmUp;
    }
    boolean manyThings = BLOCK * candidates.size() > left;
    int block = minutes < SHORT_SESSION || manyThings ? SHORT_BLOCK : BLOCK;
    for (int next = 0; left > 0; next++) {
      if (sinceRest + block > PLAYED_AT_MOST && left >= REST) {
        items.add(new PlanItem(Kind.REST, REST, 0, Optional.empty(), Wording.of("plan.rest")));
        left -= REST;
        sinceRest = 0;
        if (left == 0) {
          break;
        }
      }
      // what would be too short by itself goes to the one before it
      int here = left < block + SHORT_BLOCK ? left : block;
      Candidate candidate = candidates.get(next % candidates.size());
      items.add(item(candidate, here));
      left -= here;
      sinceRest += here;
    }
    return items;
  }

  private static PlanItem item(Candidate candidate, int minutes) {
    return PlannedDrills.item(
        candidate.kind(), minutes, FEWEST_ROUNDS, candidate.drill(), candidate.why());
  }

  private List<Candidate> candidates() {
    List<Candidate> candidates = new ArrayList<>();
    fading(candidates);
    working(candidates);
    int unsure = (int) pairs().stream().filter(this::isUnsure).count();
    if (unsure < AT_A_TIME) {
      comesNext(candidates, AT_A_TIME - unsure);
    }
    chains(candidates);
    mixes(candidates);
    open(candidates);
    if (candidates.size() < 2) {
      shapesAlone(candidates);
    }
    return candidates;
  }

  /** Whether a pair was begun and is not mostly clean yet, up or down. */
  private boolean isUnsure(Shape lower) {
    return Stream.of(Direction.values())
        .map(direction -> reach.joins(lower, direction))
        .flatMap(List::stream)
        .anyMatch(p -> p.state() == State.WORKING && cleanShareOfLast(p) < MOSTLY);
  }

  private static double cleanShareOfLast(Progress progress) {
    List<PlayedRound> all = progress.all();
    List<PlayedRound> last = all.subList(Math.max(0, all.size() - LAST_ROUNDS), all.size());
    return (double) last.stream().filter(PlayedRound::clean).count() / last.size();
  }

  /** Pairs of neighbours, from the minor shape upwards: the one that most players know first. */
  private List<Shape> pairs() {
    List<Shape> pairs = new ArrayList<>();
    Shape lower = Shape.MINOR;
    for (int i = 0; i < Shape.values().length; i++) {
      if (!reach.joins(lower, Direction.UP).isEmpty()) {
        pairs.add(lower);
      }
      lower = lower.next();
    }
    return pairs;
  }

  private void fading(List<Candidate> to) {
    reach.joins().stream()
        .filter(p -> p.state() == State.FADING)
        .sorted(Comparator.comparing(p -> p.lastDay().orElse(reach.today())))
        .forEach(p -> join(p, whyFading(p)).ifPresent(c -> addNew(to, c)));
  }

  private String whyFading(Progress progress) {
    Exercise.OfJoin join = (Exercise.OfJoin) progress.exercise();
    Optional<PlayedRound> clean =
        progress.all().stream().filter(PlayedRound::clean).reduce((a, b) -> b);
    long days =
        ChronoUnit.DAYS.between(clean.map(PlayedRound::day).orElse(reach.today()), reach.today());
    return days == 0
        ? Wording.of("plan.fading.today", named(join))
        : days == 1
            ? Wording.of("plan.fading.yesterday", named(join))
            : Wording.of("plan.fading.days", named(join), days);
  }

  /** "Up on string 3 from minor to major". */
  private static String named(Exercise.OfJoin join) {
    boolean up = join.direction() == Direction.UP;
    Shape from = up ? join.lower() : join.upper();
    Shape to = up ? join.upper() : join.lower();
    return Wording.of(
        up ? "plan.join.up" : "plan.join.down",
        join.string(),
        Phrases.shape(from),
        Phrases.shape(to));
  }

  /** What is being worked at, the longest unplayed first: practice is spread over days. */
  private void working(List<Candidate> to) {
    reach.joins().stream()
        .filter(p -> p.state() == State.WORKING)
        .sorted(
            Comparator.comparing((Progress p) -> p.lastDay().orElse(reach.today()))
                .thenComparingDouble(PlanMaker::cleanShareOfLast))
        .forEach(p -> worked(p, to));
  }

  /** A join that fails slower too is halved: first the shape in which the hand lands, alone. */
  private void worked(Progress progress, List<Candidate> to) {
    if (Tempos.failsSlowerToo(progress)) {
      Exercise.OfJoin join = (Exercise.OfJoin) progress.exercise();
      Shape landing = join.direction() == Direction.UP ? join.upper() : join.lower();
      shape(landing, Wording.of("plan.half", named(join), Phrases.shape(landing)))
          .ifPresent(c -> addNew(to, c));
    }
    join(progress, whyWorking(progress)).ifPresent(c -> addNew(to, c));
  }

  /** What is open is kept open, the longest unplayed first. */
  private void open(List<Candidate> to) {
    reach.joins().stream()
        .filter(p -> p.state() == State.OPEN)
        .sorted(Comparator.comparing((Progress p) -> p.lastDay().orElse(reach.today())))
        .forEach(
            p ->
                join(p, Wording.of("plan.open", named((Exercise.OfJoin) p.exercise())))
                    .ifPresent(c -> addNew(to, c)));
  }

  private static String whyWorking(Progress progress) {
    Exercise.OfJoin join = (Exercise.OfJoin) progress.exercise();
    if (Tempos.failsAgainAndAgain(progress)) {
      return Wording.of("plan.failed", named(join));
    }
    return Wording.counted(
        "plan.working", progress.rounds(), named(join), progress.cleanRounds(), progress.rounds());
  }

  /** The pair of a join, with that join in its own direction and the best known in the other. */
  private Optional<Candidate> join(Progress progress, String why) {
    Exercise.OfJoin join = (Exercise.OfJoin) progress.exercise();
    boolean isUp = join.direction() == Direction.UP;
    Exercise.OfJoin other = best(join.lower(), isUp ? Direction.DOWN : Direction.UP);
    Exercise.OfJoin up = isUp ? join : other;
    Exercise.OfJoin down = isUp ? other : join;
    return drill(join.lower(), List.of(up), List.of(down), Tempos.next(progress, target))
        .map(drill -> new Candidate(Kind.JOIN, drill, why));
  }

  /** The join of a pair in a direction that is known best; where none is, the cleanest. */
  private Exercise.OfJoin best(Shape lower, Direction direction) {
    List<Progress> all = reach.joins(lower, direction);
    Progress best = all.get(0);
    for (Progress progress : all) {
      best = progress.cleanRounds() > best.cleanRounds() ? progress : best;
    }
    return (Exercise.OfJoin) best.exercise();
  }

  /** Three shapes and more, where each pair of them is open. */
  private void chains(List<Candidate> to) {
    List<Shape> pairs = pairs();
    for (int first = 0; first < pairs.size(); first++) {
      List<Shape> open = new ArrayList<>();
      Shape lower = pairs.get(first);
      while (open.size() < 4 && reach.isPairOpen(lower)) {
        open.add(lower);
        lower = lower.next();
      }
      boolean begins = first == 0 || !reach.isPairOpen(pairs.get(first - 1));
      if (open.size() >= 2 && begins) {
        chain(open).ifPresent(c -> addNew(to, c));
      }
    }
  }

  private Optional<Candidate> chain(List<Shape> lowers) {
    List<Shape> shapes = new ArrayList<>(lowers);
    shapes.add(lowers.get(lowers.size() - 1).next());
    String why =
        Wording.of(
            "plan.chain",
            Phrases.shape(shapes.get(0)),
            Phrases.shape(shapes.get(shapes.size() - 1)));
    return playable(shapes, List.of(), List.of(), Math.rint(0.75 * target))
        .map(drill -> new Candidate(Kind.CHAIN, drill, why));
  }

  /** The next joins, and the shapes that they need alone before. */
  private void comesNext(List<Candidate> to, int most) {
    int found = 0;
    for (Shape lower : pairs()) {
      boolean isNew =
          reach.joins(lower, Direction.UP).stream().allMatch(p -> p.state() == State.NEW);
      if (!isNew || found == most) {
        continue;
      }
      found++;
      for (Shape shape : List.of(lower, lower.next())) {
        if (isUnknown(shape)) {
          shape(shape, Wording.of("plan.alone", Phrases.shape(shape)))
              .ifPresent(c -> addNew(to, c));
        }
      }
      Progress progress = reach.joins(lower, Direction.UP).get(0);
      String why = Wording.of("plan.cleanest", named((Exercise.OfJoin) progress.exercise()));
      join(progress, why).ifPresent(c -> addNew(to, c));
    }
    if (found == 0 && pairs().stream().allMatch(reach::isPairOpen)) {
      otherKey(to);
    }
  }

  /** A shape that was played neither alone nor in a join. */
  private boolean isUnknown(Shape shape) {
    return reach.shape(shape).rounds() == 0
        && reach.joins().stream()
            .filter(p -> p.rounds() > 0)
            .map(p -> (Exercise.OfJoin) p.exercise())
            .noneMatch(join -> join.lower() == shape || join.upper() == shape);
  }

  private void otherKey(List<Candidate> to) {
    Key other = key.up(FOURTH);
    playable(
            other,
            List.of(Shape.MINOR, Shape.MAJOR),
            List.of(),
            List.of(),
            Math.rint(0.75 * target))
        .ifPresent(
            drill ->
                addNew(
                    to, new Candidate(Kind.JOIN, drill, Wording.of("plan.otherKey", key, other))));
  }

  /** What is known alone, one join going up and another coming down. */
  private void mixes(List<Candidate> to) {
    for (Shape lower : pairs()) {
      List<Exercise.OfJoin> up = known(lower, Direction.UP);
      List<Exercise.OfJoin> down = known(lower, Direction.DOWN);
      if (up.isEmpty() || down.isEmpty()) {
        continue;
      }
      Exercise.OfJoin going = up.get(up.size() - 1);
      Optional<Exercise.OfJoin> coming =
          down.stream().filter(join -> join.string() != going.string()).findFirst();
      coming
          .flatMap(join -> drill(lower, List.of(going), List.of(join), Math.rint(0.75 * target)))
          .ifPresent(
              drill ->
                  addNew(
                      to,
                      new Candidate(
                          Kind.MIX,
                          drill,
                          Wording.of("plan.mix", going.string(), coming.get().string()))));
    }
  }

  private List<Exercise.OfJoin> known(Shape lower, Direction direction) {
    return reach.joins(lower, direction).stream()
        .filter(p -> p.cleanRounds() > 0)
        .map(p -> (Exercise.OfJoin) p.exercise())
        .toList();
  }

  /** So that no drill is played again and again. */
  private void shapesAlone(List<Candidate> to) {
    for (PlacedShape placed : reach.map().shapes()) {
      shape(placed.shape(), Wording.of("plan.easier", Phrases.shape(placed.shape())))
          .ifPresent(c -> addNew(to, c));
    }
  }

  private Optional<Candidate> shape(Shape shape, String why) {
    double tempo = Tempos.next(reach.shape(shape), target);
    return playable(List.of(shape), List.of(), List.of(), tempo)
        .map(drill -> new Candidate(Kind.SHAPE, drill, why));
  }

  private Optional<PlayableDrill> drill(
      Shape lower, List<Exercise.OfJoin> up, List<Exercise.OfJoin> down, double tempo) {
    return playable(List.of(lower, lower.next()), choices(up), choices(down), tempo);
  }

  private static List<JoinChoice> choices(List<Exercise.OfJoin> joins) {
    return joins.stream().map(join -> JoinChoice.on(join.string(), join.finger())).toList();
  }

  private Optional<PlayableDrill> playable(
      List<Shape> shapes, List<JoinChoice> up, List<JoinChoice> down, double tempo) {
    return playable(key, shapes, up, down, tempo);
  }

  private Optional<PlayableDrill> playable(
      Key of, List<Shape> shapes, List<JoinChoice> up, List<JoinChoice> down, double tempo) {
    return new PlannedDrills(reach.map().neck()).drill(of, shapes, up, down, tempo);
  }

  /** A drill that is there already is not added again, whatever its tempo. */
  private static void addNew(List<Candidate> to, Candidate candidate) {
    boolean known =
        to.stream()
            .anyMatch(c -> c.drill().route().steps().equals(candidate.drill().route().steps()));
    if (!known) {
      to.add(candidate);
    }
  }
}
