package neckway.desk.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.geometry.Bounds;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.robot.Robot;
import neckway.Await;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.SaidCheck;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.SilentOutput;
import neckway.desk.play.RunSettings;
import neckway.drill.PlayableDrill;
import neckway.file.SettingsFile;
import neckway.file.sound.WavWriter;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files dragged by the robot's mouse over the window and let go there. */
class DropTests {
  @TempDir Path folder;

  private Label source;
  private List<Path> carried = List.of();
  private Desk desk;
  private Coach coach;
  private FxWindow window;

  @BeforeEach
  void open() {
    window =
        FxWindow.open(
            () -> {
              source = new Label("files");
              desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
              coach =
                  new Coach(
                      desk,
                      new RunSettings(desk.settings()),
                      (setup, listener) -> () -> {},
                      new SaidCheck(0, ""),
                      new SilentOutput(),
                      Runnable::run,
                      Runnable::run,
                      Runnable::run);
              Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
              screens.putAll(DeskApp.screens());
              coach.offer(screens);
              DeskFrame frame = new DeskFrame(desk, screens);
              source.setOnDragDetected(
                  event -> {
                    ClipboardContent content = new ClipboardContent();
                    content.putFiles(carried.stream().map(Path::toFile).toList());
                    source.startDragAndDrop(TransferMode.COPY).setContent(content);
                    event.consume();
                  });
              // stands where nothing of the window is, as another program's window would
              Scene scene = frame.scene(1280, 800);
              ((BorderPane) scene.getRoot()).setRight(source);
              return scene;
            });
    go(Place.PLAYING);
  }

  @AfterEach
  void close() {
    window.close();
  }

  private void go(Place place) {
    FxWindow.on(
        () -> {
          desk.router().go(place);
          return null;
        });
    window.settle();
  }

  private void drop(Path... files) {
    carried = List.of(files);
    Bounds from = FxWindow.on(() -> source.localToScreen(source.getBoundsInLocal()));
    mouse(from.getCenterX(), from.getCenterY());
    button(true);
    for (int step = 1; step <= 5; step++) {
      mouse(from.getCenterX() - 60 * step, from.getCenterY() + 20 * step);
    }
    button(false);
    window.settle();
  }

  private void mouse(double x, double y) {
    FxWindow.on(
        () -> {
          new Robot().mouseMove(x, y);
          return null;
        });
    window.settle();
  }

  private void button(boolean down) {
    FxWindow.on(
        () -> {
          if (down) {
            new Robot().mousePress(MouseButton.PRIMARY);
          } else {
            new Robot().mouseRelease(MouseButton.PRIMARY);
          }
          return null;
        });
    window.settle();
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private Path drill(String name, String key) throws IOException {
    return file(
        name,
        "{\"format\":\"neckway-drill/1\",\"key\":\""
            + key
            + "\",\"route\":{\"shapes\":[\"major\",\"dorian\"]}}");
  }

  private Path take(String name) {
    PlayableDrill played = desk.drill().drill();
    Performance take =
        new VirtualPlayer(PlayerSettings.plain())
            .play(played.route(), played.pulse(), List.of(), 2);
    Path file = folder.resolve(name);
    try (WavWriter writer = new WavWriter(file, take.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(take.samples(), 0, take.samples().length);
      writer.finish();
    }
    return file;
  }

  private Place place() {
    return desk.router().current().get();
  }

  private String notice() {
    return desk.notice().get();
  }

  @Test
  void drillIsOpened() throws IOException {
    drop(drill("morning.json", "C major"));
    assertThat(desk.drill().drill().key()).hasToString("C major");
    assertThat(place()).isEqualTo(Place.CHOOSING);
    assertThat(notice()).isEqualTo("opened morning.json");
  }

  @Test
  void recordingIsReviewed() {
    Path take = take("take.wav");
    drop(take);
    assertThat(place()).isEqualTo(Place.READING);
    assertThat(coach.reading().take().get().orElseThrow().take()).contains(take);
  }

  @Test
  void recordingBecomesTheBackingWhereOneIsAskedFor() throws Exception {
    Path take = take("take.wav");
    FxWindow.on(
        () -> {
          coach.playing().settings().backing().plays().set(true);
          return null;
        });
    drop(take);
    assertThat(place()).isEqualTo(Place.PLAYING);
    Await.until(
        "it is kept as the backing",
        20,
        () ->
            FxWindow.on(
                () -> {
                  coach.playing().frame();
                  return desk.settings().text("backingFile").equals(Optional.of(take.toString()));
                }));
    assertThat(desk.settings().text("backingKind")).contains("recording");
  }

  @Test
  void drillThatDoesNotFitTheNeckIsOneLineAndTheChoiceStays() throws IOException {
    PlayableDrill before = desk.drill().drill();
    drop(
        file(
            "far.json",
            "{\"format\":\"neckway-drill/1\",\"key\":\"A major\",\"frets\":12,"
                + "\"route\":{\"shapes\":[\"major\",\"dorian\",\"phrygian\",\"mixolydian\"],\"start\":5}}"));
    assertThat(desk.drill().drill()).isEqualTo(before);
    assertThat(place()).isEqualTo(Place.PLAYING);
    assertThat(notice().lines()).hasSize(1);
    // which file, which field, what is amiss, what to do
    assertThat(notice()).contains("far.json").contains("route").contains("fret").contains("take");
  }

  @Test
  void drillAndRecordingTogetherAreHeldAgainstEachOther() throws IOException {
    Path drill = drill("other.json", "C major");
    Path take = take("take.wav");
    drop(take, drill);
    assertThat(place()).isEqualTo(Place.READING);
    assertThat(coach.reading().take().get().orElseThrow().drill().key()).hasToString("C major");
  }

  @Test
  void ofSeveralTheFirstIsTakenAndTheOthersAreNamed() throws IOException {
    drop(
        drill("one.json", "C major"), drill("two.json", "D major"), drill("three.json", "E major"));
    assertThat(desk.drill().drill().key()).hasToString("C major");
    assertThat(notice()).startsWith("opened one.json").contains("two.json, three.json");
    assertThat(notice().lines()).hasSize(1);
  }

  @Test
  void folderIsOneLine() throws IOException {
    Path inside = Files.createDirectory(folder.resolve("takes"));
    drop(inside);
    assertThat(place()).isEqualTo(Place.PLAYING);
    assertThat(notice()).startsWith("takes: is a folder; ");
    drop(inside, drill("one.json", "C major"));
    assertThat(notice()).startsWith("opened one.json").contains("left over: takes");
  }

  @Test
  void fileOfAnotherKindLeavesWhatIsInFrontAndARunGoesOn() throws IOException {
    FxWindow.on(
        () -> {
          coach.playing().begin();
          return null;
        });
    drop(file("shopping.txt", "strings, and a new cable for the amplifier\n"));
    assertThat(place()).isEqualTo(Place.PLAYING);
    assertThat(notice()).contains("shopping.txt").contains("WAV");
    assertThat(notice().lines()).hasSize(1);
    assertThat(coach.playing().state().get())
        .isEqualTo(neckway.desk.play.PlayingModel.State.OPENING);
  }
}
