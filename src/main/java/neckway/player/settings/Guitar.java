package neckway.player.settings;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * A guitar and its strings.
 *
 * @param stiffness B of the open string by string number, 1 to 8: f_k = k f0 sqrt(1 + B k^2)
 *     (Fletcher 1964)
 * @param ringSeconds time constant of the fundamental of the open string by string number
 * @param pickup where the sound is taken off, as a share of the open string from the bridge; 0 for
 *     a microphone before the body
 * @param brightHz above this the partials of a middling stroke fall off
 * @param lossPerKhz2 further decay rate per second for each kHz squared
 * @param detuneCents the whole guitar's offset from A4 = 440 Hz
 * @param stringCents each string's own offset by string number
 * @param fretCents standard deviation of one note's intonation
 * @param woundStrings string numbers from this one on squeak
 */
public record Guitar(
    List<Double> stiffness,
    List<Double> ringSeconds,
    double pickup,
    double brightHz,
    double lossPerKhz2,
    double detuneCents,
    List<Double> stringCents,
    double fretCents,
    int woundStrings) {
  public Guitar {
    stiffness = List.copyOf(stiffness);
    ringSeconds = List.copyOf(ringSeconds);
    stringCents = List.copyOf(stringCents);
  }

  /** Sorts of guitar, by their strings' stiffness from the highest string to an eighth. */
  public enum Model {
    /** Solid body, plain third. */
    ELECTRIC(List.of(14.0, 40.0, 108.0, 49.0, 66.0, 132.0, 240.0, 400.0), 1.6, 0.16, 4200, 4),
    /** Solid body with double coils, plain third, slack low string. */
    HUMBUCKER(List.of(10.0, 28.0, 97.0, 73.0, 110.0, 224.0, 340.0, 520.0), 1.8, 0.2, 3000, 4),
    /** Steel strings, wound third. */
    ACOUSTIC(List.of(15.0, 54.0, 34.0, 44.0, 60.0, 95.0, 180.0, 300.0), 0.9, 0, 5000, 3),
    /** Nylon strings; stiffness chosen by us, no published set was at hand. */
    NYLON(List.of(25.0, 45.0, 90.0, 18.0, 26.0, 42.0, 70.0, 110.0), 0.5, 0, 2200, 4);

    private final List<Double> stiffnessMillionths;
    private final double ring;
    private final double pickup;
    private final double brightHz;
    private final int wound;

    Model(List<Double> b, double ring, double pickup, double brightHz, int wound) {
      this.stiffnessMillionths = b;
      this.ring = ring;
      this.pickup = pickup;
      this.brightHz = brightHz;
      this.wound = wound;
    }

    /** One in the middle of its sort, in tune. */
    public Guitar plain() {
      List<Double> ringing =
          IntStream.rangeClosed(1, 8).mapToObj(s -> ring * (0.55 + 0.15 * s)).toList();
      List<Double> b = stiffnessMillionths.stream().map(v -> v * 1e-6).toList();
      List<Double> even = IntStream.rangeClosed(1, 8).mapToObj(s -> 0.0).toList();
      double loss = this == NYLON ? 1.5 : this == ACOUSTIC ? 0.8 : 0.5;
      return new Guitar(b, ringing, pickup, brightHz, loss, 0, even, 0, wound);
    }

    /** One of its sort as chance has it, tuned within the given cents. */
    public Guitar any(Random random, double detuneRangeCents) {
      Guitar g = plain();
      return new Guitar(
          g.stiffness.stream().map(b -> b * spread(random, 0.12)).toList(),
          g.ringSeconds.stream().map(r -> r * spread(random, 0.3)).toList(),
          Math.min(0.4, g.pickup * spread(random, 0.3)),
          g.brightHz * spread(random, 0.3),
          g.lossPerKhz2 * spread(random, 0.4),
          detuneRangeCents * (2 * random.nextDouble() - 1),
          g.stringCents.stream().map(c -> Math.min(4, random.nextGaussian() * 1.5)).toList(),
          1 + 2 * random.nextDouble(),
          g.woundStrings);
    }

    private static double spread(Random random, double sd) {
      return Math.exp(Math.max(-2, Math.min(2, random.nextGaussian())) * sd);
    }
  }

  /** Stiffness at a fret: B grows twofold every six frets. */
  public double stiffnessAt(int string, int fret) {
    return stiffness.get(string - 1) * Math.pow(2, fret / 6.0);
  }

  /** The same guitar, its whole tuning offset set. */
  public Guitar withDetuneCents(double cents) {
    return new Guitar(
        stiffness,
        ringSeconds,
        pickup,
        brightHz,
        lossPerKhz2,
        cents,
        stringCents,
        fretCents,
        woundStrings);
  }
}
