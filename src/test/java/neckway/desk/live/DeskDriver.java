package neckway.desk.live;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.function.Function;
import java.util.stream.Collectors;
import javafx.application.Platform;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.Frames;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.app.Coach;
import neckway.desk.app.DeskApp;
import neckway.desk.play.DeviceCheck;
import neckway.desk.play.Engine;
import neckway.desk.play.RunSettings;
import neckway.desk.read.DeviceClipOutput;
import neckway.desk.sound.SoundScreen;
import neckway.file.RoundTripFile;
import neckway.file.SettingsFile;
import neckway.sound.Devices;

/**
 * The whole window on the devices of this machine, told what to do line by line on standard input:
 * {@code drill FILE}, {@code late MS}, {@code frames}, {@code go PLACE}, {@code key NAME}, {@code
 * state}, {@code words}, {@code line}, {@code room}, {@code picture FILE}, {@code counts}, {@code
 * held}, {@code drawn} (which waits until all that was asked for is drawn), {@code quit}. It
 * answers each with one line. The window is 1280 x 800, or as wide and high as the two arguments
 * say.
 */
public final class DeskDriver {
  private Desk desk;
  private Coach coach;
  private Stage stage;
  private final FrameTimes frames = new FrameTimes();
  private final WindowCounters counters = new WindowCounters();
  private int width = 1280;
  private int height = 800;

  private interface Work {
    String run() throws Exception;
  }

  public static void main(String[] args) throws Exception {
    DeskDriver driver = new DeskDriver();
    if (args.length == 2) {
      driver.width = Integer.parseInt(args[0]);
      driver.height = Integer.parseInt(args[1]);
    }
    Platform.startup(() -> {});
    System.out.println(inWindow(driver::open));
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      if (line.equals("quit")) {
        break;
      }
      String asked = line;
      if (asked.equals("drawn")) {
        Frames.drawn();
      }
      System.out.println(inWindow(() -> driver.answer(asked)).replace('\n', ' '));
    }
    Runtime.getRuntime().halt(0);
  }

  private static String inWindow(Work work) throws Exception {
    FutureTask<String> task = new FutureTask<>(work::run);
    Platform.runLater(task);
    return task.get();
  }

  private String open() {
    desk = new Desk(SettingsFile.usual());
    Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
    screens.putAll(DeskApp.screens());
    RunSettings settings = new RunSettings(desk.settings());
    Executor recording = Executors.newSingleThreadExecutor();
    coach =
        new Coach(
            desk,
            settings,
            counters.counting(Engine.devices()),
            new DeviceCheck(),
            new DeviceClipOutput(settings::output),
            Executors.newSingleThreadExecutor(),
            recording,
            Platform::runLater);
    coach.rescue(recording, Platform::runLater);
    coach.offer(screens);
    screens.put(Place.SOUND_ROOM, SoundScreen::onDevices);
    stage = new Stage();
    stage.setScene(new DeskFrame(desk, screens).scene(width, height));
    stage.show();
    frames.start();
    counters.watch(coach, stage.getScene());
    return "open";
  }

  private String answer(String line) throws Exception {
    String[] asked = line.split(" ", 2);
    return switch (asked[0]) {
      case "drill" -> Boolean.toString(desk.drill().open(Path.of(asked[1])));
      case "go" -> {
        desk.router().go(Place.valueOf(asked[1]));
        yield "went";
      }
      case "key" -> key(KeyCode.valueOf(asked[1]));
      case "late" -> late(Double.parseDouble(asked[1]));
      case "frames" -> frames.shares();
      case "drawn" -> "drawn";
      case "counts" -> counters.counts();
      case "held" -> Held.now();
      case "state" -> desk.router().current().get() + " " + coach.playing().state().get();
      case "words" -> onScreen(".sentence");
      case "score" -> onScreen(".figures");
      case "line" -> onScreen(".off") + onScreen(".notice");
      case "room" -> onScreen(".room-line");
      case "picture" -> picture(Path.of(asked[1]));
      default -> throw new IllegalArgumentException(line);
    };
  }

  /** Keeps about how late the loudspeaker is heard; the count-in then makes it exact. */
  private static String late(double ms) {
    String in = Devices.inputName(Optional.empty());
    String out = Devices.outputName(Optional.empty());
    new RoundTripFile().keep(new RoundTripFile.Pair(in, out, 48_000, ms, 0.1, 16));
    return "kept";
  }

  private String onScreen(String style) {
    return stage.getScene().getRoot().lookupAll(style).stream()
        .filter(Node::isVisible)
        .map(node -> ((Labeled) node).getText())
        .collect(Collectors.joining("\t"));
  }

  private String key(KeyCode code) {
    Node focus = stage.getScene().getFocusOwner();
    Event.fireEvent(
        focus == null ? stage.getScene().getRoot() : focus,
        new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false));
    return "pressed";
  }

  private String picture(Path file) throws Exception {
    WritableImage image = stage.getScene().snapshot(null);
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    java.awt.image.BufferedImage copy =
        new java.awt.image.BufferedImage(width, height, java.awt.image.BufferedImage.TYPE_INT_RGB);
    PixelReader reader = image.getPixelReader();
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        copy.setRGB(x, y, reader.getArgb(x, y));
      }
    }
    javax.imageio.ImageIO.write(copy, "png", file.toFile());
    return "taken";
  }
}
