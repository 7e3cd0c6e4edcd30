package neckway.practice;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.hear.RobustStatistics;

/**
 * How far one exercise has come, from its rounds in the order in which they were played.
 *
 * <p>It is open after a round when, of the last six rounds at three quarters of the target tempo or
 * more, five are clean, over two days or more; slower rounds change nothing. It fades when the last
 * two of the fast ones are both not clean, or when it goes unplayed for longer than twice the
 * longest gap between two of its clean days, taken as at least 7 and at most 60 days. All figures
 * are common practice, no source.
 */
public final class Progress {
  /** Rounds at so large a share of the target tempo count. */
  private static final double FAST_SHARE = 0.75;

  private static final int LOOKED_AT = 6;
  private static final int CLEAN_OF_THEM = 5;
  private static final int UNCLEAN_RUNNING = 2;
  private static final long GAPS = 2;
  private static final long SHORTEST_GAP_DAYS = 7;
  private static final long LONGEST_GAP_DAYS = 60;

  private final Exercise exercise;
  private final List<PlayedRound> rounds;
  private final State state;

  /**
   * @param rounds of the exercise, as played
   * @param target the tempo to be reached, beats a minute of two notes
   * @param today what is later is left out
   */
  public Progress(Exercise exercise, List<PlayedRound> rounds, double target, LocalDate today) {
    this.exercise = exercise;
    this.rounds = rounds.stream().filter(r -> !r.day().isAfter(today)).toList();
    this.state = stateOf(this.rounds, target, today);
  }

  private static State stateOf(List<PlayedRound> rounds, double target, LocalDate today) {
    if (rounds.isEmpty()) {
      return State.NEW;
    }
    State state = State.WORKING;
    List<PlayedRound> fast = new ArrayList<>();
    Days days = new Days();
    for (PlayedRound round : rounds) {
      if (state == State.OPEN && days.tooLongAgo(round.day())) {
        state = State.FADING;
      }
      days.played(round);
      if (round.tempo() < FAST_SHARE * target) {
        continue;
      }
      fast.add(round);
      if (opens(fast)) {
        state = State.OPEN;
      } else if (state == State.OPEN && stumbles(fast)) {
        state = State.FADING;
      }
    }
    return state == State.OPEN && days.tooLongAgo(today) ? State.FADING : state;
  }

  /** When it was played, and how far its clean days lie apart. */
  private static final class Days {
    private LocalDate last;
    private LocalDate lastClean;
    private long longestGap;

    void played(PlayedRound round) {
      last = round.day();
      if (round.clean()) {
        if (lastClean != null) {
          longestGap = Math.max(longestGap, ChronoUnit.DAYS.between(lastClean, round.day()));
        }
        lastClean = round.day();
      }
    }

    boolean tooLongAgo(LocalDate day) {
      long allowed = Math.max(SHORTEST_GAP_DAYS, Math.min(LONGEST_GAP_DAYS, GAPS * longestGap));
      return last != null && ChronoUnit.DAYS.between(last, day) > allowed;
    }
  }

  private static boolean opens(List<PlayedRound> fast) {
    int clean = 0;
    LocalDate one = null;
    boolean otherDay = false;
    for (int i = Math.max(0, fast.size() - LOOKED_AT); i < fast.size(); i++) {
      PlayedRound round = fast.get(i);
      if (round.clean()) {
        clean++;
        otherDay |= one != null && !one.equals(round.day());
        one = round.day();
      }
    }
    return clean >= CLEAN_OF_THEM && otherDay;
  }

  private static boolean stumbles(List<PlayedRound> fast) {
    return fast.size() >= UNCLEAN_RUNNING
        && fast.subList(fast.size() - UNCLEAN_RUNNING, fast.size()).stream()
            .noneMatch(PlayedRound::clean);
  }

  public Exercise exercise() {
    return exercise;
  }

  public State state() {
    return state;
  }

  /** How many rounds were played. */
  public int rounds() {
    return rounds.size();
  }

  /** How many of them were clean. */
  public int cleanRounds() {
    return (int) rounds.stream().filter(PlayedRound::clean).count();
  }

  /** The fastest tempo of a clean round, beats a minute of two notes. */
  public OptionalDouble bestCleanTempo() {
    return rounds.stream().filter(PlayedRound::clean).mapToDouble(PlayedRound::tempo).max();
  }

  /** The day on which it was last played. */
  public Optional<LocalDate> lastDay() {
    return rounds.isEmpty() ? Optional.empty() : Optional.of(rounds.get(rounds.size() - 1).day());
  }

  /** The middle lateness of its landings, milliseconds. */
  public OptionalDouble lateMsMedian() {
    double[] late = rounds.stream().flatMapToDouble(r -> r.lateMs().stream()).toArray();
    return late.length == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(RobustStatistics.median(late));
  }

  /** The rounds, in the order played. */
  public List<PlayedRound> all() {
    return rounds;
  }
}
