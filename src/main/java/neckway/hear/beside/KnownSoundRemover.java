package neckway.hear.beside;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Takes a known sound out of a whole take, over a way from loudspeaker to microphone that is learnt
 * from the take itself.
 *
 * <p>The way does not change, so the take is gone through several times. First, at a low rate,
 * where the sound lies, how far the clocks run apart and how loud it is are settled: by how little
 * each block surprises the filter before it has learnt from it. Then the way is learnt at the
 * take's own rate, with less doubt each time, and what comes over it the last time is the leak.
 */
public final class KnownSoundRemover {
  /** Length of the way that is learnt, seconds: most of what a room of half a second gives. */
  static final double WAY_SECONDS = 0.4;

  /** The way is begun this much early, for an alignment that is a little off. */
  static final double EARLY_SECONDS = 0.01;

  /** A block is as long as fits into this, seconds: see docs/decisions/beside.md. */
  static final double BLOCK_SECONDS = 0.1;

  /** Times that the way is learnt at the take's own rate. */
  static final int PASSES = 4;

  /** What becomes of the doubt from one time to the next. */
  static final double DOUBT_KEPT = 0.3;

  /** Share of the way that is forgotten with each block: clocks and players move a little. */
  static final double FORGOTTEN = 0.0005;

  /**
   * The way's first doubt is one of these, each a tenth of the one before, times the take's power.
   */
  static final double MOST_DOUBT = 10;

  static final int DOUBTS = 5;

  /** The way is taken to fall by 60 dB in so many seconds. */
  static final double FALL_SECONDS = 0.5;

  /**
   * By how much the take must surprise less with the known sound than without, a frame: natural
   * logarithm of power. See docs/decisions/beside.md.
   */
  static final double LEAST_TOLD = 0.005;

  /** Steps in which the drift is settled, at first. */
  private static final double DRIFT_STEP = 4e-6;

  private static final double LEAST_DRIFT_STEP = 4e-7;

  private final float[] take;
  private final double rate;
  private final float[] known;
  private final double knownRate;

  /**
   * @param take sound of the microphone
   * @param rate of the take, Hz
   * @param known what was played
   * @param knownRate of the known sound, Hz
   */
  public KnownSoundRemover(float[] take, double rate, float[] known, double knownRate) {
    this.take = take;
    this.rate = rate;
    this.known = known;
    this.knownRate = knownRate;
  }

  /**
   * What was found.
   *
   * @param where the known sound lies in the take
   * @param leak what is in the take of it, at least as long as the take
   */
  public record Found(Alignment where, float[] leak) {
    /** Takes the leak out of the take, in place. */
    public void takeOut(float[] take) {
      for (int i = 0; i < take.length; i++) {
        take[i] -= leak[i];
      }
    }
  }

  /**
   * Finds the known sound and what is in the take of it.
   *
   * @param near where it is said to start, seconds in the take; empty: found by likeness
   * @return nothing where it is not found in the take
   */
  public Optional<Found> find(OptionalDouble near) {
    List<Alignment> like = new AlignmentFinder(take, rate, known, knownRate, near).find();
    return like.isEmpty() ? Optional.empty() : settled(like).map(this::learn);
  }

  /** An alignment, the doubt at which it surprises least, and by how much. */
  private record Settled(Alignment where, double doubt, double surprise) {}

  /** Nothing where the take is hardly less of a surprise with the known sound than without. */
  private Optional<Settled> settled(List<Alignment> like) {
    double low = AlignmentFinder.RATE_HZ;
    Sounds slow =
        new Sounds(
            AlignmentFinder.atComparedRate(take, rate),
            low,
            AlignmentFinder.atComparedRate(known, knownRate),
            low);
    Settled best = slow.atAnyDoubt(like.get(0));
    for (Alignment other : like.subList(1, like.size())) {
      Settled tried = slow.atAnyDoubt(other);
      best = tried.surprise() < best.surprise() ? tried : best;
    }
    double without = slow.at(best.where(), 0).surprise();
    if (without - best.surprise() < LEAST_TOLD * slow.heard.length) {
      return Optional.empty();
    }
    for (double step = DRIFT_STEP; step > LEAST_DRIFT_STEP; step /= 2) {
      Settled slower = slow.at(slow.driftingBy(best.where(), -step), best.doubt());
      Settled faster = slow.at(slow.driftingBy(best.where(), step), best.doubt());
      Settled other = slower.surprise() < faster.surprise() ? slower : faster;
      best = other.surprise() < best.surprise() ? other : best;
    }
    return Optional.of(best);
  }

  private Found learn(Settled settled) {
    Sounds sounds = new Sounds(take, rate, known, knownRate);
    float[] beside = sounds.beside(settled.where());
    PathFilter filter = sounds.filter();
    filter.forget(FORGOTTEN);
    for (int pass = 0; pass < PASSES; pass++) {
      filter.rewind();
      double doubt = settled.doubt() * Math.pow(DOUBT_KEPT, pass);
      filter.doubt(sounds.power(beside) * doubt, sounds.fall());
      sounds.pass(filter, beside, pass + 1 == PASSES);
    }
    new RestSuppressor(rate).addTo(beside, take);
    return new Found(settled.where(), beside);
  }

  /** Take and known sound at some rates. */
  private static final class Sounds {
    private final float[] heard;
    private final double rate;
    private final float[] known;
    private final double knownRate;
    private final int block;
    private final double heardSeconds;

    Sounds(float[] take, double rate, float[] known, double knownRate) {
      this.rate = rate;
      this.known = known;
      this.knownRate = knownRate;
      block =
          Math.min(
              PathFilter.MOST_BLOCK_FRAMES, Integer.highestOneBit((int) (BLOCK_SECONDS * rate)));
      int left = take.length % block;
      heard = left == 0 ? take : Arrays.copyOf(take, take.length + block - left);
      heardSeconds = take.length / rate;
    }

    /** The known sound as it lies, at the take's rate. */
    float[] beside(Alignment where) {
      double speed = 1 + where.drift();
      double first = (EARLY_SECONDS - where.startsSeconds()) * knownRate * speed;
      return AtRate.read(known, first, knownRate / rate * speed, heard.length);
    }

    PathFilter filter() {
      return new PathFilter(block, (int) Math.ceil(WAY_SECONDS * rate / block));
    }

    double fall() {
      return Math.pow(10, -6 * block / rate / FALL_SECONDS);
    }

    /** Power of the take for each of the known sound. */
    double power(float[] beside) {
      return energy(heard) / Math.max(Float.MIN_NORMAL, energy(beside));
    }

    private static double energy(float[] x) {
      double sum = 0;
      for (float v : x) {
        sum += v * v;
      }
      return sum;
    }

    /** Learns from the whole take; the known sound may be made into the leak. */
    void pass(PathFilter filter, float[] beside, boolean toLeak) {
      for (int from = 0; from < heard.length; from += block) {
        filter.process(heard, beside, from);
        if (toLeak) {
          filter.leak(beside, from);
        }
      }
    }

    Settled at(Alignment where, double doubt) {
      float[] beside = beside(where);
      PathFilter filter = filter();
      filter.doubt(power(beside) * doubt, fall());
      pass(filter, beside, false);
      return new Settled(where, doubt, filter.surprise());
    }

    Settled atAnyDoubt(Alignment where) {
      Settled best = at(where, MOST_DOUBT);
      for (int i = 1; i < DOUBTS; i++) {
        Settled tried = at(where, MOST_DOUBT * Math.pow(0.1, i));
        if (tried.surprise() > best.surprise()) {
          break;
        }
        best = tried;
      }
      return best;
    }

    /** The same in the middle of the take, with another drift. */
    Alignment driftingBy(Alignment where, double more) {
      double middle = heardSeconds / 2;
      double drift = where.drift() + more;
      double starts = middle - (middle - where.startsSeconds()) * (1 + where.drift()) / (1 + drift);
      return new Alignment(starts, drift);
    }
  }
}
