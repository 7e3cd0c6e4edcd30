package neckway.desk.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.geometry.BoundingBox;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Control;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.Spinner;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import neckway.desk.CutWords;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.Language;
import neckway.desk.SaidCheck;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.SilentOutput;
import neckway.desk.Texts;
import neckway.desk.app.Coach;
import neckway.desk.app.DeskApp;
import neckway.desk.app.Practice;
import neckway.desk.open.InventedLog;
import neckway.desk.play.RunSettings;
import neckway.desk.read.ReadTake;
import neckway.file.RoundTripFile;
import neckway.file.SettingsFile;
import neckway.live.LiveRunListener;
import neckway.page.PagedTake;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Whatever the size of window and text, each control can be reached: seen at once or scrolled to.
 */
@Tag("slow")
class EveryControlTests {
  /** Rounding of layouts to whole pixels. */
  private static final double ROUNDING = 1.5;

  /** What is scrolled is of use through a slit of this many lines of text, no less. */
  private static final double LEAST_LINES_SEEN = 3;

  /** Kept in the log, so that something is open and something fades. */
  private static final int RUNS = 120;

  @TempDir private Path folder;
  private Desk desk;
  private Coach coach;
  private LiveRunListener live;
  private SoundModel room;
  private boolean whole;

  @ParameterizedTest
  @CsvSource({
    "800, 560, 100", "800, 560, 200", "800, 560, 300", "800, 1000, 100", "1024, 640, 100",
    "1100, 700, 125", "1280, 800, 100", "1280, 800, 150", "1280, 800, 200", "1280, 800, 300",
    "1860, 1164, 100", "1920, 1080, 100", "1920, 1080, 200", "2560, 1440, 100", "2560, 1440, 200",
    "2560, 1080, 100"
  })
  void isWithinTheWindowOrScrolledTo(double width, double height, int percent) {
    walk(width, height, percent);
  }

  /** German words are longer. */
  @ParameterizedTest
  @CsvSource({
    "ENGLISH, 800, 560, 100", "ENGLISH, 800, 560, 200",
    "ENGLISH, 1280, 800, 100", "ENGLISH, 1280, 800, 200",
    "GERMAN, 800, 560, 100", "GERMAN, 800, 560, 200",
    "GERMAN, 1280, 800, 100", "GERMAN, 1280, 800, 200"
  })
  void isSaidInFullInEachLanguage(Language language, double width, double height, int percent) {
    Texts.speak(language);
    whole = true;
    try {
      walk(width, height, percent);
    } finally {
      Texts.speak(Language.ENGLISH);
    }
  }

  /** With a swing and a backing there is the most to choose: of a band, and of a recording. */
  @ParameterizedTest
  @CsvSource({
    "ENGLISH, band, 800, 560, 100", "ENGLISH, band, 1280, 800, 200",
    "ENGLISH, recording, 800, 560, 100", "ENGLISH, recording, 800, 560, 200",
    "ENGLISH, recording, 1280, 800, 100", "ENGLISH, recording, 1280, 800, 200",
    "ENGLISH, recording, 1280, 800, 300", "ENGLISH, recording, 1920, 1080, 100",
    "GERMAN, recording, 800, 560, 100", "GERMAN, recording, 1280, 800, 100",
    "GERMAN, recording, 1280, 800, 200"
  })
  void choiceOfFeelAndBackingIsSaidInFullAndWithinReach(
      Language language, String kind, double width, double height, int percent) {
    SettingsFile kept = SettingsFile.at(folder.resolve("settings.json"));
    kept.put("backingPlays", true);
    kept.put("backingKind", kind);
    kept.put("backingFile", folder.resolve("a long evening in the cellar.flac").toString());
    kept.put("backingTempo", 103.97);
    kept.put("backingFirstBeat", 12.345);
    kept.save();
    Texts.speak(language);
    whole = true;
    try (FxWindow window = open(width, height, percent)) {
      check(window, Place.CHOOSING, () -> desk.drill().swing(0.6));
      check(window, Place.PLAYING, () -> {});
    } finally {
      Texts.speak(Language.ENGLISH);
    }
  }

  private void walk(double width, double height, int percent) {
    try (FxWindow window = open(width, height, percent)) {
      check(window, Place.CHOOSING, () -> {});
      check(window, Place.PLAYING, () -> {});
      window.press(KeyCode.SPACE);
      check(
          window,
          Place.PLAYING,
          () -> {
            live.roundBegins(0);
            live.beat(0);
          });
      check(window, Place.PLAYING, () -> live.over());
      check(window, Place.READING, () -> {});
      PagedTake take = PagedTake.recorded("missed-shift");
      check(
          window,
          Place.READING,
          () ->
              coach
                  .reading()
                  .open(
                      ReadTake.played(
                          take.drill(), take.review(), Optional.empty(), OptionalInt.empty())));
      assertPrimaryButtonInSight(window);
      check(window, Place.OPEN, () -> {});
      check(window, Place.SOUND_ROOM, () -> {});
      check(window, Place.SOUND_ROOM, () -> room.guitar().begin());
    }
  }

  /** A large window has the same arrangement as the usual one, with everything larger. */
  @ParameterizedTest
  @CsvSource({"1280, 800", "1860, 1164", "2560, 1440"})
  void aLargeWindowIsNotTakenForLargeText(double width, double height) {
    try (FxWindow window = open(width, height, 100)) {
      FxWindow.on(
          () -> {
            desk.router().go(Place.PLAYING);
            return null;
          });
      window.settle();
      List<Node> scrolled =
          FxWindow.on(() -> List.copyOf(window.scene().getRoot().lookupAll(".scroll-pane")));
      assertThat(scrolled).isEmpty();
    }
  }

  /** What goes on after reading is seen without a scroll, and is one button alone. */
  private void assertPrimaryButtonInSight(FxWindow window) {
    List<Node> primary =
        FxWindow.on(() -> List.copyOf(window.scene().getRoot().lookupAll(".main-action")));
    assertThat(primary).hasSize(1);
    for (Node above = primary.get(0); above != null; above = above.getParent()) {
      assertThat(above).isNotInstanceOf(ScrollPane.class);
    }
    Bounds at = primary.get(0).localToScene(primary.get(0).getLayoutBounds());
    double width = window.scene().getWidth();
    double height = window.scene().getHeight();
    assertThat(within(at, new BoundingBox(0, 0, width, height))).as(at.toString()).isTrue();
  }

  private FxWindow open(double width, double height, int percent) {
    return FxWindow.open(
        () -> {
          InventedLog.write(folder.resolve("data"), RUNS);
          desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
          desk.look().text(percent);
          coach =
              new Coach(
                  desk,
                  new RunSettings(desk.settings()),
                  (setup, listener) -> {
                    live = listener;
                    return () -> {};
                  },
                  new SaidCheck(0.3f, ""),
                  new SilentOutput(),
                  Runnable::run,
                  Runnable::run,
                  Runnable::run);
          RoundTripFile trips = new RoundTripFile(folder.resolve("round-trip.json"));
          room = new SoundModel(desk, new FakeDevices(), trips, Runnable::run, Platform::runLater);
          Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(DeskApp.screens());
          coach.offer(screens);
          Practice practice =
              new Practice(
                  desk,
                  new RunSettings(desk.settings()),
                  (setup, listener) -> {
                    live = listener;
                    return () -> {};
                  },
                  coach.reading(),
                  () -> InventedLog.TODAY,
                  Runnable::run,
                  Runnable::run);
          practice.offer(screens);
          practice.begin();
          screens.put(Place.SOUND_ROOM, d -> new SoundScreen(d, room));
          return new DeskFrame(desk, screens, Optional.of(practice.strip())).scene(width, height);
        });
  }

  private void check(FxWindow window, Place place, Runnable before) {
    FxWindow.on(
        () -> {
          desk.router().go(place);
          before.run();
          return null;
        });
    window.settle();
    List<String> lost = FxWindow.on(() -> lost(window));
    assertThat(lost).as(place.toString()).isEmpty();
    if (whole) {
      List<String> cut = FxWindow.on(() -> CutWords.in(window.scene().getRoot()));
      assertThat(cut).as(place.toString()).isEmpty();
    }
  }

  private List<String> lost(FxWindow window) {
    List<Control> controls = new ArrayList<>();
    collect(window.scene().getRoot(), controls);
    assertThat(controls).as("controls").hasSizeGreaterThan(4);
    double line = DeskFrame.BASE_PIXELS * desk.look().fontPercent().get() / 100;
    List<String> lost = new ArrayList<>();
    for (Control control : controls) {
      Bounds at = control.localToScene(control.getLayoutBounds());
      String why = why(control, at, LEAST_LINES_SEEN * line);
      if (!why.isEmpty()) {
        lost.add(control + ": " + why);
      }
    }
    return lost;
  }

  /** The controls that are shown and worked by the player. */
  private static void collect(Node node, List<Control> controls) {
    if (!node.isVisible() || !node.isManaged() && !(node.getParent() instanceof Control)) {
      return;
    }
    boolean worked =
        node instanceof ButtonBase
            || node instanceof ComboBoxBase
            || node instanceof Spinner
            || node instanceof Slider
            || node instanceof TextInputControl;
    if (worked) {
      controls.add((Control) node);
    } else if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> collect(child, controls));
    }
  }

  private static String why(Node control, Bounds bounds, double leastSeen) {
    Bounds at = bounds;
    for (Node above = control.getParent(); above != null; above = above.getParent()) {
      if (above instanceof ScrollPane scroll) {
        Node content = scroll.getContent();
        Bounds whole = content.localToScene(content.getLayoutBounds());
        if (!within(at, whole)) {
          return "outside what is scrolled, " + at + " of " + whole;
        }
        Bounds seen = scroll.localToScene(scroll.getLayoutBounds());
        if (at.getMinX() < seen.getMinX() - ROUNDING || at.getMaxX() > seen.getMaxX() + ROUNDING) {
          return "beside what is scrolled up and down, " + at + " in " + seen;
        }
        if (seen.getHeight() < leastSeen) {
          return "scrolled in a slit " + seen.getHeight() + " high";
        }
        at = seen;
      }
    }
    double width = control.getScene().getWidth();
    double height = control.getScene().getHeight();
    Bounds window = new BoundingBox(0, 0, width, height);
    return within(at, window) ? "" : "outside the window, " + at;
  }

  private static boolean within(Bounds inner, Bounds outer) {
    return inner.getMinX() >= outer.getMinX() - ROUNDING
        && inner.getMinY() >= outer.getMinY() - ROUNDING
        && inner.getMaxX() <= outer.getMaxX() + ROUNDING
        && inner.getMaxY() <= outer.getMaxY() + ROUNDING;
  }
}
