package neckway.desk.play;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import neckway.desk.Texts;
import neckway.desk.open.LogChoice;
import neckway.desk.open.RunBook;
import neckway.desk.read.DeviceClipOutput;
import neckway.drill.PlayableDrill;
import neckway.file.GuitarFile;
import neckway.file.GuitarLessons;
import neckway.file.SettingsFile;
import neckway.log.DataFolder;
import neckway.log.MusicFolder;
import neckway.neck.BadInput;
import neckway.string.GuitarProfile;
import neckway.string.Lesson;

/** What is kept about runs: devices, guitar, folder of takes, and how a run goes. */
public final class RunSettings {
  /** Names in the settings file that other views write too. */
  public static final String INPUT = "input";

  public static final String OUTPUT = "output";
  public static final String GUITAR = "guitar";
  public static final String TAKES = "takes";
  private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyy-MM-dd HHmmss");
  private static final int LONGEST_NAME = 60;

  private final SettingsFile settings;
  private final LogChoice log;
  private final RunBook book;
  private final BackingChoice backing;
  private final CallsChoice calls;
  private final BooleanProperty liveMarks = flag("liveMarks", false);
  private final BooleanProperty guessFirst = flag("guessFirst", false);
  private final BooleanProperty repeat = flag("repeatRounds", true);

  public RunSettings(SettingsFile settings) {
    this(settings, LogChoice.USUAL);
  }

  /**
   * @param log where runs are kept
   */
  public RunSettings(SettingsFile settings, LogChoice log) {
    this.settings = settings;
    this.log = log;
    backing = new BackingChoice(settings, new DeviceClipOutput(this::output));
    calls = new CallsChoice(settings);
    book = new RunBook(data(), log.player(), log.keeps());
    for (BooleanProperty each : new BooleanProperty[] {liveMarks, guessFirst, repeat}) {
      each.set(settings.flag(each.getName(), each.get()));
      each.addListener((o, old, now) -> settings.put(each.getName(), now));
    }
    if (settings.isFirst()) {
      repeat.set(false);
    }
  }

  private static BooleanProperty flag(String name, boolean usual) {
    return new SimpleBooleanProperty(null, name, usual);
  }

  /** Whether verdicts show while playing. */
  public BooleanProperty liveMarks() {
    return liveMarks;
  }

  /** Whether the player says how many were right before seeing. */
  public BooleanProperty guessFirst() {
    return guessFirst;
  }

  /**
   * Whether rounds follow each other until stopped. Who comes for the first time plays one, and is
   * shown how it is read.
   */
  public BooleanProperty repeat() {
    return repeat;
  }

  /**
   * The folder where the log lies: the one that was named, or the platform's own place for data, or
   * beside settings that are kept at another place than usual.
   */
  public Path data() {
    return log.folder().orElseGet(() -> isUsual() ? DataFolder.usual() : beside("data"));
  }

  private boolean isUsual() {
    Path kept = settings.path().toAbsolutePath();
    return kept.getParent().equals(SettingsFile.folder().toAbsolutePath());
  }

  private Path beside(String name) {
    return settings.path().toAbsolutePath().resolveSibling(name);
  }

  /** Whether the switches are called. */
  public CallsChoice calls() {
    return calls;
  }

  /**
   * What will be called in a drill.
   *
   * @param complaints told in one line where the log was damaged
   * @throws BadInput where nothing can be called in it
   */
  CalledWay called(PlayableDrill drill, Consumer<String> complaints) {
    return CalledWay.of(CallsChoice.caller(drill, data(), log.player(), complaints));
  }

  /** What is played in place of the click. */
  public BackingChoice backing() {
    return backing;
  }

  /** The runs of this window in the log. */
  public RunBook book() {
    return book;
  }

  /** Name of the input; empty: the first. */
  public Optional<String> input() {
    return settings.text(INPUT).filter(name -> !name.isBlank());
  }

  /** Name of the output; empty: the first. */
  public Optional<String> output() {
    return settings.text(OUTPUT).filter(name -> !name.isBlank());
  }

  /**
   * The guitar that was learnt, if one is kept.
   *
   * @throws BadInput where that guitar is tuned otherwise or its file cannot be read
   */
  public Optional<GuitarProfile> guitar(PlayableDrill drill) {
    return guitarFile().map(file -> GuitarFile.read(file, drill.tuning()));
  }

  /** Takes in what earlier runs taught of the guitar, if one is kept. */
  public void takeInLessons() {
    guitarFile().ifPresent(GuitarLessons::takeIn);
  }

  /**
   * Keeps what a run taught of the guitar, if one is kept.
   *
   * @throws BadInput if its file cannot be written
   */
  public void keep(List<Lesson> lessons) {
    guitarFile().ifPresent(file -> GuitarLessons.keep(file, lessons));
  }

  /** The profile of the guitar that is played, if one is kept. */
  Optional<Path> guitarFile() {
    return settings.text(GUITAR).filter(file -> !file.isBlank()).map(Path::of);
  }

  /**
   * The folder that the player named for takes, or else one where music is kept; beside settings
   * that are kept at another place than usual.
   */
  public Path takesFolder() {
    return settings
        .text(TAKES)
        .filter(f -> !f.isBlank())
        .map(Path::of)
        .orElseGet(() -> isUsual() ? MusicFolder.usual() : beside("takes"));
  }

  /** Where takes lay in earlier versions, if they are kept at their usual place now. */
  public Optional<Path> earlierTakesFolder() {
    boolean named = settings.text(TAKES).filter(f -> !f.isBlank()).isPresent();
    return Optional.of(beside("takes")).filter(folder -> isUsual() && !named);
  }

  /**
   * A new file for a take, in the folder of takes.
   *
   * @throws BadInput where there is no such folder and none can be made
   */
  public Path takeFile(PlayableDrill drill, LocalDateTime now, int round) {
    Path folder = takesFolder();
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new BadInput(Texts.of("problem.takes-not-kept", folder, e.getMessage()), e);
    }
    String title = drill.title().replaceAll("[^\\p{L}\\p{N} #-]+", "");
    String shorter = title.substring(0, Math.min(title.length(), LONGEST_NAME)).strip();
    String name = String.format(Locale.ROOT, "%s %s %02d", STAMP.format(now), shorter, round + 1);
    return folder.resolve(name + ".wav");
  }

  /**
   * A time for a run's takes of which no take is there yet: now, or some seconds later. A clock
   * that was set back shows a time twice, and another window may begin in the same second.
   *
   * @throws BadInput where no take can be kept
   */
  LocalDateTime freeTime(PlayableDrill drill, LocalDateTime now) {
    LocalDateTime time = now;
    while (Files.exists(takeFile(drill, time, 0))) {
      time = time.plusSeconds(1);
    }
    return time;
  }
}
