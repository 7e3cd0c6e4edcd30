package neckway.desk.open;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.desk.open.WarmUpModel.Stage;
import neckway.drill.PlayableDrill;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.log.RunLog;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Tuning;
import neckway.page.PageModel;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.practice.PlanItem;
import neckway.practice.Reach;
import neckway.practice.WarmUpPace;
import neckway.review.Review;
import neckway.run.Reviewed;
import neckway.sound.ClickClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A warm-up that listens, with an engine that does what the test tells it. */
class WarmUpModelTests {
  private static final double SECOND = 1e9;
  private static final double LOUD_CLICK = 0.3;

  @TempDir Path folder;

  private final List<LiveSetup> begun = new ArrayList<>();
  private final List<String> said = new ArrayList<>();
  private LiveRunListener live;
  private int stops;
  private double now;

  private WarmUpModel begun() {
    WarmUpModel model =
        new WarmUpModel(
            new RunBook(folder, Optional.empty(), true),
            new WarmUpSound(
                (setup, listener) -> {
                  begun.add(setup);
                  live = listener;
                  return () -> stops++;
                },
                Optional::empty,
                Optional::empty,
                () -> LOUD_CLICK),
            Runnable::run,
            Runnable::run,
            said::add);
    model.begin(
        Reach.of(
            new Neck(Key.parse("A minor"), Tuning.STANDARD, 22),
            List.of(),
            Reach.USUAL_TARGET,
            InventedLog.TODAY));
    return model;
  }

  /** Waits in steps of a second, as the window does oftener. */
  private void wait(WarmUpModel model, int seconds) {
    for (int i = 0; i < seconds; i++) {
      model.tick((long) (now * SECOND));
      now++;
    }
  }

  private static void toDrill(WarmUpModel model) {
    while (item(model).drill().isEmpty()) {
      model.next();
    }
  }

  private static PlanItem item(WarmUpModel model) {
    return model.shown().get().item();
  }

  /** The drill that runs is played, each note as far from the beat as is drawn. */
  private void play(double spreadMs) {
    PlayableDrill drill = begun.get(begun.size() - 1).drill();
    live.roundBegins(0);
    for (int beat = -drill.pulse().countIn(); beat <= 0; beat++) {
      live.beat(beat);
    }
    PlayerSettings plain = PlayerSettings.plain();
    Habits tidy = plain.habits();
    PlayerSettings player =
        plain.withHabits(
            new Habits(
                new Habits.Timing(0, spreadMs, 0),
                tidy.legato(),
                tidy.ring(),
                tidy.pick(),
                tidy.noises()));
    Performance take = new VirtualPlayer(player).play(drill.route(), drill.pulse(), List.of(), 3);
    Review run = Reviewed.of(drill, take, take.samples(), live);
    live.roundEnded(
        new LiveResult(
            0, run, Optional.empty(), Optional.of(ClickClock.Source.HEARD), 0, 0, List.of()));
    live.over();
  }

  @Test
  void aStepWithNothingToHearGoesOnByTheClock() {
    WarmUpModel model = begun();
    int minutes = item(model).minutes();
    wait(model, 60 * minutes);
    assertThat(model.shown().get().number()).isZero();
    assertThat(model.line().get()).isEqualTo("0:01 left");
    wait(model, 1);
    assertThat(model.shown().get().number()).isEqualTo(1);
    assertThat(begun).isEmpty();
  }

  @Test
  void aDrillIsPlayedQuietlyAfterATimeToReadItAndEvenPlayingGoesOn() {
    WarmUpModel model = begun();
    toDrill(model);
    int step = model.shown().get().number();
    PlayableDrill whole = item(model).drill().orElseThrow();
    wait(model, 6);
    assertThat(begun).isEmpty();
    wait(model, 1);
    assertThat(begun).hasSize(1);
    assertThat(begun.get(0).drill()).isEqualTo(WarmUpPace.first(whole));
    assertThat(begun.get(0).clickGain().getAsDouble()).isEqualTo(WarmUpPace.CLICK_GAIN);
    assertThat(begun.get(0).takes()).as("nothing of it is kept").isEmpty();
    live.beat(-2);
    assertThat(model.count().get()).isEqualTo(Integer.toString(whole.pulse().countIn() - 1));
    play(2);
    assertThat(model.shown().get().number()).as("a second half follows").isEqualTo(step);
    wait(model, 1);
    assertThat(begun).hasSize(2);
    assertThat(begun.get(1).drill().pulse().tempo()).isEqualTo(whole.pulse().tempo());
    assertThat(model.line().get()).isEqualTo("Count-in, then play.");
    play(2);
    assertThat(model.shown().get().number()).isEqualTo(step + 1);
  }

  @Test
  void unevenPlayingIsPlayedSlowerAndTheMarksCountNothing() {
    WarmUpModel model = begun();
    toDrill(model);
    double tempo = item(model).drill().orElseThrow().pulse().tempo();
    wait(model, 7);
    PageModel first = model.page().get().orElseThrow();
    play(150);
    assertThat(first.marks()).isEqualTo(PageModel.Marks.HIDDEN);
    wait(model, 1);
    assertThat(begun.get(1).drill().pulse().tempo()).isEqualTo(Math.rint(0.9 * tempo));
    assertThat(model.line().get()).startsWith("A little slower: ");
  }

  @Test
  void withoutAnInputTheStepsGoByTheClock() {
    WarmUpModel model = begun();
    toDrill(model);
    int step = model.shown().get().number();
    wait(model, 7);
    live.complaint("no sound input was found; plug one in");
    live.over();
    assertThat(said).containsExactly("no sound input was found; plug one in");
    wait(model, 2);
    assertThat(model.line().get()).endsWith(" left");
    wait(model, 60 * item(model).minutes());
    assertThat(model.shown().get().number()).isEqualTo(step + 1);
    assertThat(begun).as("it is not tried again").hasSize(1);
  }

  @Test
  void whereItHurtsTheRunIsStoppedAndNothingFollowsFromIt() {
    WarmUpModel model = begun();
    toDrill(model);
    wait(model, 7);
    live.beat(-1);
    model.hurts();
    assertThat(stops).isEqualTo(1);
    assertThat(model.count().get()).isEmpty();
    assertThat(model.shown().get().stage()).isEqualTo(Stage.STOPPED);
    play(2);
    wait(model, 10);
    assertThat(model.shown().get().stage()).isEqualTo(Stage.STOPPED);
    assertThat(begun).hasSize(1);
    try (RunLog log = RunLog.open(folder, line -> {})) {
      assertThat(log.count()).isEqualTo(1);
    }
  }

  @Test
  void theNextStepWaitsUntilTheDevicesAreFreeAndAnotherViewEndsTheRun() {
    WarmUpModel model = begun();
    toDrill(model);
    int step = model.shown().get().number();
    wait(model, 7);
    model.next();
    assertThat(model.shown().get().number()).isEqualTo(step + 1);
    wait(model, 20);
    assertThat(begun).as("the run before is not over").hasSize(1);
    live.over();
    while (begun.size() == 1) {
      if (item(model).drill().isEmpty()) {
        model.next();
      }
      wait(model, 1);
    }
    model.hidden();
    assertThat(stops).isEqualTo(2);
    live.over();
    int again = model.shown().get().number();
    wait(model, 7);
    assertThat(begun).hasSize(3);
    assertThat(model.shown().get().number()).isEqualTo(again);
  }
}
