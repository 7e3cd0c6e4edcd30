package neckway.cli.option;

import neckway.player.settings.Habits;
import picocli.CommandLine.Option;

/** The virtual player's time and touch. */
final class TouchOptions {
  @Option(names = "--bias", paramLabel = "MS")
  private Double bias;

  @Option(names = "--jitter", paramLabel = "MS")
  private Double jitter;

  @Option(names = "--drift", paramLabel = "MS")
  private Double drift;

  @Option(names = "--legato", paramLabel = "SHARE")
  private Double legato;

  @Option(names = "--slides", paramLabel = "SHARE")
  private Double slides;

  @Option(names = "--plucked-slides", paramLabel = "SHARE")
  private Double pluckedSlides;

  @Option(names = "--ring", paramLabel = "SHARE")
  private Double ring;

  @Option(names = "--damp", paramLabel = "MS")
  private Double damp;

  @Option(names = "--vibrato", paramLabel = "SHARE")
  private Double vibrato;

  @Option(names = "--squeak", paramLabel = "SHARE")
  private Double squeak;

  @Option(names = "--buzz", paramLabel = "SHARE")
  private Double buzz;

  Habits changed(Habits drawn) {
    return drawn
        .withTiming(
            or("--bias", bias, drawn.timing().biasMs(), -200, 200),
            or("--jitter", jitter, drawn.timing().jitterMs(), 0, 60),
            or("--drift", drift, drawn.timing().driftMs(), 0, 100))
        .withLegato(
            or("--legato", legato, drawn.legato().share(), 0, 1),
            or("--slides", slides, drawn.legato().slideShare(), 0, 1),
            or("--plucked-slides", pluckedSlides, drawn.legato().pluckedSlideShare(), 0, 1))
        .withRing(
            or("--damp", damp, drawn.ring().dampMs(), 0, 500),
            or("--ring", ring, drawn.ring().share(), 0, 1))
        .withNoises(
            or("--vibrato", vibrato, drawn.noises().vibratoShare(), 0, 1),
            or("--squeak", squeak, drawn.noises().squeakShare(), 0, 1),
            or("--buzz", buzz, drawn.noises().buzzShare(), 0, 1));
  }

  private static double or(String name, Double given, double drawn, double least, double most) {
    return given == null ? drawn : Ranges.within(name, given, least, most);
  }
}
