package neckway.desk.choose;

import java.io.File;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.stage.FileChooser;
import javafx.stage.FileChooser.ExtensionFilter;
import javafx.stage.Window;
import neckway.desk.Desk;
import neckway.desk.Texts;

/** Opens and saves drills by dialog. The folder is remembered. */
final class DrillFiles {
  private static final String ENDING = ".json";
  private static final String FOLDER = "drillFolder";

  private final Desk desk;
  private final Node owner;

  DrillFiles(Desk desk, Node owner) {
    this.desk = desk;
    this.owner = owner;
  }

  void open() {
    ask("choosing.open", "", dialog -> dialog.showOpenDialog(window())).ifPresent(desk::open);
  }

  void save() {
    ask("choosing.save", fileName(), dialog -> dialog.showSaveDialog(window()))
        .map(DrillFiles::named)
        .ifPresent(this::save);
  }

  private void save(Path file) {
    if (desk.drill().save(file)) {
      desk.say(Texts.of("choosing.saved", file.getFileName()));
    }
  }

  /** Some systems' dialogs leave the ending to the player. */
  static Path named(Path file) {
    String name = file.getFileName().toString();
    boolean ends = name.toLowerCase(Locale.ROOT).endsWith(ENDING);
    return ends ? file : file.resolveSibling(name + ENDING);
  }

  private Window window() {
    return owner.getScene().getWindow();
  }

  private Optional<Path> ask(String titleKey, String name, Function<FileChooser, File> show) {
    FileChooser dialog = new FileChooser();
    dialog.setTitle(Texts.of(titleKey));
    dialog.getExtensionFilters().add(new ExtensionFilter(Texts.of("choosing.files"), "*.json"));
    dialog.setInitialFileName(name);
    desk.settings()
        .text(FOLDER)
        .or(() -> Optional.ofNullable(System.getProperty("user.home")))
        .map(File::new)
        .filter(File::isDirectory)
        .ifPresent(dialog::setInitialDirectory);
    Optional<Path> chosen = Optional.ofNullable(show.apply(dialog)).map(File::toPath);
    chosen
        .map(file -> file.toAbsolutePath().getParent())
        .ifPresent(folder -> desk.settings().put(FOLDER, folder.toString()));
    return chosen;
  }

  /** A name without signs that some file systems will not have. */
  private String fileName() {
    return desk.drill()
            .drill()
            .title()
            .toLowerCase(Locale.ROOT)
            .replace("#", "-sharp")
            .replaceAll("[^\\p{L}0-9-]+", "-")
        + ENDING;
  }
}
