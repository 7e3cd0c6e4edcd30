package neckway.desk.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import neckway.Await;
import neckway.band.Feel;
import neckway.desk.DrillModel;
import neckway.desk.play.PlayingModel.State;
import neckway.desk.read.ReadTake;
import neckway.drill.PlayableDrill;
import neckway.file.JsonFile;
import neckway.file.SettingsFile;
import neckway.live.LiveBacking;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.log.RunLog;
import neckway.page.PageModel.Ink;
import neckway.page.PageModel.Marks;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;
import neckway.sound.ClickClock;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run with one key, with an engine that does what the test tells it. */
class PlayingModelTests {
  @TempDir Path folder;

  private static final Path FULL = Path.of("/dev/full");

  private final List<ReadTake> read = new ArrayList<>();
  private final List<LiveSetup> begun = new ArrayList<>();
  private LiveRunListener live;
  private Consumer<SoundCheck.Report> reports;
  private int stops;
  private DrillModel drills;
  private RunSettings settings;
  private PlayingModel model;

  private final class Check implements SoundCheck {
    @Override
    public void start(Optional<String> input, Consumer<Report> to) {
      reports = to;
    }

    @Override
    public void stop(Runnable then) {
      reports = null;
      then.run();
    }
  }

  @BeforeEach
  void make() {
    settings = new RunSettings(SettingsFile.at(folder.resolve("settings.json")));
    drills = new DrillModel();
    model =
        new PlayingModel(
            drills,
            settings,
            () -> 0.1,
            (setup, listener) -> {
              begun.add(setup);
              live = listener;
              return () -> stops++;
            },
            new Check(),
            read::addAll);
    model.shown();
  }

  private void toPlaying() {
    model.press();
    live.roundBegins(0);
    for (int beat = -4; beat <= 0; beat++) {
      live.beat(beat);
    }
    model.frame();
  }

  private PlayableDrill drill() {
    return drills.drill();
  }

  private Performance take() {
    return new VirtualPlayer(PlayerSettings.plain())
        .play(
            drill().route(),
            drill().pulse(),
            List.of(new Mistake.Slip(Mistake.Kind.SKIP, 9, OptionalInt.empty())),
            3);
  }

  private Review review(boolean anything) {
    Performance take = take();
    Run run =
        new Run(
            drill(),
            Optional.empty(),
            take.sampleRate(),
            OptionalDouble.of(take.firstBeat()),
            Clock.MEASURED,
            anything ? live : verdict -> {});
    run.feed(take.samples(), 0, anything ? take.samples().length : 1000);
    return run.finish();
  }

  private void end(int round, Review review) {
    Path file = begun.get(0).takes().orElseThrow().files().file(round);
    live.roundEnded(
        new LiveResult(
            round,
            review,
            Optional.of(file),
            Optional.of(ClickClock.Source.HEARD),
            0,
            0,
            List.of()));
    model.frame();
  }

  @Test
  void soundCheckSaysWhatIsOffUntilTheRunBegins() {
    reports.accept(new SoundCheck.Report(0.5f, "too quiet"));
    model.frame();
    assertThat(model.line().get()).isEqualTo("too quiet");
    assertThat(model.level().get()).isEqualTo(0.5);
    reports.accept(new SoundCheck.Report(0.5f, ""));
    model.frame();
    assertThat(model.line().get()).isEmpty();
    model.press();
    assertThat(reports).as("the device is given back before the run").isNull();
  }

  @Test
  void oneKeyBeginsAndStopsAndTheReadingFollows() {
    model.press();
    assertThat(model.state().get()).isEqualTo(State.OPENING);
    assertThat(begun).hasSize(1);
    live.roundBegins(0);
    List<String> figures = new ArrayList<>();
    for (int beat = -4; beat < 0; beat++) {
      live.beat(beat);
      model.frame();
      assertThat(model.state().get()).isEqualTo(State.COUNT_IN);
      figures.add(model.count().get());
    }
    assertThat(figures).containsExactly("1", "2", "3", "4");
    live.beat(0);
    model.frame();
    assertThat(model.state().get()).isEqualTo(State.PLAYING);
    assertThat(model.count().get()).isEmpty();
    Review review = review(true);
    model.press();
    assertThat(stops).isEqualTo(1);
    end(0, review);
    live.over();
    model.frame();
    assertThat(model.state().get()).isEqualTo(State.READY);
    assertThat(read).singleElement().satisfies(t -> assertThat(t.review()).isSameAs(review));
    assertThat(read.get(0).take().orElseThrow().getFileName().toString())
        .matches("\\d{4}-\\d{2}-\\d{2} \\d{6} A major major to Dorian 01\\.wav");
  }

  @Test
  void verdictsStayHiddenUntilTheRoundIsOver() {
    toPlaying();
    review(true);
    model.frame();
    assertThat(model.page().get().marks()).isEqualTo(Marks.HIDDEN);
    assertThat(model.page().get().at(9).ink()).isEqualTo(Ink.UNNAMED);
    end(0, review(false));
    assertThat(model.page().get().marks()).isEqualTo(Marks.SHOWN);
  }

  @Test
  void verdictsShowAtOnceWhereThePlayerAskedForThem() {
    settings.liveMarks().set(true);
    toPlaying();
    review(true);
    assertThat(model.page().get().at(9).ink()).as("before the frame").isEqualTo(Ink.PALE);
    model.frame();
    assertThat(model.page().get().at(9).ink()).as("in the frame after").isEqualTo(Ink.LEFT_OUT);
  }

  @Test
  void roundsFollowUntilStoppedAndTheLastOnePlayedIsRead() {
    settings.repeat().set(true);
    toPlaying();
    Review first = review(true);
    end(0, first);
    assertThat(begun.get(0).rounds().repeat()).isTrue();
    assertThat(begun.get(0).rounds().restBars()).isGreaterThanOrEqualTo(1);
    live.roundBegins(1);
    model.frame();
    assertThat(model.state().get()).isEqualTo(State.REST);
    assertThat(model.said().get()).isEqualTo("24 of 25 notes were right.");
    assertThat(model.page().get().at(9).ink()).isEqualTo(Ink.LEFT_OUT);
    live.beat(-4);
    model.frame();
    assertThat(model.page().get().at(0).ink()).as("a clean sheet").isEqualTo(Ink.PALE);
    model.escape();
    end(1, review(false));
    live.over();
    model.frame();
    assertThat(read).singleElement().satisfies(t -> assertThat(t.review()).isSameAs(first));
  }

  @Test
  void guessComesBeforeAnythingIsShown() {
    settings.guessFirst().set(true);
    toPlaying();
    assertThat(begun.get(0).rounds().repeat()).isFalse();
    end(0, review(true));
    assertThat(model.page().get().marks()).isEqualTo(Marks.HIDDEN);
    assertThat(model.said().get()).isEmpty();
    live.over();
    model.frame();
    assertThat(model.state().get()).isEqualTo(State.GUESSING);
    assertThat(read).isEmpty();
    model.digit(2);
    model.digit(9);
    model.backspace();
    model.digit(3);
    assertThat(model.guess().get()).isEqualTo("23");
    model.press();
    assertThat(read.get(0).guess()).hasValue(23);
  }

  @Test
  void guessCanBeLeftOut() {
    settings.guessFirst().set(true);
    toPlaying();
    end(0, review(true));
    live.over();
    model.frame();
    model.digit(7);
    model.escape();
    assertThat(read.get(0).guess()).isEmpty();
  }

  @Test
  void keyPressedBeforeTheDevicesAreOpenStopsAsSoonAsTheyAre() {
    model.press();
    model.press();
    assertThat(stops).isZero();
    model.frame();
    assertThat(stops).isEqualTo(1);
  }

  @Test
  void stoppedInTheCountInIsReadyAgainAndListens() {
    model.press();
    live.roundBegins(0);
    live.beat(-3);
    model.frame();
    model.escape();
    live.roundEnded(
        new LiveResult(
            0,
            review(false),
            Optional.empty(),
            Optional.of(ClickClock.Source.UNMEASURED),
            0,
            0,
            List.of()));
    live.over();
    model.frame();
    assertThat(model.state().get()).isEqualTo(State.READY);
    assertThat(read).isEmpty();
    assertThat(reports).isNotNull();
    assertThat(model.line().get()).isEmpty();
    assertThat(model.page().get().isOver()).as("the notes are still to come").isFalse();
  }

  @Test
  void lostDeviceIsToldAsThatAndNotAsAComputerThatIsTooBusy() {
    toPlaying();
    live.complaint("the sound input was lost at 12 s; what was played until then is kept");
    live.roundEnded(
        new LiveResult(
            0,
            review(false),
            Optional.empty(),
            Optional.of(ClickClock.Source.HEARD),
            3,
            0,
            List.of()));
    model.frame();
    assertThat(model.line().get()).startsWith("the sound input was lost at 12 s");
  }

  @Test
  void soundThatWasMissedIsToldInPlainWords() {
    toPlaying();
    live.roundEnded(
        new LiveResult(
            0,
            review(true),
            Optional.empty(),
            Optional.of(ClickClock.Source.HEARD),
            2,
            512,
            List.of()));
    model.frame();
    assertThat(model.line().get()).contains("too busy").doesNotContain("buffer", "frames");
  }

  /** The input may be one that only one can hold, and another view's by then. */
  @Test
  void runThatEndsBehindAnotherViewDoesNotListenAgain() {
    toPlaying();
    model.hidden();
    assertThat(stops).isEqualTo(1);
    end(0, review(false));
    live.over();
    model.frame();
    assertThat(model.state().get()).isEqualTo(State.READY);
    assertThat(reports).isNull();
    model.shown();
    assertThat(reports).isNotNull();
  }

  @Test
  void complaintOfTheEngineStaysInSight() {
    model.press();
    live.complaint("no sound input found on this machine");
    live.over();
    model.frame();
    model.frame();
    assertThat(model.line().get()).contains("no sound input");
    assertThat(model.state().get()).isEqualTo(State.READY);
  }

  @Test
  void loudClickInTheCountInIsTold() {
    model.press();
    live.roundBegins(0);
    live.beat(-4);
    live.sound(2, 0.1f);
    live.beat(-1);
    live.sound(3, 0.9f);
    end(0, review(true));
    // 20 log10(0.1) = -20
    assertThat(model.line().get()).contains("-20 dB").contains("headphones");
  }

  @Test
  void reviewIsWrittenBesideTheTake() {
    toPlaying();
    end(0, review(true));
    Path take = begun.get(0).takes().orElseThrow().files().file(0);
    Path json = take.resolveSibling(take.getFileName().toString().replace(".wav", ".json"));
    assertThat(JsonFile.read(json).at("/summary/skipped").asInt()).isEqualTo(1);
  }

  @Test
  void whatFollowsFromAFullDiskDoesNotHideWhichTakeItCutOff() throws Exception {
    toPlaying();
    Path take = begun.get(0).takes().orElseThrow().files().file(0);
    // a target that is there and is no plain file is written to directly, and this one is full
    Path json = Path.of(take.toString().replace(".wav", ".json"));
    assumeTrue(Files.exists(FULL), FULL + " is of Linux: a full disk is not tried");
    Files.createSymbolicLink(json, FULL);
    live.complaint("take.wav: cannot be written (No space left on device)");
    end(0, review(true));
    assertThat(model.line().get()).startsWith("take.wav: ");
    assertThat(model.complaint()).startsWith("take.wav: ");
    live.over();
    model.frame();
    assertThat(read).hasSize(1);
  }

  @Test
  void roundInWhichSomethingWasPlayedIsKeptInTheLog() {
    toPlaying();
    Review played = review(true);
    end(0, played);
    end(1, review(false));
    try (RunLog log = RunLog.open(folder.resolve("data"), line -> assertThat(line).isNull())) {
      assertThat(log.list(new RunLog.Wanted(Optional.empty(), Optional.empty()), 9))
          .singleElement()
          .satisfies(
              run -> assertThat(run.said().summary().right()).isEqualTo(played.summary().right()));
      assertThat(log.check()).isEmpty();
    }
  }

  @Test
  void reviewThatCannotBeWrittenIsOneLineAndIsReadAllTheSame() throws Exception {
    toPlaying();
    Path json =
        Path.of(
            begun.get(0).takes().orElseThrow().files().file(0).toString().replace(".wav", ".json"));
    assumeTrue(Files.exists(FULL), FULL + " is of Linux: a full disk is not tried");
    Files.createSymbolicLink(json, FULL);
    end(0, review(true));
    assertThat(model.line().get()).contains(".json").contains("no room left");
    live.over();
    model.frame();
    assertThat(read).hasSize(1);
  }

  @Test
  void folderOfTakesThatCannotBeMadeIsOneLineAndNothingBegins() throws Exception {
    Path inTheWay = Files.createFile(folder.resolve("takes"));
    model.press();
    assertThat(begun).isEmpty();
    assertThat(model.line().get()).contains(inTheWay.toString()).contains("another folder");
    assertThat(model.state().get()).isEqualTo(State.READY);
  }

  @Test
  void guitarThatCannotBeReadIsToldAndTheRunGoesOnWithoutIt() {
    SettingsFile kept = SettingsFile.at(folder.resolve("with-guitar.json"));
    kept.put(RunSettings.GUITAR, folder.resolve("gone.json").toString());
    PlayingModel other =
        new PlayingModel(
            drills,
            new RunSettings(kept),
            () -> 0.1,
            (setup, listener) -> {
              begun.add(setup);
              return () -> {};
            },
            new Check(),
            read::addAll);
    other.press();
    assertThat(begun).hasSize(1);
    assertThat(begun.get(0).guitar()).isEmpty();
    assertThat(other.line().get()).contains("gone.json");
  }

  @Test
  void windowThatClosesWaitsForTheTake() {
    assertThat(model.close()).as("nothing runs").isTrue();
    model.press();
    model.frame();
    live.over();
    assertThat(model.close()).isTrue();
    assertThat(stops).isEqualTo(1);
  }

  @Test
  void beginAtOnceWhenShown() {
    model.hidden();
    model.beginWhenShown();
    model.shown();
    assertThat(begun).hasSize(1);
    assertThat(model.state().get()).isEqualTo(State.OPENING);
  }

  @Test
  void beginAskedForWhileARunEndsBeginsWhenThatIsOver() {
    toPlaying();
    end(0, review(true));
    model.hidden();
    model.beginWhenShown();
    model.shown();
    assertThat(begun).as("the devices are still the other run's").hasSize(1);
    live.over();
    model.frame();
    assertThat(begun).hasSize(2);
    assertThat(model.state().get()).isEqualTo(State.OPENING);
    assertThat(read).as("what was played before is not lost").hasSize(1);
  }

  @Test
  void beginAskedForWhileARunEndsDoesNotWaitForAnotherVisit() {
    toPlaying();
    model.hidden();
    model.beginWhenShown();
    model.shown();
    model.hidden();
    end(0, review(false));
    live.over();
    model.frame();
    model.shown();
    assertThat(begun).hasSize(1);
    assertThat(model.state().get()).isEqualTo(State.READY);
  }

  @Test
  void escapeDropsABeginThatWaits() {
    toPlaying();
    model.hidden();
    model.beginWhenShown();
    model.shown();
    model.escape();
    end(0, review(false));
    live.over();
    model.frame();
    assertThat(begun).hasSize(1);
    assertThat(reports).as("it listens again").isNotNull();
  }

  @Test
  void beginLeavesAGuessUnanswered() {
    settings.guessFirst().set(true);
    toPlaying();
    model.hidden();
    end(0, review(true));
    live.over();
    model.frame();
    assertThat(model.state().get()).isEqualTo(State.GUESSING);
    model.beginWhenShown();
    model.shown();
    assertThat(begun).hasSize(2);
    assertThat(read).hasSize(1);
    assertThat(read.get(0).guess()).isEmpty();
  }

  @Test
  void backingIsMadeInTheDrillsTempoAndGoesOnFromRoundToRoundAndTheRunIsKeptAsOne()
      throws Exception {
    settings.repeat().set(true);
    settings.backing().plays().set(true);
    settings.backing().row().set("dorian");
    settings.backing().feel().set(Feel.TRIPLETS);
    model.press();
    Await.until("the run has begun", 20, () -> !begun.isEmpty());
    model.frame();
    LiveSetup setup = begun.get(0);
    assertThat(setup.rounds().repeat()).isTrue();
    assertThat(setup.drill().pulse()).as("the tempo stays").isEqualTo(drill().pulse());
    LiveBacking backing = setup.backing().orElseThrow();
    double seconds = backing.loopBeats().orElseThrow() * drill().pulse().beatSeconds();
    assertThat(backing.samples().length / (double) backing.sampleRate())
        .isGreaterThan(seconds)
        .isLessThan(2 * seconds);
    assertThat(model.sounds().get()).contains("12/8").contains("m7");

    settings.backing().percent().set(35);
    assertThat(backing.gain().getAsDouble()).isEqualTo(0.35);

    live.roundBegins(0);
    Review review = review(true);
    live.roundEnded(
        new LiveResult(
            0,
            review,
            Optional.empty(),
            Optional.of(ClickClock.Source.HEARD),
            0,
            0,
            List.of(),
            Optional.of(new LiveResult.Backing(true, Optional.empty()))));
    live.over();
    model.frame();
    assertThat(model.sounds().get()).isEmpty();
    try (RunLog log = RunLog.open(settings.data(), line -> {})) {
      String id = settings.book().id(review).orElseThrow();
      assertThat(log.line(id).orElseThrow()).contains("\"kind\":\"backing\"");
    }
  }

  @Test
  void whatWasChosenOfABackingIsKeptAndWhatIsNotKnownIsAsUsual() {
    SettingsFile file = SettingsFile.at(folder.resolve("other.json"));
    file.put("backingPlays", true);
    file.put("backingRow", "twelve-bar");
    file.put("backingFeel", Feel.SHUFFLE.word());
    file.put("backingPercent", 12.0);
    BackingChoice kept = new RunSettings(file).backing();
    assertThat(kept.plays().get()).isTrue();
    assertThat(kept.row().get()).isEqualTo("twelve-bar");
    assertThat(kept.feel().get()).isEqualTo(Feel.SHUFFLE);
    assertThat(kept.percent().get()).isEqualTo(12);
    file.put("backingRow", "no such row");
    file.put("backingFeel", "no such metre");
    file.put("backingPercent", 1000.0);
    BackingChoice usual = new RunSettings(file).backing();
    assertThat(usual.row().get()).isEqualTo(BackingChoice.USUAL_ROW);
    assertThat(usual.feel().get()).isEqualTo(Feel.STRAIGHT);
    assertThat(usual.percent().get()).isEqualTo(100 * LiveBacking.USUAL_GAIN);
  }
}
