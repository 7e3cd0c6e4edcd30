package neckway.desk.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.css.PseudoClass;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.SaidCheck;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.Texts;
import neckway.desk.play.LostTakes;
import neckway.desk.play.PlayingModel.State;
import neckway.desk.play.RunSettings;
import neckway.desk.read.ClipOutput;
import neckway.desk.read.ReadingModel.Hearing;
import neckway.drill.PlayableDrill;
import neckway.file.SettingsFile;
import neckway.file.sound.WavWriter;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.neck.Direction;
import neckway.neck.Join;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import neckway.review.Review;
import neckway.run.Reviewed;
import neckway.sound.ClickClock;
import neckway.sound.Clip;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From run to reading and back, by keys alone, in a window without a screen. */
class CoachTests {
  @TempDir Path folder;

  private final List<LiveSetup> begun = new ArrayList<>();
  private final List<Integer> sounds = new ArrayList<>();
  private LiveRunListener live;
  private Desk desk;
  private Coach coach;
  private FxWindow window;

  private final class Counted implements ClipOutput {
    @Override
    public void play(Clip clip, Ended ended) {
      sounds.add(clip.frames());
    }

    @Override
    public long framesHeard() {
      return 0;
    }

    @Override
    public void stop() {
      // nothing plays
    }
  }

  @BeforeEach
  void open() {
    window =
        FxWindow.open(
            () -> {
              desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
              coach =
                  new Coach(
                      desk,
                      new RunSettings(desk.settings()),
                      (setup, listener) -> {
                        begun.add(setup);
                        live = listener;
                        return () -> {};
                      },
                      new SaidCheck(0, ""),
                      new Counted(),
                      Runnable::run,
                      Runnable::run,
                      Runnable::run);
              Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
              screens.putAll(DeskApp.screens());
              coach.offer(screens);
              return new DeskFrame(desk, screens).scene(1280, 800);
            });
    FxWindow.on(
        () -> {
          desk.router().go(Place.PLAYING);
          return null;
        });
    window.settle();
  }

  @AfterEach
  void close() {
    window.close();
  }

  @Test
  void whatAGuestPlaysIsReadButIsNoRoundOfThePlayer(@TempDir Path guests) {
    try (WholeWindow all = new WholeWindow(guests, 1280, 800)) {
      all.go(Place.PLAYING);
      all.on(
          () -> {
            all.coach.playing().guest(all::begin);
            all.coach.playing().beginGuest();
            all.live.beat(all.desk.drill().drill().pulse().countIn());
            all.coach.playing().frame();
            return null;
          });
      Label hint = (Label) all.window.scene().getRoot().lookup(".hint");
      assertThat(all.on(hint::getText)).startsWith("Someone else is playing.");
      assertThat(all.isShown(".begin")).isTrue();
      assertThat(all.isShown(".why")).as("what cannot be chosen now").isFalse();
      all.round(0, List.of());
      all.over();
      assertThat(all.place()).isEqualTo(Place.READING);
      assertThat(all.coach.reading().take().get()).isPresent();
      assertThat(all.coach.reading().rounds().get()).isEmpty();
      all.go(Place.PLAYING);
      assertThat(all.isShown(".why")).isTrue();
    }
  }

  /** Plays a whole take to the run that was last begun. */
  private void play() {
    FxWindow.on(
        () -> {
          PlayableDrill drill = desk.drill().drill();
          Performance take =
              new VirtualPlayer(PlayerSettings.plain())
                  .play(drill.route(), drill.pulse(), List.of(), 2);
          Review review = Reviewed.of(drill, take);
          Path file = begun.get(begun.size() - 1).takes().orElseThrow().files().file(0);
          try (WavWriter writer = new WavWriter(file, take.sampleRate(), WavWriter.Coding.PCM_16)) {
            writer.write(take.samples(), 0, take.samples().length);
            writer.finish();
          }
          live.roundEnded(
              new LiveResult(
                  0,
                  review,
                  Optional.of(file),
                  Optional.of(ClickClock.Source.HEARD),
                  0,
                  0,
                  List.of()));
          live.over();
          coach.playing().frame();
          return null;
        });
    window.settle();
  }

  private Place place() {
    return desk.router().current().get();
  }

  @Test
  void pedalAloneBeginsReadsAndBeginsAgain() {
    window.press(KeyCode.PAGE_DOWN);
    assertThat(begun).hasSize(1);
    play();
    assertThat(place()).isEqualTo(Place.READING);
    window.press(KeyCode.PAGE_DOWN);
    assertThat(place()).isEqualTo(Place.PLAYING);
    assertThat(begun).hasSize(2);
    assertThat(coach.playing().state().get()).isEqualTo(State.OPENING);
  }

  @Test
  void spaceAndEnterDoTheSame() {
    window.press(KeyCode.SPACE);
    assertThat(begun).hasSize(1);
    play();
    window.press(KeyCode.ENTER);
    assertThat(begun).hasSize(2);
  }

  @Test
  void slowerIsOneKeyAndBeginsAtOnce() {
    window.press(KeyCode.SPACE);
    play();
    double before = desk.drill().drill().pulse().tempo();
    window.press(KeyCode.S);
    assertThat(begun).hasSize(2);
    // 80 * 0.92 = 73.6
    assertThat(begun.get(1).drill().pulse().tempo()).isEqualTo(74).isLessThan(before);
  }

  @Test
  void slowestStaysAndSaysSo() {
    FxWindow.on(() -> desk.drill().tempo(20));
    window.press(KeyCode.SPACE);
    play();
    window.press(KeyCode.S);
    assertThat(begun).hasSize(1);
    assertThat(desk.notice().get()).contains("as slow as it goes");
  }

  @Test
  void anotherJoinIsOneKeyAndWaitsForThePlayer() {
    window.press(KeyCode.SPACE);
    play();
    Join before = desk.drill().join(0, Direction.UP);
    window.press(KeyCode.J);
    assertThat(place()).isEqualTo(Place.PLAYING);
    assertThat(begun).hasSize(1);
    Direction changed =
        desk.drill().join(0, Direction.UP).equals(before) ? Direction.DOWN : Direction.UP;
    assertThat(desk.drill().join(0, changed)).isNotEqualTo(before);
    window.press(KeyCode.SPACE);
    assertThat(begun).hasSize(2);
  }

  @Test
  void notesAreHeardByArrowsAndKey() {
    window.press(KeyCode.SPACE);
    play();
    window.press(KeyCode.RIGHT);
    window.press(KeyCode.RIGHT);
    assertThat(coach.reading().page().get().selected()).contains(1);
    window.press(KeyCode.H);
    window.press(KeyCode.L);
    window.press(KeyCode.K);
    window.press(KeyCode.V);
    window.press(KeyCode.H);
    assertThat(sounds).hasSize(5);
    assertThat(sounds.get(3)).as("what sounds goes slower").isGreaterThan(sounds.get(2));
    assertThat(sounds.get(4)).isGreaterThan(sounds.get(0));
    window.press(KeyCode.ESCAPE);
    assertThat(coach.reading().hearing().get()).isEqualTo(Hearing.NOTHING);
  }

  private Button button(String words) {
    return FxWindow.on(
        () ->
            window.scene().getRoot().lookupAll(".keyed").stream()
                .map(Button.class::cast)
                .filter(b -> b.getText().startsWith(words))
                .findFirst()
                .orElseThrow());
  }

  private static boolean pressedIn(Button button) {
    return button.getPseudoClassStates().contains(PseudoClass.getPseudoClass("sounding"));
  }

  @Test
  void whatSoundsShowsInItsButtonAndIsStoppedByIt() {
    window.press(KeyCode.SPACE);
    play();
    for (String words : List.of("read.hear", "read.loop", "read.model")) {
      Button button = button(Texts.of(words));
      FxWindow.on(
          () -> {
            button.fire();
            assertThat(pressedIn(button)).isTrue();
            assertThat(button.getAccessibleText()).contains("press again to stop");
            button.fire();
            assertThat(pressedIn(button)).isFalse();
            return null;
          });
      assertThat(coach.reading().hearing().get()).isEqualTo(Hearing.NOTHING);
    }
    assertThat(sounds).hasSize(3);
  }

  @Test
  void volumeStandsWhereATakeIsReadAndTakesTheArrowKeys() {
    window.press(KeyCode.SPACE);
    play();
    Slider volume =
        (Slider) FxWindow.on(() -> window.scene().getRoot().lookup(".loudness .slider"));
    FxWindow.on(
        () -> {
          volume.requestFocus();
          return null;
        });
    window.press(KeyCode.RIGHT);
    assertThat(desk.volume().gain()).isGreaterThan(0.2);
    assertThat(coach.reading().page().get().selected()).isEmpty();
  }

  @Test
  void whyARunEndedStandsBesideItsReview() {
    window.press(KeyCode.SPACE);
    live.complaint("the sound input is gone");
    play();
    assertThat(place()).isEqualTo(Place.READING);
    assertThat(desk.notice().get()).isEqualTo("the sound input is gone");
  }

  @Test
  void playerWhoWentElsewhereIsNotFetchedBack() {
    window.press(KeyCode.SPACE);
    FxWindow.on(
        () -> {
          desk.router().go(Place.CHOOSING);
          return null;
        });
    play();
    assertThat(place()).isEqualTo(Place.CHOOSING);
    assertThat(coach.reading().take().get()).isPresent();
  }

  @Test
  void playerWhoBeginsAgainWhileARunEndsStaysAtTheNewOne() {
    window.press(KeyCode.SPACE);
    play();
    window.press(KeyCode.SPACE);
    assertThat(begun).hasSize(2);
    FxWindow.on(
        () -> {
          desk.router().go(Place.READING);
          return null;
        });
    window.settle();
    window.press(KeyCode.SPACE);
    assertThat(begun).as("the second run still ends").hasSize(2);
    play();
    assertThat(begun).hasSize(3);
    assertThat(place()).isEqualTo(Place.PLAYING);
    assertThat(coach.playing().state().get()).isEqualTo(State.OPENING);
  }

  @Test
  void recordingThatIsDroppedIsReadWithTheDrillChosen() {
    window.press(KeyCode.SPACE);
    play();
    Path take = begun.get(0).takes().orElseThrow().files().file(0);
    FxWindow.on(
        () -> {
          desk.router().go(Place.CHOOSING);
          desk.open(take);
          return null;
        });
    window.settle();
    assertThat(place()).isEqualTo(Place.READING);
    assertThat(coach.reading().take().get().orElseThrow().take()).contains(take);
    assertThat(coach.reading().sentences().get().get(0).text()).contains("25 notes were right");
  }

  /** A drill that is opened, with its route, as every view has it. */
  @Test
  void drillThatIsOpenedIsResolvedOnceAndHandedFromViewToView() throws IOException {
    Path kept =
        Files.writeString(
            folder.resolve("morning.json"),
            "{\"format\":\"neckway-drill/1\",\"key\":\"C major\","
                + "\"route\":{\"shapes\":[\"major\",\"dorian\"]}}");
    FxWindow.on(
        () -> {
          desk.open(kept);
          return null;
        });
    PlayableDrill opened = desk.drill().drill();
    assertThat(opened.key()).hasToString("C major");
    FxWindow.on(
        () -> {
          desk.router().go(Place.PLAYING);
          return null;
        });
    window.settle();
    assertThat(coach.playing().drill()).isSameAs(opened);
    assertThat(coach.playing().page().get().drill()).isSameAs(opened);
    window.press(KeyCode.SPACE);
    assertThat(begun.get(0).drill()).isSameAs(opened);
    play();
    assertRead(opened);
    Path take = begun.get(0).takes().orElseThrow().files().file(0);
    FxWindow.on(
        () -> {
          desk.open(take);
          return null;
        });
    window.settle();
    assertRead(opened);
    FxWindow.on(
        () -> {
          coach.recording().firstBeat().set("1");
          coach.recording().again(coach.reading().take().get().orElseThrow());
          return null;
        });
    assertThat(coach.reading().take().get().orElseThrow().review().grid().firstBeat()).isEqualTo(1);
    assertRead(opened);
  }

  private void assertRead(PlayableDrill opened) {
    assertThat(coach.reading().take().get().orElseThrow().drill()).isSameAs(opened);
    assertThat(coach.reading().page().get().drill()).isSameAs(opened);
    assertThat(coach.reading().page().get().drill().route()).isSameAs(opened.route());
  }

  @Test
  void recordingIsReadAgainByKeysAlone() {
    window.press(KeyCode.SPACE);
    play();
    assertThat(againLine().isVisible()).as("for a take that was played live").isFalse();
    openRecording();
    assertThat(againLine().isVisible()).isTrue();
    for (int tab = 0; tab < 60 && !(focus() instanceof TextField); tab++) {
      window.press(KeyCode.TAB);
    }
    assertThat(focus()).isInstanceOf(TextField.class);
    // S is a key of the view, and a letter in a field
    window.press(KeyCode.S);
    window.press(KeyCode.ENTER);
    assertThat(begun).as("no slower run").hasSize(1);
    assertThat(desk.notice().get()).contains("first beat s: give the seconds");
    window.press(KeyCode.BACK_SPACE);
    window.press(KeyCode.DIGIT2);
    window.press(KeyCode.ENTER);
    window.settle();
    assertThat(coach.reading().take().get().orElseThrow().review().grid().firstBeat()).isEqualTo(2);
    window.press(KeyCode.ESCAPE);
    assertThat(focus()).isNotInstanceOf(TextField.class);
    window.press(KeyCode.S);
    assertThat(begun).as("keys of the view again").hasSize(2);
  }

  @Test
  void lineToReadARecordingAgainIsNotCutOffUpTo300PerCent() {
    window.press(KeyCode.SPACE);
    play();
    openRecording();
    for (int percent : new int[] {100, 150, 200, 300}) {
      FxWindow.on(
          () -> {
            desk.look().text(percent);
            return null;
          });
      window.settle();
      assertThat(againLine().isVisible()).isTrue();
      assertNoWordsCutOff(percent);
    }
  }

  private void openRecording() {
    Path take = begun.get(0).takes().orElseThrow().files().file(0);
    FxWindow.on(
        () -> {
          desk.open(take);
          return null;
        });
    window.settle();
  }

  private Node againLine() {
    return FxWindow.on(() -> window.scene().getRoot().lookup(".again"));
  }

  private Node focus() {
    return FxWindow.on(() -> window.scene().getFocusOwner());
  }

  @Test
  void nothingOfARunIsCutOffUpTo300PerCent() {
    for (int percent : new int[] {100, 150, 200, 300}) {
      FxWindow.on(
          () -> {
            desk.look().text(percent);
            desk.router().go(Place.PLAYING);
            coach.playing().settings().guessFirst().set(true);
            return null;
          });
      window.press(KeyCode.PAGE_DOWN);
      FxWindow.on(
          () -> {
            live.roundBegins(0);
            live.beat(-2);
            coach.playing().frame();
            return null;
          });
      window.settle();
      assertInWindow(".count", percent);
      assertNoWordsCutOff(percent);
      play();
      assertThat(coach.playing().state().get()).isEqualTo(State.GUESSING);
      assertInWindow(".guess", percent);
      assertInWindow(".question .label", percent);
      assertNoWordsCutOff(percent);
      window.press(KeyCode.ENTER);
      assertThat(place()).isEqualTo(Place.READING);
      assertNoWordsCutOff(percent);
    }
  }

  private void assertInWindow(String style, int percent) {
    FxWindow.on(
        () -> {
          for (Node node : window.scene().getRoot().lookupAll(style)) {
            Bounds at = node.localToScene(node.getLayoutBounds());
            assertThat(at.getMinX()).as(percent + " %: " + node).isNotNegative();
            assertThat(at.getMinY()).as(percent + " %: " + node).isNotNegative();
            assertThat(at.getMaxX()).as(percent + " %: " + node).isLessThanOrEqualTo(1281);
            assertThat(at.getMaxY()).as(percent + " %: " + node).isLessThanOrEqualTo(801);
          }
          return null;
        });
  }

  /** Neither by dots at their end nor by the edge of what is scrolled. */
  private void assertNoWordsCutOff(int percent) {
    FxWindow.on(
        () -> {
          for (Node node :
              FxWindow.all(window.scene().getRoot(), ".label", ".button", ".check-box")) {
            if (node.lookup(".text") instanceof Text shown && node.isVisible()) {
              assertThat(shown.getText()).as(percent + " %: " + node).doesNotEndWith("...");
            }
          }
          for (Node node : window.scene().getRoot().lookupAll(".scroll-pane")) {
            ScrollPane scroll = (ScrollPane) node;
            assertThat(scroll.getContent().getLayoutBounds().getWidth())
                .as(percent + " %: " + node)
                .isLessThanOrEqualTo(scroll.getViewportBounds().getWidth() + 1);
          }
          return null;
        });
  }

  @Test
  void takesThatWereCutOffAreFoundAgainAndNoneIsOverwritten() throws IOException {
    Instant now = Instant.now();
    Files.writeString(folder.resolve("a 01 (cut off).wav"), "older");
    Path part = Files.writeString(folder.resolve("a 01.part.wav"), "lost");
    Path growing = Files.writeString(folder.resolve("b 01.part.wav"), "growing");
    Files.setLastModifiedTime(part, FileTime.from(now.minusSeconds(60)));
    Files.setLastModifiedTime(growing, FileTime.from(now.minusSeconds(1)));
    assertThat(LostTakes.rescue(folder, now))
        .containsExactly(folder.resolve("a 01 (cut off) 2.wav"));
    assertThat(folder.resolve("a 01 (cut off) 2.wav")).hasContent("lost");
    assertThat(folder.resolve("a 01 (cut off).wav")).hasContent("older");
    assertThat(growing).exists();
    assertThat(LostTakes.rescue(folder.resolve("nowhere"), now)).isEmpty();
  }
}
