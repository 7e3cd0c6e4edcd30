package neckway.desk.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.function.Function;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.SaidCheck;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.SilentOutput;
import neckway.desk.open.InventedLog;
import neckway.desk.play.RunSettings;
import neckway.drill.PlayableDrill;
import neckway.file.SettingsFile;
import neckway.file.sound.WavWriter;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.review.Review;
import neckway.run.Reviewed;
import neckway.sound.ClickClock;

/** The window with playing and reading, an engine that only notes what is asked of it. */
final class WholeWindow implements AutoCloseable {
  final List<LiveSetup> begun = new ArrayList<>();
  final FxWindow window;
  Desk desk;
  Coach coach;
  Practice practice;
  LiveRunListener live;
  int stops;

  WholeWindow(Path folder, double width, double height) {
    this(folder, width, height, Runnable::run);
  }

  /**
   * @param reading reads the log
   */
  WholeWindow(Path folder, double width, double height, Executor reading) {
    window =
        FxWindow.open(
            () -> {
              desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
              coach =
                  new Coach(
                      desk,
                      new RunSettings(desk.settings()),
                      this::begin,
                      new SaidCheck(0, ""),
                      new SilentOutput(),
                      Runnable::run,
                      Runnable::run,
                      Runnable::run);
              Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
              screens.putAll(DeskApp.screens());
              coach.offer(screens);
              practice =
                  new Practice(
                      desk,
                      coach.settings(),
                      this::begin,
                      coach.reading(),
                      () -> InventedLog.TODAY,
                      reading,
                      Runnable::run);
              practice.offer(screens);
              practice.begin();
              return new DeskFrame(desk, screens, Optional.of(practice.strip()))
                  .scene(width, height);
            });
  }

  Runnable begin(LiveSetup setup, LiveRunListener listener) {
    begun.add(setup);
    live = listener;
    return () -> stops++;
  }

  <T> T on(Callable<T> work) {
    T done = FxWindow.on(work);
    window.settle();
    return done;
  }

  void go(Place place) {
    on(
        () -> {
          desk.router().go(place);
          return null;
        });
  }

  Place place() {
    return desk.router().current().get();
  }

  /** A click of a real mouse in the middle of a node; the scene's menus and fields see it too. */
  void click(Node node) {
    on(
        () -> {
          Point2D at =
              node.localToScreen(
                  node.getLayoutBounds().getCenterX(), node.getLayoutBounds().getCenterY());
          Robot robot = new Robot();
          robot.mouseMove(at);
          robot.mouseClick(MouseButton.PRIMARY);
          return null;
        });
    frame();
  }

  /** A key, and the frame after it. */
  void press(KeyCode key) {
    window.press(key);
    frame();
  }

  private void frame() {
    on(
        () -> {
          coach.playing().frame();
          return null;
        });
  }

  /** Plays a round to the run that was last begun, and gives its review. */
  Review round(int round, List<Mistake> mistakes) {
    return on(
        () -> {
          PlayableDrill drill = begun.get(begun.size() - 1).drill();
          Performance take =
              new VirtualPlayer(PlayerSettings.plain())
                  .play(drill.route(), drill.pulse(), mistakes, 2);
          Review review = Reviewed.of(drill, take);
          Optional<Path> file =
              begun.get(begun.size() - 1).takes().map(takes -> takes.files().file(round));
          if (file.isPresent()) {
            keep(take, file.get());
          }
          live.roundEnded(
              new LiveResult(
                  round, review, file, Optional.of(ClickClock.Source.HEARD), 0, 0, List.of()));
          coach.playing().frame();
          return review;
        });
  }

  private static void keep(Performance take, Path file) throws IOException {
    try (WavWriter writer = new WavWriter(file, take.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(take.samples(), 0, take.samples().length);
      writer.finish();
    }
  }

  /** Whether something of this style is in sight. */
  boolean isShown(String style) {
    return on(
        () ->
            window.scene().getRoot().lookupAll(style).stream()
                .anyMatch(
                    node -> {
                      boolean shown = true;
                      for (Node at = node; at != null; at = at.getParent()) {
                        shown &= at.isVisible();
                      }
                      return shown;
                    }));
  }

  /** Ends the run. */
  void over() {
    on(
        () -> {
          live.over();
          coach.playing().frame();
          return null;
        });
  }

  @Override
  public void close() {
    window.close();
  }
}
