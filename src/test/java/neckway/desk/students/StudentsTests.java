package neckway.desk.students;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import javafx.geometry.Orientation;
import javafx.scene.Scene;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.choose.ChoosingScreen;
import neckway.desk.read.ClipOutput;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.JsonFile;
import neckway.file.SettingsFile;
import neckway.file.sound.WavWriter;
import neckway.hand.ShiftVerdict;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.sound.Clip;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A class of three invented students, one of them with a broken file, by keyboard alone. */
final class StudentsTests {
  private static final PlayableDrill DRILL = Drills.example();
  private static final int WRONG_STEP = 8;

  @TempDir Path folder;
  private final AtomicInteger sounded = new AtomicInteger();
  private final List<String> said = new ArrayList<>();

  private final ClipOutput output =
      new ClipOutput() {
        @Override
        public void play(Clip clip, Ended ended) {
          sounded.incrementAndGet();
        }

        @Override
        public void stop() {
          // nothing sounds here
        }

        @Override
        public long framesHeard() {
          return 0;
        }
      };

  private Path students;
  private StudentsModel model;
  private Desk desk;

  @BeforeEach
  void recordings() throws Exception {
    students = Files.createDirectory(folder.resolve("students"));
    take("Ada.wav", List.of(), 1);
    take(
        "Ben.wav",
        List.of(new Mistake.Slip(Mistake.Kind.WRONG, WRONG_STEP, OptionalInt.empty())),
        2);
    Files.writeString(students.resolve("Cleo.wav"), "this is no sound");
    model =
        new StudentsModel(() -> DRILL, output, () -> 0.1, Runnable::run, Runnable::run, said::add);
  }

  private void take(String name, List<Mistake> mistakes, long seed) {
    take(name, DRILL, mistakes, seed);
  }

  private void take(String name, PlayableDrill drill, List<Mistake> mistakes, long seed) {
    Performance played =
        new VirtualPlayer(PlayerSettings.plain())
            .play(drill.route(), drill.pulse(), mistakes, seed);
    try (WavWriter writer =
        new WavWriter(students.resolve(name), played.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(played.samples(), 0, played.samples().length);
      writer.finish();
    }
  }

  private FxWindow opened(int width, int height, int percent) {
    return FxWindow.open(
        () -> {
          desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
          desk.look().text(percent);
          Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
          screens.put(Place.CHOOSING, ChoosingScreen::new);
          screens.put(Place.STUDENTS, d -> new StudentsScreen(model, d));
          DeskFrame frame = new DeskFrame(desk, screens);
          Scene scene = frame.scene(width, height);
          desk.onFolder(
              dropped -> {
                desk.router().go(Place.STUDENTS);
                model.open(dropped);
              });
          return scene;
        });
  }

  private static <T> T on(java.util.concurrent.Callable<T> work) {
    return FxWindow.on(work);
  }

  @Test
  void theUnsureAndTheSlipsComeFirstAndABrokenFileStopsNobody() {
    model.open(students);
    assertThat(model.students().get()).extracting(s -> s.job().name()).startsWith("Ben");
    assertThat(model.students().get())
        .filteredOn(s -> s.job().name().equals("Cleo"))
        .singleElement()
        .satisfies(s -> assertThat(s.status()).contains("Cleo.wav"));
    assertThat(students.resolve("Neckway/table.csv")).exists();
  }

  @Test
  void aSlipIsHeardOverruledRemarkedAndWrittenByKeyboard() {
    try (FxWindow window = opened(1280, 800, 100)) {
      on(
          () -> {
            desk.open(students);
            return null;
          });
      window.settle();
      on(
          () -> {
            window.scene().getRoot().lookup(".table-view").requestFocus();
            return null;
          });
      window.press(KeyCode.SPACE);
      assertThat(sounded).hasValue(1);
      assertThat(model.moment().get().orElseThrow().words()).contains("wrong");
      window.press(KeyCode.X);
      window.press(KeyCode.T);
      TextField field = on(() -> (TextField) window.scene().getRoot().lookup(".text-field"));
      on(
          () -> {
            field.setText("Listen to this one");
            return null;
          });
      window.press(KeyCode.ENTER);
      window.save(Path.of("target/students.png"));
      window.press(KeyCode.R);
    }
    Path into = students.resolve("Neckway");
    var json = JsonFile.read(into.resolve("Ben.remarks.json"));
    assertThat(json.path("format").asText()).isEqualTo("neckway-remarks/1");
    assertThat(json.path("verdicts").path(0).path("verdict").asText()).isEqualTo("right");
    assertThat(json.path("moments").path(0).path("text").asText()).isEqualTo("Listen to this one");
    assertThat(into.resolve("Ben.html")).content().contains("Listen to this one", "Your teacher");
    assertThat(into.resolve("Ada.html")).exists();
    assertThat(said).last().asString().contains("2 reports");
  }

  /** What was said of a take is there again, and its review is as it was. */
  @Test
  void openedAgainNothingIsReadAnewAndTheRemarksAreThere() throws Exception {
    model.open(students);
    model.playNext();
    model.agree();
    model.go(1);
    model.remark("Well steady");
    byte[] review = Files.readAllBytes(students.resolve("Neckway/Ben.review.json"));
    long written =
        Files.getLastModifiedTime(students.resolve("Neckway/Ben.review.json")).toMillis();
    model.open(students);
    assertThat(model.students().get().get(0).remarks().overruled()).hasSize(1);
    assertThat(model.students().get())
        .anySatisfy(s -> assertThat(s.remarks().overall()).contains("Well steady"));
    assertThat(Files.readAllBytes(students.resolve("Neckway/Ben.review.json"))).isEqualTo(review);
    assertThat(Files.getLastModifiedTime(students.resolve("Neckway/Ben.review.json")).toMillis())
        .isEqualTo(written);
  }

  @Test
  void jAndKGoThroughTheNamesAndWhatCannotBeJudgedSaysSo() {
    try (FxWindow window = opened(800, 560, 200)) {
      on(
          () -> {
            desk.open(students);
            return null;
          });
      window.settle();
      TableView<?> table = on(() -> (TableView<?>) window.scene().getRoot().lookup(".table-view"));
      on(
          () -> {
            table.requestFocus();
            return null;
          });
      window.save(Path.of("target/students-small.png"));
      window.press(KeyCode.J);
      assertThat(model.chosen().get()).isEqualTo(1);
      window.press(KeyCode.K);
      assertThat(model.chosen().get()).isZero();
      window.press(KeyCode.A);
      assertThat(said).last().asString().contains("Hear a moment first");
    }
  }

  private static PlayableDrill inC() {
    return Drills.of("C major", "dorian,phrygian", OptionalInt.empty(), List.of(), List.of(), 1);
  }

  private void drillFile(String name, PlayableDrill drill) {
    JsonFile.write(students.resolve(name), DrillFile.toJson(drill));
  }

  private Student student(String name) {
    return model.students().get().stream()
        .filter(s -> s.job().name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aListInTheFolderSaysWhoPlayedWhat() throws Exception {
    take("Dan.wav", inC(), List.of(), 3);
    drillFile("c.drill.json", inC());
    drillFile("usual.drill.json", DRILL);
    Files.writeString(
        students.resolve("list.csv"),
        "file,drill,name\nDan.wav,c.drill.json,Daniel\nAda.wav,c.drill.json,Ada\n"
            + "Ben.wav,usual.drill.json,Ben\n");
    model.open(students);
    assertThat(model.line().get()).contains("list.csv");
    assertThat(model.students().get()).hasSize(3);
    assertThat(student("Daniel").guess()).isEmpty();
    assertThat(student("Daniel").review().orElseThrow().summary().wrong()).isZero();
    assertThat(student("Daniel").drill()).isEqualTo(inC().title());
    assertThat(student("Ada").guess())
        .hasValueSatisfying(d -> assertThat(d).startsWith(DRILL.title()));
  }

  @Test
  void severalDrillFilesInTheFolderAreToldApartAndEachIsAGuess() {
    take("Dan.wav", inC(), List.of(), 3);
    drillFile("c.drill.json", inC());
    drillFile("usual.drill.json", DRILL);
    model.open(students);
    assertThat(model.line().get()).contains("drill files");
    assertThat(student("Dan").drill()).isEqualTo(inC().title() + " (a guess)");
    assertThat(student("Ada").drill()).isEqualTo(DRILL.title() + " (a guess)");
  }

  @Test
  void aGuitarInTheFolderIsUsedAndTold() throws Exception {
    model.open(students);
    assertThat(shifts("Ada")).containsOnly(ShiftVerdict.UNHEARD);
    guitar("E2", "A2", "D3", "G3", "B3", "E4");
    model.open(students);
    assertThat(model.line().get()).contains("class.guitar.json");
    assertThat(shifts("Ada")).containsOnly(ShiftVerdict.MADE);
    assertThat(said).isEmpty();
  }

  @Test
  void aGuitarThatIsTunedOtherwiseIsToldAndNotUsed() throws Exception {
    guitar("D2", "A2", "D3", "G3", "B3", "E4");
    model.open(students);
    assertThat(model.line().get()).doesNotContain("class.guitar.json");
    assertThat(said).singleElement().asString().contains("class.guitar.json");
    assertThat(student("Ada").review()).isPresent();
  }

  private List<ShiftVerdict> shifts(String name) {
    return student(name).review().orElseThrow().shifts().stream().map(s -> s.verdict()).toList();
  }

  /** The strings of the plain player's guitar. */
  private void guitar(String... open) throws Exception {
    List<String> strings = new ArrayList<>();
    List<Double> stiffness = PlayerSettings.plain().guitar().stiffness();
    for (int i = 0; i < open.length; i++) {
      strings.add(
          "{\"string\": %d, \"open\": \"%s\", \"stiffness\": %s, \"spread\": 0.02, \"spreadBy\":"
                  .formatted(open.length - i, open[i], stiffness.get(open.length - i - 1))
              + " \"frets\"}");
    }
    Files.writeString(
        students.resolve("class.guitar.json"),
        "{\"format\": \"neckway-guitar/1\", \"tuning\": [\"%s\"], \"strings\": [%s]}"
            .formatted(String.join("\",\"", open), String.join(",", strings)));
  }

  /** The line that says the most leaves room for as many names. */
  @Test
  void fourNamesAndMoreShowInTheSmallestWindowAtTheLargestText() throws Exception {
    for (int i = 0; i < 4; i++) {
      Files.writeString(students.resolve("Eva" + i + ".wav"), "this is no sound");
    }
    drillFile("c.drill.json", inC());
    drillFile("usual.drill.json", DRILL);
    guitar("E2", "A2", "D3", "G3", "B3", "E4");
    try (FxWindow window = opened(800, 560, 200)) {
      on(
          () -> {
            desk.open(students);
            return null;
          });
      window.settle();
      assertThat(model.line().get()).contains("drill files", "class.guitar.json");
      window.save(Path.of("target/students-smallest.png"));
      TableView<?> table = on(() -> (TableView<?>) window.scene().getRoot().lookup(".table-view"));
      double row = on(() -> ((Region) table.lookup(".table-row-cell")).getHeight());
      double head = on(() -> ((Region) table.lookup(".column-header-background")).getHeight());
      assertThat((on(table::getHeight) - head) / row).as("rows").isGreaterThan(4);
      assertThat(on(() -> List.copyOf(table.lookupAll(".scroll-bar"))))
          .map(ScrollBar.class::cast)
          .filteredOn(ScrollBar::isVisible)
          .extracting(ScrollBar::getOrientation)
          .containsExactly(Orientation.VERTICAL);
    }
  }

  @Test
  void aFolderWithNoRecordingIsOneLine() throws Exception {
    model.open(Files.createDirectory(folder.resolve("empty")));
    assertThat(model.line().get()).contains("there is no recording");
    assertThat(model.students().get()).isEmpty();
  }
}
