package neckway.bench;

import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import neckway.practice.Exercise;

/**
 * A player who is made up: each exercise has a strength that grows with each round and is forgotten
 * from day to day.
 *
 * <p>Growth follows the power law of practice (Newell and Rosenbloom 1981): each round closes a
 * share of what is missing, a clean round more of it than one that fails (Duke, Simmons and Cash
 * 2009 found clean trials to help retention and failed ones to harm it). Forgetting is exponential
 * in days, with a half-life that grows with each day on which it was practised (spacing; the form
 * is that of half-life regression, Settles and Meeder 2016). Both named from memory; the sizes are
 * drawn for each learner, since nobody has measured them for this.
 */
final class Learner {
  private final Random random;
  private final double learns;
  private final double failedHelps;
  private final double firstHalfLifeDays;
  private final double spacing;
  private final double steepness;
  private final double tired;
  private final Map<Exercise, Skill> skills = new HashMap<>();
  private int roundsToday;
  private int today = -1;

  private static final class Skill {
    private double strength;
    private double halfLifeDays;
    private int lastDay = -1;
    private int runningSame;
  }

  Learner(long seed) {
    random = new Random(seed);
    learns = between(0.002, 0.01);
    failedHelps = between(0.1, 0.5);
    firstHalfLifeDays = between(2, 6);
    spacing = between(1.3, 1.9);
    steepness = between(6, 14);
    tired = between(0, 0.004);
  }

  private double between(double least, double most) {
    return least + (most - least) * random.nextDouble();
  }

  private Skill skill(Exercise exercise) {
    return skills.computeIfAbsent(
        exercise,
        e -> {
          Skill skill = new Skill();
          skill.strength = 0.15 + 0.2 * random.nextDouble();
          skill.halfLifeDays = firstHalfLifeDays;
          return skill;
        });
  }

  private double strength(Skill skill, int day) {
    return skill.lastDay < 0
        ? skill.strength
        : skill.strength * Math.pow(0.5, (day - skill.lastDay) / skill.halfLifeDays);
  }

  /**
   * How likely a round is clean.
   *
   * @param share of the target tempo
   */
  double clean(Exercise exercise, double share, int day) {
    double own = cleanAlone(exercise, share, day);
    if (exercise instanceof Exercise.OfJoin join) {
      // whoever stumbles in a shape stumbles in each run through it
      return own
          * cleanAlone(new Exercise.OfShape(join.lower()), share, day)
          * cleanAlone(new Exercise.OfShape(join.upper()), share, day);
    }
    return own;
  }

  private double cleanAlone(Exercise exercise, double share, int day) {
    double ease = strength(skill(exercise), day) - 0.45 * share;
    return 0.99 / (1 + Math.exp(-steepness * ease));
  }

  /** Plays a round; whether it was clean. */
  boolean play(Exercise exercise, double share, int day) {
    if (day != today) {
      today = day;
      roundsToday = 0;
    }
    boolean clean = random.nextDouble() < clean(exercise, share, day) - tired * roundsToday++;
    practise(exercise, day, clean);
    if (exercise instanceof Exercise.OfJoin join) {
      practise(new Exercise.OfShape(join.lower()), day, clean);
      practise(new Exercise.OfShape(join.upper()), day, clean);
    }
    return clean;
  }

  private void practise(Exercise exercise, int day, boolean clean) {
    Skill skill = skill(exercise);
    double strength = strength(skill, day);
    if (skill.lastDay >= 0 && day > skill.lastDay) {
      skill.halfLifeDays = Math.min(120, skill.halfLifeDays * spacing);
      skill.runningSame = 0;
    }
    // the tenth time in a row teaches less than the first (common practice, no source)
    double fresh = 1 / (1 + 0.05 * skill.runningSame++);
    strength += (1 - strength) * learns * fresh * (clean ? 1 : failedHelps);
    skill.strength = strength;
    skill.lastDay = day;
  }
}
