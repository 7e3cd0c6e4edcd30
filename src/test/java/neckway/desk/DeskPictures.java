package neckway.desk;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import neckway.desk.Screen.Place;
import neckway.desk.app.Coach;
import neckway.desk.app.DeskApp;
import neckway.desk.choose.ChoosingModel;
import neckway.file.SettingsFile;
import neckway.neck.Key;
import neckway.neck.Shape;

/**
 * Takes pictures of the choosing screen as it looks in different settings. Run as {@code
 * DeskPictures FOLDER}; the page on the desk in docs has the whole command.
 */
final class DeskPictures {
  private static final String SEEN_BY_OTHERS = "choosing";

  private final Path folder;

  private DeskPictures(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] args) {
    new DeskPictures(Path.of(args[0])).takeAll();
    System.exit(0);
  }

  private void takeAll() {
    take("choosing", 1280, 800, desk -> other(desk));
    take("choosing-dark", 1280, 800, desk -> dark(desk));
    take("choosing-1920", 1920, 1080, desk -> other(desk));
    take("choosing-1920-dark", 1920, 1080, desk -> dark(desk));
    take("choosing-close", 1280, 800, desk -> desk.look().closeUp().set(true));
    take(
        "choosing-left",
        1280,
        800,
        desk -> {
          desk.look().leftHanded().set(true);
          desk.look().lowStringOnTop().set(true);
          desk.look().label().set(LookModel.Label.NOTE);
        });
    take("choosing-small", 800, 560, desk -> other(desk));
    take("choosing-200", 1280, 800, desk -> desk.look().text(200));
    take("choosing-300", 1280, 800, desk -> desk.look().text(300));
    take(
        "choosing-long",
        1280,
        800,
        desk -> {
          desk.drill().key(Key.parse("Eb minor"));
          Chains.lowest(
              desk.drill(),
              List.of(Shape.PHRYGIAN, Shape.MIXOLYDIAN, Shape.MINOR, Shape.MAJOR, Shape.DORIAN));
          desk.drill().rounds(12);
          desk.drill().tempo(132.5);
          desk.drill().notesPerBeat(3);
          desk.drill().tuning("A2 E2");
        });
    take("choosing-eight", 1280, 800, desk -> desk.drill().tuning("F#1 B1 E2 A2 D3 G3 B3 E4"));
  }

  private static void other(Desk desk) {
    ChoosingModel model = new ChoosingModel(desk);
    model.takeBy(neckway.neck.Direction.DOWN, 2);
  }

  private static void dark(Desk desk) {
    other(desk);
    desk.look().dark().set(true);
  }

  private void take(String name, double width, double height, Consumer<Desk> with) {
    SettingsFile settings = SettingsFile.at(folder.resolve("no-settings.json"));
    Desk[] made = new Desk[1];
    try (FxWindow window =
        FxWindow.open(
            () -> {
              made[0] = new Desk(settings);
              Map<Place, Function<Desk, Screen>> screens = DeskApp.screens();
              Coach.onDevices(made[0]).offer(screens);
              return new DeskFrame(made[0], screens).scene(width, height);
            })) {
      FxWindow.on(
          () -> {
            with.accept(made[0]);
            return null;
          });
      window.save(folder.resolve(name + ".png"));
      if (name.equals(SEEN_BY_OTHERS)) {
        BufferedImage seen = window.picture();
        FxWindow.save(Eyes.seen(seen, Eyes.PROTANOPIA), folder.resolve(name + "-protanopia.png"));
        FxWindow.save(
            Eyes.seen(seen, Eyes.DEUTERANOPIA), folder.resolve(name + "-deuteranopia.png"));
      }
    }
  }
}
