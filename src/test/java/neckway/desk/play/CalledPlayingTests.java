package neckway.desk.play;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import neckway.desk.DrillModel;
import neckway.desk.play.PlayingModel.State;
import neckway.desk.read.ReadTake;
import neckway.drill.Cue;
import neckway.drill.PlayableDrill;
import neckway.file.JsonFile;
import neckway.file.SettingsFile;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.log.RunLog;
import neckway.neck.Route;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import neckway.review.Review;
import neckway.run.Reviewed;
import neckway.sound.ClickClock;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run in which switches are called, with an engine that does what the test tells it. */
class CalledPlayingTests {
  /** So many notes are played before the player stops. */
  private static final int PLAYED = 61;

  @TempDir Path folder;

  private final List<ReadTake> read = new ArrayList<>();
  private final List<LiveSetup> begun = new ArrayList<>();
  private final DrillModel drills = new DrillModel();
  private LiveRunListener live;
  private RunSettings settings;
  private PlayingModel model;

  private static final class NoCheck implements SoundCheck {
    @Override
    public void start(Optional<String> input, Consumer<Report> to) {
      // nothing is checked
    }

    @Override
    public void stop(Runnable then) {
      then.run();
    }
  }

  @BeforeEach
  void make() {
    settings = new RunSettings(SettingsFile.at(folder.resolve("settings.json")));
    settings.calls().calls().set(true);
    model =
        new PlayingModel(
            drills,
            settings,
            () -> 0.1,
            (setup, listener) -> {
              begun.add(setup);
              live = listener;
              return () -> {};
            },
            new NoCheck(),
            read::addAll);
    model.shown();
  }

  private PlayableDrill called() {
    return begun.get(0).drill();
  }

  private void toBeat(long last) {
    live.roundBegins(0);
    for (long beat = -called().pulse().countIn(); beat <= last; beat++) {
      live.beat(beat);
    }
    model.frame();
  }

  /** The first notes of the way as it is called, and then the player stops. */
  private void playAndStop() {
    Route whole = called().route();
    Route begins = new Route(called().shapes(), whole.steps().subList(0, PLAYED), List.of(), 1);
    Performance take =
        new VirtualPlayer(PlayerSettings.plain()).play(begins, called().pulse(), List.of(), 3);
    Review run = Reviewed.of(called(), take);
    Path file = begun.get(0).takes().orElseThrow().files().file(0);
    live.roundEnded(
        new LiveResult(
            0, run, Optional.of(file), Optional.of(ClickClock.Source.HEARD), 0, 0, List.of()));
    live.over();
    model.frame();
  }

  @Test
  void eachCallStandsThereFromItsBeatOnAndNoNoteOfTheWayBefore() {
    model.press();
    assertThat(called().isCalled()).isTrue();
    assertThat(begun.get(0).rounds().repeat()).as("it has no rounds").isFalse();
    assertThat(begun.get(0).callTones()).isEqualTo(LiveSetup.CallTones.SOUNDING);
    Cue first = called().cues().get(0);
    toBeat(first.beat() - 1);
    assertThat(model.state().get()).isIn(State.PLAYING, State.COUNT_IN);
    assertThat(model.call().get()).isEmpty();
    int known = model.page().get().knownSteps();
    assertThat(known).isPositive();
    live.beat(first.beat());
    model.frame();
    assertThat(model.call().get()).matches("(up|down) on [A-G](, string [16])?|stay");
    assertThat(model.page().get().knownSteps())
        .isGreaterThan(known)
        .isLessThan(called().route().steps().size());
  }

  @Test
  void howTheCallsWereFollowedIsToldAndKeptAsCalls() throws IOException {
    settings.guessFirst().set(true);
    model.press();
    toBeat(8);
    playAndStop();
    assertThat(model.state().get())
        .as("nobody guesses at a run without end")
        .isEqualTo(State.READY);
    assertThat(model.call().get()).isEmpty();
    ReadTake take = read.get(0);
    assertThat(take.review().summary().words())
        .anyMatch(w -> w.contains("by where you turned round"));
    assertThat(take.drill().route().steps()).hasSizeBetween(PLAYED, PLAYED + 24);
    assertThat(take.review().steps()).hasSameSizeAs(take.drill().route().steps());
    Path json = Path.of(take.take().orElseThrow().toString().replaceFirst("\\.wav$", ".json"));
    assertThat(JsonFile.read(json).at("/calls/made").asInt()).isPositive();
    try (RunLog log = RunLog.open(settings.data(), line -> {})) {
      assertThat(log.count()).isEqualTo(1);
    }
  }

  @Test
  void oneShapeAloneIsRefusedInOneLine() {
    PlayableDrill usual = drills.drill();
    assertThat(drills.shapes(usual.shapes().subList(0, 1), usual.chain().get(0).start())).isTrue();
    model.press();
    assertThat(begun).isEmpty();
    assertThat(model.line().get()).startsWith("Calls need two shapes or more");
    assertThat(model.state().get()).isEqualTo(State.READY);
  }
}
