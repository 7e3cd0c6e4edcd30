package neckway.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.file.SettingsFile;
import neckway.neck.BadInput;

/** What the views share: the drill, the look, the settings, the way from view to view. */
public final class Desk {
  /** The setting that names the input device; left out, the first there is. */
  public static final String INPUT = "input";

  /** The setting that names the output device; left out, the first there is. */
  public static final String OUTPUT = "output";

  private final SettingsFile settings;
  private final DrillModel drill = new DrillModel();
  private final LookModel look;
  private final VolumeModel volume;
  private final ClickModel click;
  private final Router router = new Router();
  private final ReadOnlyStringWrapper notice = new ReadOnlyStringWrapper(this, "notice", "");

  private Optional<Consumer<Path>> recordings = Optional.empty();
  private Optional<Consumer<Path>> folders = Optional.empty();

  /**
   * @param settings what was kept
   */
  public Desk(SettingsFile settings) {
    this.settings = settings;
    look = new LookModel(settings);
    volume = new VolumeModel(settings);
    click = new ClickModel(settings);
    settings.drill("drill").ifPresent(drill::use);
    settings.complaint().ifPresent(this::say);
  }

  public SettingsFile settings() {
    return settings;
  }

  public DrillModel drill() {
    return drill;
  }

  public LookModel look() {
    return look;
  }

  /** How loud everything is that is played back. */
  public VolumeModel volume() {
    return volume;
  }

  /** How loud the click is. */
  public ClickModel click() {
    return click;
  }

  public Router router() {
    return router;
  }

  /** One line for the player at the foot of the window; empty for none. */
  public ReadOnlyStringProperty notice() {
    return notice.getReadOnlyProperty();
  }

  /** Puts a line at the foot of the window in place of the one before. */
  public void say(String line) {
    notice.set(line);
  }

  /** Says who takes a recording that is dropped on the window. */
  public void onRecording(Consumer<Path> taker) {
    recordings = Optional.of(taker);
  }

  /** Says who takes a folder that is dropped on the window. */
  public void onFolder(Consumer<Path> taker) {
    folders = Optional.of(taker);
  }

  /** Takes a file that was dropped or picked: a drill by its ending, else a recording. */
  public void open(Path file) {
    open(List.of(file));
  }

  /**
   * Takes files that were dropped together: the first drill, and then the first recording, which is
   * held against it. What is left over is named in one line.
   */
  public void open(List<Path> files) {
    Optional<Path> drillFile = first(files, Desk::isDrill);
    Optional<Path> sound = first(files, f -> !isDrill(f) && !Files.isDirectory(f));
    if (drillFile.isPresent() && !openDrill(drillFile.get())) {
      return;
    }
    sound.ifPresent(this::openRecording);
    List<String> left =
        files.stream()
            .filter(f -> !drillFile.equals(Optional.of(f)) && !sound.equals(Optional.of(f)))
            .map(f -> name(f).toString())
            .toList();
    if (files.size() == 1 && Files.isDirectory(files.get(0)) && folders.isPresent()) {
      folders.get().accept(files.get(0));
    } else if (files.size() == 1 && !left.isEmpty()) {
      say(Texts.of("problem.folder", left.get(0)));
    } else if (!left.isEmpty()) {
      String line = Texts.of("problem.left-over", String.join(", ", left));
      say((notice.get() + " " + line).strip());
    }
  }

  private static Optional<Path> first(List<Path> files, Predicate<Path> which) {
    return files.stream().filter(which).findFirst();
  }

  private static boolean isDrill(Path file) {
    return file.toString().toLowerCase(Locale.ROOT).endsWith(".json") && !Files.isDirectory(file);
  }

  private static Path name(Path file) {
    return file.getFileName() == null ? file : file.getFileName();
  }

  private boolean openDrill(Path file) {
    if (!drill.open(file)) {
      say(drill.problem().get());
      return false;
    }
    router.go(Screen.Place.CHOOSING);
    say(Texts.of("choosing.opened", name(file)));
    return true;
  }

  private void openRecording(Path file) {
    recordings.ifPresentOrElse(
        taker -> taker.accept(file), () -> say(Texts.of("problem.drop", name(file))));
  }

  /** Keeps the drill, the look and everything else put in the settings; says where it cannot. */
  public void keep() {
    settings.put("drill", drill.drill());
    look.put(settings);
    try {
      settings.save();
    } catch (BadInput e) {
      say(e.getMessage());
    }
  }
}
