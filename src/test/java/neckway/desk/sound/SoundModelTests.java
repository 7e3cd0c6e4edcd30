package neckway.desk.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import neckway.calibration.Calibration;
import neckway.desk.ClickModel;
import neckway.desk.Desk;
import neckway.desk.play.RunSettings;
import neckway.desk.sound.GuitarModel.Stage;
import neckway.file.GuitarFile;
import neckway.file.RoundTripFile;
import neckway.file.SettingsFile;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sound room without a screen, on devices that do as they are told. */
class SoundModelTests {
  private static final PlayerSettings PLAYER =
      PlayerSettings.plain().withSampleRate(48_000).withGuitar(Guitar.Model.ELECTRIC.plain());

  private static Performance played;

  @TempDir private Path folder;
  private final FakeDevices devices = new FakeDevices();
  private Desk desk;
  private RoundTripFile trips;
  private SoundModel room;

  @BeforeAll
  static void play() {
    played = new VirtualPlayer(PLAYER).calibration(Tuning.STANDARD, Calibration.USUAL_FRETS, 7);
  }

  @BeforeEach
  void enter() {
    trips = new RoundTripFile(folder.resolve("round-trip.json"));
    again();
  }

  private void again() {
    desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
    room = new SoundModel(desk, devices, trips, Runnable::run, Runnable::run);
    room.shown();
  }

  private ClickModel keptClick() {
    desk.keep();
    return new ClickModel(SettingsFile.at(folder.resolve("settings.json")));
  }

  private RunSettings kept() {
    desk.keep();
    return new RunSettings(SettingsFile.at(folder.resolve("settings.json")));
  }

  /** The first frame of a pluck, a little early. */
  private static int frame(int note) {
    return note == played.notes().size()
        ? played.samples().length
        : (int) played.notes().get(note).frame() - played.sampleRate() / 50;
  }

  private void plucks(int from, int to) {
    float[] cut = Arrays.copyOfRange(played.samples(), frame(from), frame(to));
    int early = played.sampleRate() / 50;
    for (int i = 0; i < early; i++) {
      // the note before must not begin here as if it were plucked
      cut[i] *= (float) Math.pow((double) i / early, 4);
    }
    devices.sound(new float[9_600], 0, 9_600);
    devices.sound(cut, 0, cut.length);
  }

  /** The plucks and a second and a half of silence, in which the last one is heard out. */
  private void allPlucks() {
    plucks(0, played.notes().size());
    devices.sound(new float[72_000], 0, 72_000);
  }

  @Test
  void whatIsChosenIsKeptForRuns() {
    room.input().set("Built-in microphone");
    room.output().set("Headphones");
    room.click().set(22);
    room.takeFolder(folder.resolve("my takes"));
    assertThat(kept().input()).contains("Built-in microphone");
    assertThat(kept().output()).contains("Headphones");
    assertThat(keptClick().gain()).isCloseTo(0.22, within(1e-9));
    assertThat(kept().takesFolder()).isEqualTo(folder.resolve("my takes"));
    assertThat(devices.opened).containsExactly("Table interface", "Built-in microphone");
  }

  @Test
  void eachOutputHasItsOwnClick() {
    room.output().set("Headphones");
    room.click().set(8);
    room.output().set("Table interface");
    room.click().set(30);
    room.output().set("Headphones");
    assertThat(room.click().get()).isEqualTo(8);
    assertThat(keptClick().gain()).isCloseTo(0.08, within(1e-9));
  }

  @Test
  void devicesThatComeAndGoAreNoticedAndTheChoiceStays() {
    room.input().set("Built-in microphone");
    devices.inputs.remove("Built-in microphone");
    devices.inputs.add("Pocket interface");
    room.refresh();
    assertThat(room.inputs())
        .containsExactlyInAnyOrder(
            "", "Table interface", "Built-in microphone", "Pocket interface");
    assertThat(room.input().get()).isEqualTo("Built-in microphone");
    devices.pullOut();
    assertThat(room.inputTrouble().get()).startsWith("Built-in microphone is not here");
    assertThat(room.line().get()).startsWith("Nothing comes in");
    devices.inputs.add("Built-in microphone");
    room.refresh();
    devices.plugIn();
    devices.tone(196, 0.3, 0.5);
    assertThat(room.line().get()).startsWith("Good");
    assertThat(room.inputTrouble().get()).isEmpty();
  }

  @Test
  void outputThatIsAwayIsSaidAtTheOutput() {
    room.output().set("Headphones");
    devices.outputs.remove("Headphones");
    room.refresh();
    assertThat(room.outputTrouble().get()).startsWith("Headphones is not here");
    room.output().set("Table interface");
    assertThat(room.outputTrouble().get()).isEmpty();
  }

  @Test
  void deviceThatIsTakenByItselfIsNamedInPlainWords() {
    assertThat(room.firstInput().get()).isEqualTo("Table interface");
    assertThat(SoundWords.choice("", room.firstInput().get()))
        .isEqualTo("Automatic: Table interface");
    // the name that the JDK gives ALSA's default device on Linux
    assertThat(SoundWords.choice("default [default]", "")).isEqualTo("as set in the system");
    assertThat(SoundWords.choice("", "default [default]"))
        .isEqualTo("Automatic: as set in the system");
  }

  @Test
  void whileTheRoundTripIsMeasuredItSaysSoAndNotThatAllIsSilent() {
    devices.tone(196, 0, 0.5);
    List<String> lines = new ArrayList<>();
    List<String> tuner = new ArrayList<>();
    devices.whileMeasuring =
        () -> {
          lines.add(room.line().get());
          tuner.add(room.tunerWords());
        };
    room.trip().measure();
    assertThat(lines).singleElement().asString().startsWith("Measuring the round trip");
    assertThat(tuner).singleElement().asString().contains("listens again");
    devices.tone(196, 0, 0.5);
    assertThat(room.line().get()).startsWith("Silent");
  }

  @Test
  void anotherOutputHasItsOwnVolume() {
    desk.volume().share().set(0.6);
    room.output().set("Headphones");
    assertThat(desk.volume().gain()).as("quiet on an output never set").isEqualTo(0.2);
    room.output().set("");
    assertThat(desk.volume().gain()).isEqualTo(0.6);
  }

  @Test
  void nameThatWillNotDoIsSaidAtTheName() {
    room.guitar().begin();
    allPlucks();
    room.guitar().name().set("???");
    room.guitar().save();
    assertThat(room.guitar().saveTrouble().get()).contains("name");
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.LEARNT);
    room.guitar().name().set("Blue");
    assertThat(room.guitar().saveTrouble().get()).isEmpty();
  }

  @Test
  void noDeviceAtAllIsSaidInOneLine() {
    room.hidden();
    devices.inputs.clear();
    devices.outputs.clear();
    again();
    assertThat(room.inputs()).containsExactly("");
    assertThat(room.line().get()).startsWith("Nothing comes in");
    assertThat(room.inputTrouble().get()).isNotEmpty().doesNotContain("\n");
    assertThat(SoundWords.choice("", room.firstInput().get())).contains("none found");
    assertThat(room.trip().known().get()).contains("once there is");
  }

  @Test
  void silentQuietGoodAndClippingAreToldApart() {
    devices.tone(196, 0, 0.5);
    assertThat(room.line().get()).startsWith("Silent");
    devices.tone(196, 0.005, 0.5);
    // 20 log10(0.005) = -46.02
    assertThat(room.line().get()).startsWith("Too quiet").contains("−46 dB");
    devices.tone(196, 0.5, 0.5);
    // 20 log10(0.5) = -6.02
    assertThat(room.line().get()).startsWith("Good").contains("−6 dB");
    assertThat(room.meter().get()).isCloseTo(0.5, within(0.02));
    devices.tone(196, 1.5, 0.5);
    assertThat(room.line().get()).contains("clips");
  }

  @Test
  void tunerNamesNoteStringAndCents() {
    // equal temperament, A4 = 440 Hz (ISO 16): A2 is 110 Hz, here 12 cents flat
    devices.tone(110 * Math.pow(2, -12 / 1200.0), 0.3, 1.5);
    assertThat(SoundWords.note(room.tone().get())).isEqualTo("A2");
    assertThat(room.tunerWords()).contains("−12 cents", "string 5 (A2)", "tighten");
    devices.tone(110, 0.3, 1.5);
    assertThat(room.tunerWords()).contains("in tune");
  }

  @Test
  void roundTripIsMeasuredQuietlyAndKeptForThePair() {
    assertThat(room.trip().known().get()).startsWith("Not measured yet");
    devices.clicksAreHeard = false;
    room.trip().measure();
    assertThat(room.trip().result().get()).contains("3 of 16");
    devices.clicksAreHeard = true;
    room.trip().measure();
    assertThat(devices.gains).containsExactly(0.05, 0.10);
    assertThat(room.trip().result().get()).contains("15 clicks", "4.2 ms", "0.1 ms");
    assertThat(trips.find("Table interface", "Table interface", 48_000).get().extraMs())
        .isCloseTo(4.2, within(1e-9));
    assertThat(devices.listens()).isTrue();
    room.output().set("Headphones");
    assertThat(room.trip().known().get()).startsWith("Not measured yet");
    room.output().set("Table interface");
    assertThat(room.trip().known().get()).contains("4.2 ms");
  }

  @Test
  void devicesThatTheSystemChoosesAreNotNamedTwice() {
    devices.inputs.add(0, "default [default]");
    devices.outputs.add(0, "default [default]");
    room.hidden();
    again();
    assertThat(room.trip().known().get())
        .startsWith("Not measured yet for the devices that the system chooses.");
  }

  @Test
  void givesTheInputBackWhenItIsNotInFront() {
    assertThat(devices.listens()).isTrue();
    room.hidden();
    assertThat(devices.listens()).isFalse();
    room.input().set("Built-in microphone");
    assertThat(devices.listens()).isFalse();
  }

  @Test
  void guidedPlucksTeachTheGuitarAndRunsUseIt() {
    room.guitar().begin();
    assertThat(room.guitar().next().get()).isEqualTo("String 6, open (E2)");
    plucks(0, 1);
    devices.sound(new float[9_600], 0, 9_600);
    assertThat(room.guitar().said().get()).contains("E2", "right");
    assertThat(room.guitar().next().get()).isEqualTo("String 6, fret 3 (G2)");
    plucks(1, played.notes().size());
    devices.sound(new float[72_000], 0, 72_000);
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.LEARNT);
    assertThat(room.guitar().findings()).isNotEmpty();
    room.guitar().name().set("Red one");
    room.guitar().save();
    Path file = folder.resolve("guitars").resolve("Red one.json");
    // held against the stiffness with which the virtual guitar sounds
    GuitarProfile profile = GuitarFile.read(file, Tuning.STANDARD);
    for (StringProfile string : profile.strings()) {
      double truth = PLAYER.guitar().stiffness().get(string.string().number() - 1);
      assertThat(Math.exp(string.lnStiffness()) / truth)
          .as("string " + string.string())
          .isCloseTo(1, within(string.string().number() == 1 ? 0.3 : 0.15));
    }
    assertThat(kept().guitar(desk.drill().drill())).isPresent();
    assertThat(room.guitar().profile().get()).contains("6 strings", "24 plucks");
  }

  @Test
  void wrongPluckIsSaidAtOnceAndMadeAgain() {
    room.guitar().begin();
    // fret 7 in place of the open string
    plucks(2, 3);
    devices.sound(new float[24_000], 0, 24_000);
    assertThat(room.guitar().said().get()).contains("B2").contains("again");
    assertThat(room.guitar().next().get()).isEqualTo("String 6, open (E2)");
    allPlucks();
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.LEARNT);
  }

  @Test
  void lastPluckCanBeTakenBack() {
    room.guitar().begin();
    plucks(0, 2);
    devices.sound(new float[24_000], 0, 24_000);
    assertThat(room.guitar().next().get()).isEqualTo("String 6, fret 7 (B2)");
    room.guitar().back();
    devices.sound(new float[4_800], 0, 4_800);
    assertThat(room.guitar().next().get()).isEqualTo("String 6, fret 3 (G2)");
    plucks(1, played.notes().size());
    devices.sound(new float[72_000], 0, 72_000);
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.LEARNT);
  }

  @Test
  void deviceThatGoesAndComesBackCostsNoPluck() {
    room.guitar().begin();
    plucks(0, 9);
    devices.sound(new float[24_000], 0, 24_000);
    String before = room.guitar().next().get();
    devices.pullOut();
    devices.plugIn();
    devices.sound(new float[4_800], 0, 4_800);
    assertThat(room.guitar().next().get()).isEqualTo(before).isEqualTo("String 4, fret 3 (F3)");
    plucks(9, played.notes().size());
    devices.sound(new float[72_000], 0, 72_000);
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.LEARNT);
  }

  @Test
  void stringThatWasPassedOverIsRefusedAndCanBePluckedAfterwards() {
    room.guitar().begin();
    for (int place = 0; place < 4; place++) {
      room.guitar().skip();
    }
    devices.sound(new float[4_800], 0, 4_800);
    plucks(4, played.notes().size());
    devices.sound(new float[72_000], 0, 72_000);
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.REFUSED);
    assertThat(room.guitar().findings()).singleElement().asString().contains("string 6");
    room.guitar().again(new GuitarString(6));
    devices.sound(new float[4_800], 0, 4_800);
    assertThat(room.guitar().next().get()).isEqualTo("String 6, open (E2)");
    plucks(0, 4);
    devices.sound(new float[72_000], 0, 72_000);
    assertThat(room.guitar().stage().get()).isEqualTo(Stage.LEARNT);
  }

  @Test
  void existingProfileIsOpenedAndBadOneRefusedInOneLine() throws Exception {
    room.guitar().begin();
    allPlucks();
    Path elsewhere = folder.resolve("elsewhere").resolve("blue.json");
    room.guitar().save(elsewhere);
    room.guitar().inUse().set("");
    assertThat(kept().guitar(desk.drill().drill())).isEqualTo(Optional.empty());
    Path broken = folder.resolve("broken.json");
    Files.writeString(broken, "{\"format\": \"neckway-guitar/1\"");
    room.guitar().open(broken);
    assertThat(room.guitar().profileTrouble().get()).contains("broken.json").doesNotContain("\n");
    assertThat(room.guitar().inUse().get()).isEmpty();
    room.guitar().open(elsewhere);
    assertThat(room.guitar().known()).contains("", elsewhere.toString());
    assertThat(List.of(GuitarModel.shownName(room.guitar().inUse().get()))).containsExactly("blue");
    room.hidden();
    desk.keep();
    again();
    assertThat(room.guitar().inUse().get()).isEqualTo(elsewhere.toString());
  }
}
