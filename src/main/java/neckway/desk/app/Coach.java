package neckway.desk.app;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.function.Function;
import javafx.application.Platform;
import neckway.desk.Desk;
import neckway.desk.DrillModel;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.Texts;
import neckway.desk.open.LogChoice;
import neckway.desk.play.DeviceCheck;
import neckway.desk.play.Engine;
import neckway.desk.play.GuestPlayer;
import neckway.desk.play.LostTakes;
import neckway.desk.play.PlayingModel;
import neckway.desk.play.PlayingScreen;
import neckway.desk.play.RunSettings;
import neckway.desk.play.SoundCheck;
import neckway.desk.read.ClipOutput;
import neckway.desk.read.DeviceClipOutput;
import neckway.desk.read.ReadTake;
import neckway.desk.read.ReadingActions;
import neckway.desk.read.ReadingModel;
import neckway.desk.read.ReadingScreen;
import neckway.desk.read.RecordingModel;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.Join;
import neckway.review.ReviewedShift;
import neckway.string.GuitarProfile;

/** Joins playing, reading and recordings to the desk: what comes after what. */
public final class Coach {
  /** From one tempo to the next slower one. */
  static final double SLOWER = 0.92;

  private final Desk desk;
  private final RunSettings settings;
  private final PlayingModel playing;
  private final ReadingModel reading;
  private final RecordingModel recording;

  /** On the devices of this machine. */
  public static Coach onDevices(Desk desk) {
    return onDevices(desk, LogChoice.USUAL);
  }

  /** The same, with runs kept where they are to be. */
  static Coach onDevices(Desk desk, LogChoice log) {
    RunSettings settings = new RunSettings(desk.settings(), log);
    Executor recording = thread("recording");
    Coach coach =
        new Coach(
            desk,
            settings,
            Engine.devices(),
            new DeviceCheck(),
            new DeviceClipOutput(settings::output),
            thread("reading"),
            recording,
            Platform::runLater);
    coach.playing.guest(
        new GuestPlayer(
            new DeviceClipOutput(settings::output), desk.volume()::gain, System::nanoTime));
    coach.rescue(recording, Platform::runLater);
    return coach;
  }

  static Executor thread(String name) {
    return Executors.newSingleThreadExecutor(
        task -> {
          Thread thread = new Thread(task, name);
          thread.setDaemon(true);
          return thread;
        });
  }

  /** On whatever is given, for tests. */
  public Coach(
      Desk desk,
      RunSettings settings,
      Engine engine,
      SoundCheck check,
      ClipOutput player,
      Executor readingWork,
      Executor recordingWork,
      Executor window) {
    this.desk = desk;
    this.settings = settings;
    playing =
        new PlayingModel(desk.drill(), settings, desk.click()::gain, engine, check, this::readRun);
    reading = new ReadingModel(player, desk.volume()::gain, readingWork, window);
    recording = new RecordingModel(recordingWork, window, this::read, desk::say);
    desk.onRecording(this::review);
  }

  /** Adds the views to those of the window. */
  public void offer(Map<Place, Function<Desk, Screen>> screens) {
    screens.put(Place.PLAYING, d -> new PlayingScreen(playing, d.look(), d.click()));
    screens.put(
        Place.READING,
        d -> new ReadingScreen(reading, recording, new Next(), d.look(), d.volume()));
  }

  /** A run that ended since something failed says so where its review is read. */
  private void readRun(List<ReadTake> rounds) {
    if (playing.guestPlayed()) {
      reading.open(rounds.get(rounds.size() - 1));
    } else {
      reading.openRun(rounds);
    }
    // who has gone elsewhere meanwhile is not fetched back, nor who plays again already
    if (desk.router().current().get() == Place.PLAYING && !playing.beginsNext()) {
      desk.router().go(Place.READING);
    }
    if (playing.guestPlayed()) {
      desk.say(Texts.of("play.guest.read"));
    }
    if (!playing.complaint().isEmpty()) {
      desk.say(playing.complaint());
    }
  }

  /**
   * Looks for takes of earlier versions and those that a crash left unfinished; says where they
   * are.
   */
  public void rescue(Executor work, Executor window) {
    Path folder = settings.takesFolder();
    Optional<Path> earlier = settings.earlierTakesFolder();
    work.execute(
        () -> {
          int moved = earlier.map(before -> LostTakes.moved(before, folder)).orElse(0);
          if (moved > 0) {
            window.execute(() -> desk.say(Texts.of("read.takes-moved", moved, folder)));
          }
          List<Path> rescued = LostTakes.rescue(folder, Instant.now());
          if (!rescued.isEmpty()) {
            Path last = rescued.get(rescued.size() - 1);
            window.execute(() -> desk.say(Texts.of("read.rescued", last)));
          }
        });
  }

  /** The window closes. */
  public void close() {
    playing.close();
  }

  private void read(ReadTake take) {
    reading.open(take);
    desk.router().go(Place.READING);
  }

  /**
   * Reviews a recording like a run of the drill that is chosen. What is no sound is said in one
   * line, and whatever is in front or runs stays.
   */
  public void review(Path file) {
    try {
      // one channel, so that no more than the header is read here
      TakeReader.open(file, Channel.LEFT).close();
    } catch (BadInput e) {
      desk.say(e.getMessage());
      return;
    }
    PlayableDrill drill = desk.drill().drill();
    Optional<GuitarProfile> guitar = Optional.empty();
    desk.router().go(Place.READING);
    try {
      guitar = settings.guitar(drill);
    } catch (BadInput e) {
      desk.say(e.getMessage());
    }
    recording.start(file, drill, guitar);
  }

  RunSettings settings() {
    return settings;
  }

  public PlayingModel playing() {
    return playing;
  }

  public ReadingModel reading() {
    return reading;
  }

  public RecordingModel recording() {
    return recording;
  }

  /** What the keys of the reading do. */
  private final class Next implements ReadingActions {
    @Override
    public void again() {
      playing.beginWhenShown();
      desk.router().go(Place.PLAYING);
    }

    @Override
    public void slower() {
      double tempo = desk.drill().drill().pulse().tempo();
      double slower = Math.max(Pulse.SLOWEST, Math.rint(tempo * SLOWER));
      if (slower < tempo) {
        at(slower, "read.slower.said");
      } else {
        desk.say(Texts.of("read.slowest"));
      }
    }

    @Override
    public void faster() {
      double tempo = desk.drill().drill().pulse().tempo();
      double faster = Math.min(Pulse.FASTEST, Math.rint(tempo / SLOWER));
      if (faster > tempo) {
        at(faster, "read.faster.said");
      } else {
        desk.say(Texts.of("read.fastest"));
      }
    }

    /** Plays at another tempo, which the drill keeps; said after the view has changed. */
    private void at(double tempo, String said) {
      double before = desk.drill().drill().pulse().tempo();
      desk.drill().tempo(tempo);
      again();
      desk.say(Texts.of(said, Texts.plain(tempo), Texts.plain(before)));
    }

    @Override
    public void anotherJoin() {
      List<ReviewedShift> shifts =
          reading.take().get().map(t -> t.review().shifts()).orElse(List.of());
      if (shifts.isEmpty()) {
        desk.say(Texts.of("read.oneJoin"));
        return;
      }
      ReviewedShift shift = shifts.get(reading.shift().orElse(0));
      if (anotherJoin(shift)) {
        desk.router().go(Place.PLAYING);
      } else {
        desk.say(Texts.of("read.oneJoin"));
      }
    }

    /** The next cleanest one, after the last the cleanest; whether that is another. */
    private boolean anotherJoin(ReviewedShift shift) {
      DrillModel drills = desk.drill();
      int pair = shift.planned().pair();
      if (pair >= drills.pairs().size()) {
        return false;
      }
      Direction direction = shift.planned().direction();
      Join before = drills.join(pair, direction);
      drills.joinBy(pair, direction, 1);
      if (drills.join(pair, direction).equals(before)) {
        drills.join(pair, direction, drills.pairs().get(pair).get(0));
      }
      return !drills.join(pair, direction).equals(before);
    }
  }
}
