package neckway.cli.option;

import neckway.player.settings.Habits;
import picocli.CommandLine.Option;

/** The virtual player's time and touch. */
final class TouchOptions {
  @Option(names = "--bias", paramLabel = "MS", description = "Steady lateness, -200 to 200.")
  private Double bias;

  @Option(
      names = "--jitter",
      paramLabel = "MS",
      description = "Unevenness from note to note, 0 to 60 (standard deviation).")
  private Double jitter;

  @Option(names = "--drift", paramLabel = "MS", description = "Slow wandering, 0 to 100.")
  private Double drift;

  @Option(
      names = "--legato",
      paramLabel = "SHARE",
      description = "Share of notes hammered on or pulled off, 0 to 1.")
  private Double legato;

  @Option(names = "--slides", paramLabel = "SHARE", description = "Share of shifts slid, 0 to 1.")
  private Double slides;

  @Option(
      names = "--plucked-slides",
      paramLabel = "SHARE",
      description = "Share of slid shifts whose landing is plucked anew, 0 to 1.")
  private Double pluckedSlides;

  @Option(
      names = "--ring",
      paramLabel = "SHARE",
      description = "Share of notes left to ring into what follows, 0 to 1.")
  private Double ring;

  @Option(
      names = "--damp",
      paramLabel = "MS",
      description = "How long a note goes on once another string is struck, 0 to 500.")
  private Double damp;

  @Option(names = "--vibrato", paramLabel = "SHARE", description = "Share of notes, 0 to 1.")
  private Double vibrato;

  @Option(
      names = "--squeak",
      paramLabel = "SHARE",
      description = "Share of moves along wound strings that squeak, 0 to 1.")
  private Double squeak;

  @Option(
      names = "--buzz",
      paramLabel = "SHARE",
      description = "Share of notes that buzz on a fret, 0 to 1.")
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
