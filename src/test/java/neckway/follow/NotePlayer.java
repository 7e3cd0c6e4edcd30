package neckway.follow;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import neckway.hear.HeardNote;
import neckway.neck.Route;

/** Plays a route in symbols, with slips made on purpose, and hears itself as an ear would. */
public final class NotePlayer {
  /** What was meant by a note. */
  record Truth(double time, int midi, Verdict kind, int step, int attempt) {}

  /** A slip made on purpose: a note's kind, or a step left out. */
  public record Slip(String kind, int step) {}

  public final Route route;
  final double gap;
  final List<Truth> notes = new ArrayList<>();
  final List<Slip> slips = new ArrayList<>();
  private final Random random;
  private final double jitter;
  private double clock;

  public NotePlayer(
      Route route, double slotSeconds, double firstBeat, double jitterSeconds, Random random) {
    this.route = route;
    this.gap = slotSeconds;
    this.jitter = jitterSeconds;
    this.random = random;
    this.clock = firstBeat;
  }

  private double human() {
    return random.nextGaussian() * jitter;
  }

  private int midi(int step) {
    return route.steps().get(step).midi();
  }

  /** The step as it should be. */
  public NotePlayer right(int step, int attempt) {
    notes.add(new Truth(clock + human(), midi(step), Verdict.RIGHT, step, attempt));
    clock += gap;
    return this;
  }

  public NotePlayer rights(int from, int to, int attempt) {
    for (int s = from; s <= to; s++) {
      right(s, attempt);
    }
    return this;
  }

  public NotePlayer wrong(int step, int midi, int attempt) {
    notes.add(new Truth(clock + human(), midi, Verdict.WRONG, step, attempt));
    slips.add(new Slip("wrong", step));
    clock += gap;
    return this;
  }

  /** The step just played, again, half a gap after it. */
  NotePlayer repeat(int step, int attempt) {
    double time = clock - (1 - between()) * gap + human();
    notes.add(new Truth(time, midi(step), Verdict.REPEAT, step, attempt));
    slips.add(new Slip("repeat", step));
    return this;
  }

  /** A stray note between the step just played and the next. */
  NotePlayer extra(int after, int midi, int attempt) {
    double time = clock - (1 - between()) * gap + human();
    notes.add(new Truth(time, midi, Verdict.EXTRA, after, attempt));
    slips.add(new Slip("extra", after));
    return this;
  }

  private double between() {
    return 0.35 + 0.3 * random.nextDouble();
  }

  /** A step left out; the time of it too, or not. */
  public NotePlayer skip(int step, boolean silent) {
    slips.add(new Slip("skipped", step));
    if (silent) {
      clock += gap;
    }
    return this;
  }

  public NotePlayer pause(double seconds) {
    clock += seconds;
    return this;
  }

  int randomWrong(int step) {
    int right = midi(step);
    while (true) {
      int midi;
      if (random.nextBoolean()) {
        midi = route.steps().get(random.nextInt(route.steps().size())).midi();
      } else {
        midi = right + (1 + random.nextInt(4)) * (random.nextBoolean() ? 1 : -1);
      }
      if (midi != right) {
        return midi;
      }
    }
  }

  int randomOpen(int after) {
    int[] open = {40, 45, 50, 55, 59, 64};
    while (true) {
      int midi = open[random.nextInt(6)];
      boolean next = after + 1 < route.steps().size() && midi(after + 1) == midi;
      if (midi != midi(after) && !next) {
        return midi;
      }
    }
  }

  /** The whole route with slips at the given steps, each kind by its name. */
  public NotePlayer playWithSlips(List<Slip> wanted, int from, int attempt) {
    for (int s = from; s < route.steps().size(); s++) {
      int step = s;
      String kind =
          wanted.stream().filter(w -> w.step() == step).map(Slip::kind).findFirst().orElse("");
      switch (kind) {
        case "wrong" -> wrong(s, randomWrong(s), attempt);
        case "skipped" -> skip(s, false);
        case "skipped silent" -> skip(s, true);
        case "repeat" -> right(s, attempt).repeat(s, attempt);
        case "extra" -> right(s, attempt).extra(s, randomOpen(s), attempt);
        default -> right(s, attempt);
      }
    }
    return this;
  }

  /** The notes as an ear hears them: a little off, 20 to 40 ms late. */
  public List<HeardNote> heard() {
    List<HeardNote> heard = new ArrayList<>();
    for (Truth t : notes) {
      double time = t.time() + random.nextGaussian() * 0.001;
      double late = 0.020 + 0.020 * random.nextDouble();
      heard.add(
          new HeardNote(
              heard.size(),
              time,
              t.midi(),
              t.midi(),
              HeardNote.Start.PLUCK,
              true,
              -20,
              t.time() + late));
    }
    heard.sort(Comparator.comparingDouble(HeardNote::decided));
    return heard;
  }
}
