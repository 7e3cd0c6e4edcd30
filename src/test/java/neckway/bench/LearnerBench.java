package neckway.bench;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.PlannedShift;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.practice.Exercise;
import neckway.practice.PlanItem;
import neckway.practice.PlanMaker;
import neckway.practice.PlayedRound;
import neckway.practice.Progress;
import neckway.practice.Reach;

/**
 * Some hundred made-up learners practise a month by our plan and by three others. Prints a table.
 *
 * <pre>LearnerBench [--learners N] [--seed S] [--minutes M] [--write FILE]</pre>
 */
public final class LearnerBench {
  private static final int DAYS = 30;
  private static final int WITHOUT = 14;
  private static final double TARGET = 100;

  /** Of three quarters of the target, as in the rule of what is open. */
  private static final double AT_SHARE = 0.75;

  /** Five of six. */
  private static final double HELD = 5.0 / 6;

  private static final LocalDate FIRST = LocalDate.of(2026, 5, 1);
  private static final Neck NECK = new Neck(Key.parse("A minor"), Tuning.STANDARD, 22);
  private static final double SECONDS_A_ROUND = 30;
  private static final int WARM_UP_MINUTES = 3;

  private LearnerBench() {}

  /** How the day's practice is chosen. */
  enum Choice {
    OUR_PLAN,
    FIXED_ORDER,
    RANDOM,
    ALWAYS_THE_WEAKEST
  }

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int learners = Integer.parseInt(StringBench.option(words, "--learners", "300"));
    long seed = Long.parseLong(StringBench.option(words, "--seed", "1"));
    int minutes = Integer.parseInt(StringBench.option(words, "--minutes", "20"));
    StringBuilder table = new StringBuilder();
    table.append("| day's practice | joins held after 30 days | after 14 more without | wins |\n");
    table.append("| --- | --- | --- | --- |\n");
    double[][][] all = new double[Choice.values().length][learners][];
    for (Choice choice : Choice.values()) {
      for (int l = 0; l < learners; l++) {
        all[choice.ordinal()][l] = month(choice, seed + l, minutes);
      }
    }
    for (Choice choice : Choice.values()) {
      double[][] mine = all[choice.ordinal()];
      table.append(
          String.format(
              Locale.ROOT,
              "| %s | %s | %s | %s |%n",
              choice.name().toLowerCase(Locale.ROOT).replace('_', ' '),
              spread(mine, 0),
              spread(mine, 1),
              choice == Choice.OUR_PLAN ? "" : wins(all[0], mine)));
    }
    System.out.print(table);
    String write = StringBench.option(words, "--write", "");
    if (!write.isEmpty()) {
      new MarkedPart(Path.of(write), "learners")
          .write(LearnerBench.class, String.join(" ", words), table.toString());
    }
  }

  private static String spread(double[][] of, int which) {
    double mean = Arrays.stream(of).mapToDouble(x -> x[which]).average().orElse(0);
    double variance =
        Arrays.stream(of).mapToDouble(x -> Math.pow(x[which] - mean, 2)).average().orElse(0);
    return String.format(Locale.ROOT, "%.2f ± %.2f", mean, Math.sqrt(variance));
  }

  private static String wins(double[][] ours, double[][] theirs) {
    int wins = 0;
    int losses = 0;
    for (int l = 0; l < ours.length; l++) {
      wins += ours[l][1] > theirs[l][1] ? 1 : 0;
      losses += ours[l][1] < theirs[l][1] ? 1 : 0;
    }
    return "our plan " + wins + ", this " + losses;
  }

  /** The share of pairs, up and down, that are held at the end, and two weeks later. */
  private static double[] month(Choice choice, long seed, int minutes) {
    Learner learner = new Learner(seed);
    Random random = new Random(seed);
    List<PlayedRound> log = new ArrayList<>();
    for (int day = 0; day < DAYS; day++) {
      Reach reach = Reach.of(NECK, log, TARGET, FIRST.plusDays(day));
      for (Exercises todo : today(choice, reach, minutes, random)) {
        play(todo, learner, day, log);
      }
    }
    return new double[] {held(learner, DAYS), held(learner, DAYS + WITHOUT)};
  }

  /** What a drill exercises, how often and at which share of the target. */
  private record Exercises(List<Exercise> each, int rounds, double share) {}

  private static void play(Exercises todo, Learner learner, int day, List<PlayedRound> log) {
    LocalDate date = FIRST.plusDays(day);
    for (int round = 0; round < todo.rounds(); round++) {
      for (Exercise exercise : todo.each()) {
        boolean clean = learner.play(exercise, todo.share(), day);
        log.add(
            new PlayedRound(
                exercise,
                date.atStartOfDay().toInstant(ZoneOffset.UTC).plusSeconds(log.size()),
                date,
                clean,
                todo.share() * TARGET,
                OptionalDouble.empty()));
      }
    }
  }

  private static double held(Learner learner, int day) {
    Reach empty = Reach.of(NECK, List.of(), TARGET, FIRST);
    int held = 0;
    int all = 0;
    for (Shape lower : Shape.values()) {
      for (Direction direction : Direction.values()) {
        all++;
        boolean any =
            empty.joins(lower, direction).stream()
                .anyMatch(p -> learner.clean(p.exercise(), AT_SHARE, day) >= HELD);
        held += any ? 1 : 0;
      }
    }
    return (double) held / all;
  }

  private static List<Exercises> today(Choice choice, Reach reach, int minutes, Random random) {
    int rounds = (int) (minutes * 60 / SECONDS_A_ROUND);
    // whoever follows no plan warms up too
    int withoutWarmUp = rounds - (int) (WARM_UP_MINUTES * 60 / SECONDS_A_ROUND);
    return switch (choice) {
      case OUR_PLAN -> planned(reach, minutes, rounds);
      case FIXED_ORDER -> spreadOver(reach, List.of(Shape.values()), withoutWarmUp);
      case RANDOM -> {
        List<Shape> three = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
          three.add(Shape.values()[random.nextInt(5)]);
        }
        yield spreadOver(reach, three, withoutWarmUp);
      }
      case ALWAYS_THE_WEAKEST ->
          spreadOver(
              reach,
              List.of(
                  Arrays.stream(Shape.values())
                      .min(Comparator.comparingDouble(s -> cleanShare(reach, s)))
                      .orElseThrow()),
              withoutWarmUp);
    };
  }

  private static double cleanShare(Reach reach, Shape lower) {
    Progress up = reach.joins(lower, Direction.UP).get(0);
    Progress down = reach.joins(lower, Direction.DOWN).get(0);
    int rounds = up.rounds() + down.rounds();
    return rounds == 0 ? 0 : (double) (up.cleanRounds() + down.cleanRounds()) / rounds;
  }

  private static List<Exercises> spreadOver(Reach reach, List<Shape> lowers, int rounds) {
    List<Exercises> todo = new ArrayList<>();
    for (Shape lower : lowers) {
      Progress up = reach.joins(lower, Direction.UP).get(0);
      Progress down = reach.joins(lower, Direction.DOWN).get(0);
      List<Exercise> both = List.of(up.exercise(), down.exercise());
      todo.add(
          new Exercises(
              both, Math.max(1, rounds / lowers.size()), PlanMaker.nextTempo(up, TARGET) / TARGET));
    }
    return todo;
  }

  /** The plan's items, each in as many of the day's rounds as it has of the minutes. */
  private static List<Exercises> planned(Reach reach, int minutes, int rounds) {
    List<Exercises> todo = new ArrayList<>();
    for (PlanItem item : new PlanMaker(reach).plan(minutes, Optional.empty()).items()) {
      Optional<PlayableDrill> drill = item.drill().filter(d -> d.key().equals(NECK.key()));
      int here = Math.max(1, rounds * item.minutes() / minutes);
      drill.ifPresent(d -> todo.add(new Exercises(exercises(d), here, d.pulse().tempo() / TARGET)));
    }
    return todo;
  }

  private static List<Exercise> exercises(PlayableDrill drill) {
    if (drill.shapes().size() == 1) {
      return List.of(new Exercise.OfShape(drill.shapes().get(0)));
    }
    List<Exercise> each = new ArrayList<>();
    for (PlannedShift shift : drill.once().route().shifts()) {
      each.add(
          new Exercise.OfJoin(
              drill.shapes().get(shift.pair()),
              drill.shapes().get(shift.pair() + 1),
              shift.direction(),
              shift.string().number(),
              shift.finger()));
    }
    return each;
  }
}
