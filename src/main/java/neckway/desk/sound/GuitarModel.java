package neckway.desk.sound;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import neckway.calibration.Calibrated;
import neckway.calibration.Calibration;
import neckway.calibration.Finding;
import neckway.desk.Desk;
import neckway.desk.Texts;
import neckway.desk.play.RunSettings;
import neckway.file.GuitarFile;
import neckway.file.OutputFiles;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;

/** The guitar: which profile is in use, and the plucks from which a new one is learnt. */
public final class GuitarModel {
  /** Where the plucks are. */
  public enum Stage {
    /** No plucks are asked for. */
    REST,
    PLUCKING,
    /** All was plucked and the guitar is learnt. */
    LEARNT,
    /** All was plucked, and it cannot be learnt from that. */
    REFUSED
  }

  private static final String ENDING = ".json";
  private static final Set<Finding.Kind> PLUCK_AGAIN =
      EnumSet.of(
          Finding.Kind.LEFT_OUT,
          Finding.Kind.WRONG_FRET,
          Finding.Kind.ODD_PLUCK,
          Finding.Kind.UNSURE,
          Finding.Kind.STRING_OFF);

  private final Desk desk;
  private final RoomEar ear;
  private final ReadOnlyObjectWrapper<Stage> stage =
      new ReadOnlyObjectWrapper<>(this, "stage", Stage.REST);
  private final ObservableList<String> known = FXCollections.observableArrayList();
  private final StringProperty inUse = new SimpleStringProperty(this, "inUse", "");
  private final ReadOnlyStringWrapper profile = new ReadOnlyStringWrapper(this, "profile", "");
  private final ReadOnlyStringWrapper next = new ReadOnlyStringWrapper(this, "next", "");
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper(this, "said", "");
  private final ReadOnlyStringWrapper count = new ReadOnlyStringWrapper(this, "count", "");
  private final ReadOnlyDoubleWrapper share = new ReadOnlyDoubleWrapper(this, "share");
  private final ObservableList<String> findings = FXCollections.observableArrayList();
  private final ObservableList<GuitarString> again = FXCollections.observableArrayList();
  private final StringProperty name = new SimpleStringProperty(this, "name", "");

  private final ReadOnlyStringWrapper profileTrouble =
      new ReadOnlyStringWrapper(this, "profileTrouble", "");
  private final ReadOnlyStringWrapper saveTrouble =
      new ReadOnlyStringWrapper(this, "saveTrouble", "");

  private Tuning tuning = Tuning.STANDARD;
  private Optional<Calibrated> learnt = Optional.empty();

  GuitarModel(Desk desk, RoomEar ear) {
    this.desk = desk;
    this.ear = ear;
    inUse.set(desk.settings().text(RunSettings.GUITAR).orElse(""));
    name.set(Texts.of("guitar.name.usual"));
    listed();
    inUse.addListener(o -> chosen());
    name.addListener(o -> saveTrouble.set(""));
  }

  /** The profiles kept, as paths; the empty one stands for none. */
  public ObservableList<String> known() {
    return known;
  }

  /** The path of the profile in use; empty for none. */
  public StringProperty inUse() {
    return inUse;
  }

  /** All that {@link #next} may say: the places of the plucks, and that they are done. */
  List<String> allNext() {
    Tuning now = desk.drill().drill().tuning();
    List<String> all = new ArrayList<>(List.of(Texts.of("guitar.done")));
    for (GuitarString string : now.strings()) {
      for (int fret : Calibration.USUAL_FRETS) {
        all.add(SoundWords.pluck(new Place(string, fret), now));
      }
    }
    return all;
  }

  /** The profile in use in words. */
  public ReadOnlyStringProperty profile() {
    return profile.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Stage> stage() {
    return stage.getReadOnlyProperty();
  }

  /** Where to pluck next. */
  public ReadOnlyStringProperty next() {
    return next.getReadOnlyProperty();
  }

  /** What was heard of the last pluck. */
  public ReadOnlyStringProperty said() {
    return said.getReadOnlyProperty();
  }

  /** How many plucks are done, in words. */
  public ReadOnlyStringProperty count() {
    return count.getReadOnlyProperty();
  }

  /** The same, 0 to 1. */
  public ReadOnlyDoubleProperty share() {
    return share.getReadOnlyProperty();
  }

  /** What to know of the plucks, once all are there. */
  public ObservableList<String> findings() {
    return findings;
  }

  /** Strings that may be plucked again. */
  public ObservableList<GuitarString> again() {
    return again;
  }

  /** What the guitar that is learnt is called. */
  public StringProperty name() {
    return name;
  }

  /** Why a profile cannot be opened, or which cannot be listed; empty where all is well. */
  public ReadOnlyStringProperty profileTrouble() {
    return profileTrouble.getReadOnlyProperty();
  }

  /** Why what was learnt is not saved; empty where nothing stood in the way. */
  public ReadOnlyStringProperty saveTrouble() {
    return saveTrouble.getReadOnlyProperty();
  }

  /** A profile's name as it is shown. */
  public static String shownName(String path) {
    if (path == null || path.isEmpty()) {
      return Texts.of("guitar.none");
    }
    String file = Path.of(path).getFileName().toString();
    return file.endsWith(ENDING) ? file.substring(0, file.length() - ENDING.length()) : file;
  }

  /** The room is in front: what is kept may have changed. */
  void shown() {
    listed();
    tell();
  }

  private Path folder() {
    return desk.settings().path().toAbsolutePath().resolveSibling("guitars");
  }

  private void listed() {
    List<String> all = new ArrayList<>();
    all.add("");
    if (Files.isDirectory(folder())) {
      try (Stream<Path> files = Files.list(folder())) {
        files.map(Path::toString).filter(f -> f.endsWith(ENDING)).sorted().forEach(all::add);
      } catch (IOException e) {
        profileTrouble.set(Texts.of("guitar.folder", folder()));
      }
    }
    if (!all.contains(inUse.get())) {
      all.add(inUse.get());
    }
    all.stream().filter(each -> !known.contains(each)).toList().forEach(known::add);
    known.removeIf(each -> !all.contains(each));
  }

  private void chosen() {
    profileTrouble.set("");
    desk.settings().put(RunSettings.GUITAR, inUse.get() == null ? "" : inUse.get());
    tell();
  }

  private void tell() {
    String path = inUse.get();
    if (path == null || path.isEmpty()) {
      profile.set(Texts.of("guitar.unknown"));
      return;
    }
    try {
      GuitarProfile read = GuitarFile.read(Path.of(path), desk.drill().drill().tuning());
      int plucks = read.strings().stream().mapToInt(StringProfile::plucks).sum();
      profile.set(Texts.of("guitar.known", read.strings().size(), plucks));
    } catch (BadInput e) {
      profile.set(e.getMessage());
    }
  }

  /** Takes an existing profile into use. */
  public void open(Path file) {
    try {
      GuitarFile.read(file);
      use(file);
    } catch (BadInput e) {
      profileTrouble.set(e.getMessage());
    }
  }

  private void use(Path file) {
    String path = file.toAbsolutePath().toString();
    if (!known.contains(path)) {
      known.add(path);
    }
    inUse.set(path);
    tell();
  }

  /** Begins the guided plucks, for the tuning of the drill. */
  public void begin() {
    tuning = desk.drill().drill().tuning();
    PluckGuide guide = new PluckGuide(tuning, Calibration.USUAL_FRETS);
    forget();
    stage.set(Stage.PLUCKING);
    show(guide.state());
    ear.leave();
    ear.lead(guide);
  }

  private void forget() {
    saveTrouble.set("");
    learnt = Optional.empty();
    findings.clear();
    again.clear();
  }

  /** Ends the plucks; nothing of them is kept. */
  public void stop() {
    ear.leave();
    forget();
    stage.set(Stage.REST);
  }

  /** The last pluck is to be made again. */
  public void back() {
    change(PluckGuide::back);
  }

  /** The next pluck is passed over. */
  public void skip() {
    change(PluckGuide::skip);
  }

  /** A string's plucks are to be made again. */
  public void again(GuitarString string) {
    change(guide -> guide.again(string));
  }

  private void change(Consumer<PluckGuide> change) {
    if (stage.get() != Stage.REST) {
      forget();
      stage.set(Stage.PLUCKING);
      ear.withGuide(change);
    }
  }

  /** Takes what the ear says of the plucks. */
  void heard(RoomEar.Heard heard) {
    if (stage.get() != Stage.PLUCKING || heard.guide().isEmpty()) {
      return;
    }
    show(heard.guide().get());
    if (heard.learnt().isPresent()) {
      learnt = heard.learnt();
      learnt.get().findings().forEach(finding -> findings.add(finding.words()));
      if (findings.isEmpty()) {
        findings.add(Texts.of("guitar.clean"));
      }
      learnt.get().findings().stream()
          .filter(finding -> PLUCK_AGAIN.contains(finding.kind()))
          .flatMap(finding -> finding.string().stream())
          .distinct()
          .forEach(again::add);
      stage.set(Stage.LEARNT);
    } else if (!heard.refused().isEmpty()) {
      findings.add(heard.refused());
      again.setAll(tuning.strings());
      stage.set(Stage.REFUSED);
    }
  }

  private void show(PluckGuide.State state) {
    next.set(
        state.next().map(place -> SoundWords.pluck(place, tuning)).orElse(Texts.of("guitar.done")));
    said.set(SoundWords.said(state));
    count.set(Texts.of("guitar.count", state.done(), state.all()));
    share.set((double) state.done() / state.all());
  }

  /** Keeps what was learnt beside the settings, under its name, and takes it into use. */
  public void save() {
    String plain = name.get().replaceAll("[^\\p{L}\\p{N} ._-]+", "").strip();
    if (plain.isEmpty() || plain.startsWith(".")) {
      saveTrouble.set(Texts.of("guitar.name.bad"));
      return;
    }
    Path file = folder().resolve(plain + ENDING);
    for (int number = 2; Files.exists(file) && !file.toString().equals(inUse.get()); number++) {
      file = folder().resolve(plain + " " + number + ENDING);
    }
    save(file);
  }

  /** Keeps what was learnt in a file and takes it into use. */
  public void save(Path file) {
    if (learnt.isEmpty()) {
      return;
    }
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      OutputFiles.check(file, OutputFiles.Kind.GUITAR);
      GuitarFile.write(file, learnt.get().profile(), tuning);
      use(file);
      stop();
      desk.say(Texts.of("guitar.saved", file));
      desk.keep();
    } catch (IOException e) {
      saveTrouble.set(Texts.of("guitar.folder", file.toAbsolutePath().getParent()));
    } catch (BadInput e) {
      saveTrouble.set(e.getMessage());
    }
  }
}
