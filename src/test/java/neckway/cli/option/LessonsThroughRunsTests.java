package neckway.cli.option;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import neckway.bench.CalibrationTakes;
import neckway.calibration.Calibration;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.GuitarFile;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.run.Run;
import neckway.string.GuitarProfile;
import neckway.string.Lesson;
import neckway.string.StringProfile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/**
 * A guitar's profile from its calibration take through several runs, by way of the file that live
 * runs read and write. Between the take and the runs the strings have changed by a known share, so
 * that there is something to learn; the truth is the stiffness by which the virtual guitar sounds.
 */
@Tag("slow")
class LessonsThroughRunsTests {
  private static final int RUNS = 3;
  private static final Guitar PLAIN = Guitar.Model.ELECTRIC.plain();

  private static GuitarProfile calibrated;

  @TempDir private Path folder;
  private Path file;
  private GuitarOption option;

  @BeforeAll
  static void calibrate() {
    Performance take =
        new VirtualPlayer(player(PLAIN))
            .calibration(Tuning.STANDARD, Calibration.USUAL_FRETS, 2_000_071);
    calibrated =
        CalibrationTakes.learnt(
                take.samples(), take.sampleRate(), Tuning.STANDARD, Calibration.USUAL_FRETS)
            .profile();
  }

  @BeforeEach
  void write() {
    file = folder.resolve("guitar.json");
    GuitarFile.write(file, calibrated, Tuning.STANDARD);
    option = CommandLine.populateCommand(new GuitarOption(), "--guitar", file.toString());
  }

  private static PlayerSettings player(Guitar guitar) {
    return PlayerSettings.plain().withSampleRate(48_000).withGuitar(guitar);
  }

  /** The strings as the calibration found them, each changed by so many of its spreads. */
  private static Guitar changed(double spreads) {
    return changed(spreads, spreads);
  }

  /** The same, the two highest strings by another number of theirs. */
  private static Guitar changed(double spreads, double ofTheHighest) {
    List<Double> stiffness = new ArrayList<>(PLAIN.stiffness());
    for (StringProfile string : calibrated.strings()) {
      double by = string.string().number() <= 2 ? ofTheHighest : spreads;
      double ln = string.lnStiffness() + by * string.spread();
      stiffness.set(string.string().number() - 1, Math.exp(ln));
    }
    return new Guitar(
        stiffness,
        PLAIN.ringSeconds(),
        PLAIN.pickup(),
        PLAIN.brightHz(),
        PLAIN.lossPerKhz2(),
        0,
        PLAIN.stringCents(),
        0,
        PLAIN.woundStrings());
  }

  private static PlayableDrill drill() {
    return Drills.example().drill().withPulse(new Pulse(100, 2, 4, 4)).playable();
  }

  /** One run as a live one goes: earlier lessons in, the run, its own lessons kept. */
  private List<Lesson> run(Guitar guitar, long seed) {
    option.takeIn();
    PlayableDrill drill = drill();
    Performance take =
        new VirtualPlayer(player(guitar)).play(drill.route(), drill.pulse(), List.of(), seed);
    Run run =
        new Run(
            drill,
            option.guitar(drill),
            take.sampleRate(),
            OptionalDouble.of(take.firstBeat()),
            Clock.MEASURED,
            verdict -> {});
    run.feed(take.samples(), 0, take.samples().length);
    run.finish();
    StringWriter complaints = new StringWriter();
    option.keep(run.lessons(), new PrintWriter(complaints));
    assertThat(complaints.toString()).isEmpty();
    return run.lessons();
  }

  private double known(GuitarString string) {
    return GuitarFile.read(file, Tuning.STANDARD).of(string).lnStiffness();
  }

  private static double truth(Guitar guitar, GuitarString string) {
    return Math.log(guitar.stiffness().get(string.number() - 1));
  }

  @Test
  void whatARunTeachesIsTakenInByTheNextOne() throws IOException {
    Guitar guitar = changed(0.6);
    List<Lesson> lessons = run(guitar, 1);
    assertThat(lessons).hasSizeGreaterThanOrEqualTo(3);
    assertThat(Files.readString(file)).contains("pending").doesNotContain("learnt");
    for (Lesson lesson : lessons) {
      StringProfile before = calibrated.of(lesson.string());
      assertThat(known(lesson.string())).isCloseTo(before.lnStiffness(), within(1e-3));
    }
    option.takeIn();
    assertThat(Files.readString(file)).contains("learnt").doesNotContain("pending");
    for (Lesson lesson : lessons) {
      double truth = truth(guitar, lesson.string());
      double before = Math.abs(calibrated.of(lesson.string()).lnStiffness() - truth);
      assertThat(Math.abs(known(lesson.string()) - truth))
          .as("string " + lesson.string() + ", off by " + before + " before")
          .isLessThan(before);
    }
  }

  @Test
  void eachRunBringsTheGuitarNearerToTheTruth() {
    Guitar guitar = changed(0.6);
    double before = farthestFromTruth(guitar);
    for (int run = 0; run < RUNS; run++) {
      run(guitar, 10 + run);
    }
    option.takeIn();
    assertThat(farthestFromTruth(guitar)).isLessThan(0.7 * before);
  }

  /** Sum over the strings of how far what is known of each is from the truth, ln B. */
  private double farthestFromTruth(Guitar guitar) {
    return calibrated.strings().stream()
        .mapToDouble(s -> Math.abs(known(s.string()) - truth(guitar, s.string())))
        .sum();
  }

  @Test
  void runsCarryNoStringFartherFromItsCalibrationThanItStrays() {
    Guitar guitar = changed(0.6, 1.9);
    for (int run = 0; run < RUNS; run++) {
      run(guitar, 20 + run);
    }
    option.takeIn();
    int atTheBound = 0;
    for (StringProfile string : calibrated.strings()) {
      double moved = (known(string.string()) - string.lnStiffness()) / string.spread();
      assertThat(moved).as("string " + string.string() + ", spreads").isBetween(-0.5, 1.01);
      atTheBound += moved > 0.99 ? 1 : 0;
    }
    assertThat(atTheBound).as("strings that would have gone farther").isPositive();
  }
}
