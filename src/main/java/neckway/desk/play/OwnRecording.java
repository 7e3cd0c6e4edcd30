package neckway.desk.play;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.DoubleSupplier;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import neckway.band.BeatFinder;
import neckway.desk.Texts;
import neckway.desk.read.ClipOutput;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.SettingsFile;
import neckway.live.LiveBacking;
import neckway.neck.BadInput;
import neckway.sound.Clip;

/**
 * The player's own recording as a backing: its file, its tempo and its first beat, found, corrected
 * or tapped; kept. Read and searched in a thread of its own. All else happens in the window's
 * thread, which calls {@link #frame()} once a frame.
 */
public final class OwnRecording {
  /** How far a key moves the first beat, seconds. */
  static final double NUDGE_SECONDS = 0.01;

  /** The slowest that it is played, as a share of its own tempo. */
  static final double SLOWEST_SPEED = 0.25;

  /** The latest first beat that can be given, seconds. */
  static final double LATEST_FIRST_BEAT = 60.0 * LoadedRecording.MOST_MINUTES;

  /** A drill so little slower is played at the recording's own tempo, as a share of it. */
  private static final double AS_FAST = 0.99;

  private static final double UNKNOWN_TEMPO = 100;
  private static final String KEPT_FILE = "backingFile";
  private static final String KEPT_TEMPO = "backingTempo";
  private static final String KEPT_FIRST_BEAT = "backingFirstBeat";

  private final SettingsFile settings;
  private final ClipOutput output;
  private final DoubleSupplier gain;
  private final Queue<Runnable> events = new ConcurrentLinkedQueue<>();
  private final ReadOnlyObjectWrapper<Optional<Path>> file =
      new ReadOnlyObjectWrapper<>(this, KEPT_FILE, Optional.empty());
  private final DoubleProperty tempo = new SimpleDoubleProperty(this, KEPT_TEMPO, UNKNOWN_TEMPO);
  private final DoubleProperty firstBeat = new SimpleDoubleProperty(this, KEPT_FIRST_BEAT, 0);
  private final BooleanProperty beatKnown = new SimpleBooleanProperty(this, "beatKnown", false);
  private final ReadOnlyBooleanWrapper reading = new ReadOnlyBooleanWrapper(this, "reading", false);
  private final ReadOnlyBooleanWrapper sounds = new ReadOnlyBooleanWrapper(this, "sounds", false);
  private final ReadOnlyObjectWrapper<OptionalDouble> progress =
      new ReadOnlyObjectWrapper<>(this, "progress", OptionalDouble.empty());
  private final ReadOnlyStringWrapper line = new ReadOnlyStringWrapper(this, "line", "");
  private final Taps taps = new Taps();
  private volatile Optional<LoadedRecording> loaded = Optional.empty();
  private volatile OptionalDouble shareRead = OptionalDouble.empty();

  /** What reads now; whatever read before is heeded no more. */
  private Object reader = new Object();

  /** What sounds now; the end of whatever sounded before is no news. */
  private Object player = new Object();

  /**
   * @param output on which it is heard while its beat is tapped
   * @param gain how loud it is, 0 to 1; asked on the threads that play
   */
  OwnRecording(SettingsFile settings, ClipOutput output, DoubleSupplier gain) {
    this.settings = settings;
    this.output = output;
    this.gain = gain;
    file.set(settings.text(KEPT_FILE).filter(text -> !text.isBlank()).flatMap(OwnRecording::path));
    OptionalDouble keptTempo = settings.number(KEPT_TEMPO, Pulse.SLOWEST, Pulse.FASTEST);
    OptionalDouble keptFirst = settings.number(KEPT_FIRST_BEAT, 0, LATEST_FIRST_BEAT);
    if (file.get().isPresent() && keptTempo.isPresent() && keptFirst.isPresent()) {
      tempo.set(keptTempo.getAsDouble());
      firstBeat.set(keptFirst.getAsDouble());
      beatKnown.set(true);
    }
    tempo.addListener(o -> corrected());
    firstBeat.addListener(o -> corrected());
  }

  private static Optional<Path> path(String text) {
    try {
      return Optional.of(Path.of(text));
    } catch (InvalidPathException e) {
      // kept on another system
      return Optional.empty();
    }
  }

  private void corrected() {
    beatKnown.set(true);
    keep();
  }

  private void keep() {
    file.get().ifPresent(f -> settings.put(KEPT_FILE, f.toString()));
    settings.put(KEPT_TEMPO, tempo.get());
    settings.put(KEPT_FIRST_BEAT, firstBeat.get());
  }

  // ---- what the player does

  /**
   * Reads a recording and looks for its beat. Where that cannot be done one line says so, and what
   * was chosen before stays.
   */
  public void choose(Path chosen) {
    hush();
    Object mine = new Object();
    reader = mine;
    reading.set(true);
    shareRead = OptionalDouble.of(0);
    progress.set(shareRead);
    line.set(Texts.of("play.backing.file.reading", chosen.getFileName()));
    work(
        () -> {
          LoadedRecording read;
          Optional<BeatFinder.Found> found;
          try {
            read = LoadedRecording.read(chosen.toAbsolutePath(), share -> shareRead = share);
            found = read.beats().find(OptionalDouble.empty());
          } catch (BadInput e) {
            events.add(() -> refused(mine, e.getMessage()));
            return;
          }
          events.add(() -> taken(mine, read, found));
        });
  }

  private static void work(Runnable work) {
    Thread thread = new Thread(work, "own recording");
    thread.setDaemon(true);
    thread.start();
  }

  private void refused(Object by, String why) {
    if (by == reader) {
      reading.set(false);
      line.set(why);
    }
  }

  private void taken(Object by, LoadedRecording read, Optional<BeatFinder.Found> found) {
    if (by != reader) {
      return;
    }
    reading.set(false);
    loaded = Optional.of(read);
    file.set(Optional.of(read.file()));
    tempo.set(found.map(BeatFinder.Found::tempo).orElse(UNKNOWN_TEMPO));
    firstBeat.set(found.map(BeatFinder.Found::firstBeatSeconds).orElse(0.0));
    beatKnown.set(found.isPresent());
    keep();
    line.set(Texts.of(found.isPresent() ? "play.backing.file.found" : "play.backing.file.no-beat"));
  }

  /** Half the tempo, as far as it can be. */
  void half() {
    tempo.set(Math.max(Pulse.SLOWEST, tempo.get() / 2));
  }

  /** Twice the tempo, as far as it can be. */
  void twice() {
    tempo.set(Math.min(Pulse.FASTEST, 2 * tempo.get()));
  }

  /** Moves the first beat, later or earlier. */
  void nudge(double seconds) {
    firstBeat.set(Math.max(0, Math.min(LATEST_FIRST_BEAT, firstBeat.get() + seconds)));
  }

  /** Moves the first beat by whole beats, as far as there are any. */
  void nudgeBeats(int beats) {
    double to = firstBeat.get() + beats * beatSeconds();
    if (to >= 0 && to <= LATEST_FIRST_BEAT) {
      firstBeat.set(to);
    }
  }

  private double beatSeconds() {
    return 60 / tempo.get();
  }

  /**
   * A tap on the beat. The first one begins to play the recording; from then on four taps or more
   * are its tempo, and the last of them is a beat.
   */
  void tap() {
    if (file.get().isEmpty() || reading.get()) {
      return;
    }
    if (!sounds.get()) {
      hear();
      return;
    }
    if (loaded.isEmpty() || output.framesHeard() == 0) {
      return;
    }
    taps.tap(output.framesHeard() / (double) loaded.get().sampleRate());
    line.set(Texts.of("play.backing.file.taps", taps.count()));
    taps.tapped()
        .ifPresent(
            tapped -> {
              takeBeat(tapped.tempo(), tapped.beatSeconds());
              line.set(
                  Texts.of("play.backing.file.tapped", taps.count(), Texts.plain(tapped.tempo())));
            });
  }

  private void hear() {
    Path wanted = file.get().orElseThrow();
    Object mine = new Object();
    player = mine;
    taps.clear();
    sounds.set(true);
    line.set(Texts.of("play.backing.file.tap"));
    work(
        () -> {
          try {
            LoadedRecording read = load(wanted);
            Clip clip = Clip.ofLevelled(read.level(), read.sampleRate(), false, gain);
            events.add(() -> play(mine, clip));
          } catch (BadInput e) {
            events.add(() -> ended(mine, e.getMessage()));
          }
        });
  }

  private void play(Object by, Clip clip) {
    if (by == player && sounds.get()) {
      output.play(clip, complaint -> events.add(() -> ended(by, complaint)));
    }
  }

  private void ended(Object by, String complaint) {
    if (by != player || !sounds.get()) {
      return;
    }
    sounds.set(false);
    if (!complaint.isEmpty()) {
      line.set(complaint);
    }
    exact();
  }

  /** Ends what sounds; what was tapped is made exact by the sound. */
  void hush() {
    if (sounds.get()) {
      sounds.set(false);
      output.stop();
      exact();
    }
  }

  private void exact() {
    Optional<Taps.Tapped> tapped = taps.tapped();
    taps.clear();
    if (tapped.isEmpty() || loaded.isEmpty()) {
      return;
    }
    Taps.Tapped asked = tapped.get();
    LoadedRecording in = loaded.get();
    double before = tempo.get();
    work(
        () -> {
          Optional<BeatFinder.Found> near = in.beats().near(asked.tempo(), asked.beatSeconds());
          events.add(() -> near.ifPresent(found -> exact(before, found)));
        });
  }

  private void exact(double before, BeatFinder.Found found) {
    if (tempo.get() == before) {
      takeBeat(found.tempo(), found.firstBeatSeconds());
      line.set(Texts.of("play.backing.file.exact", Texts.fixed(found.tempo(), 2)));
    }
  }

  /** Takes a tempo; of its beats the one nearest to the first beat so far is the first. */
  private void takeBeat(double newTempo, double aBeatSeconds) {
    double beat = 60 / newTempo;
    double beats = Math.rint((firstBeat.get() - aBeatSeconds) / beat);
    double first = aBeatSeconds + beats * beat;
    tempo.set(newTempo);
    firstBeat.set(first < 0 ? first + beat : first);
  }

  /** Takes what came since the last frame. */
  void frame() {
    for (Runnable event = events.poll(); event != null; event = events.poll()) {
      event.run();
    }
    progress.set(shareRead);
  }

  // ---- what is played

  /**
   * The drill at the tempo at which it can be played to this: its own where the recording can be
   * slowed down to that, else the recording's.
   *
   * @throws BadInput where there is no recording, its beat is not known, or the drill is too slow
   */
  PlayableDrill inTempo(PlayableDrill drill) {
    if (file.get().isEmpty()) {
      throw new BadInput(Texts.of("play.backing.file.none"));
    }
    if (reading.get()) {
      throw new BadInput(Texts.of("play.backing.file.wait"));
    }
    if (!beatKnown.get()) {
      throw new BadInput(Texts.of("play.backing.file.beat", name()));
    }
    double asked = drill.pulse().tempo();
    double own = tempo.get();
    if (asked < SLOWEST_SPEED * own) {
      throw new BadInput(
          Texts.of(
              "play.backing.file.slow",
              name(),
              Texts.plain(own),
              Texts.plain(asked),
              Texts.plain(Math.ceil(SLOWEST_SPEED * own))));
    }
    return asked < AS_FAST * own
        ? drill
        : drill.drill().withPulse(drill.pulse().withTempo(own)).playable();
  }

  /**
   * What plays, in one line.
   *
   * @param asked the drill as it was chosen
   * @param played as {@link #inTempo} gave it
   */
  String said(PlayableDrill asked, PlayableDrill played) {
    double at = played.pulse().tempo();
    if (at < tempo.get()) {
      double percent = 100 * at / tempo.get();
      return Texts.of("play.backing.file.slower", name(), Texts.plain(at), Math.round(percent));
    }
    boolean moved = Math.abs(at - asked.pulse().tempo()) >= 0.05;
    return Texts.of(
        moved ? "play.backing.file.moved" : "play.backing.file.sounds",
        name(),
        Texts.plain(at),
        Texts.plain(asked.pulse().tempo()));
  }

  /** What is to be made, as it stands now. */
  record Wanted(Path file, double firstBeatSeconds, double speed) {}

  /**
   * What is wanted for a drill.
   *
   * @param played as {@link #inTempo} gave it
   */
  Wanted wanted(PlayableDrill played) {
    double speed = Math.min(1, played.pulse().tempo() / tempo.get());
    return new Wanted(file.get().orElseThrow(), firstBeat.get(), speed);
  }

  /**
   * Makes it; takes some seconds, and is for a thread of its own.
   *
   * @throws BadInput in one line where the recording cannot be used
   */
  LiveBacking made(Wanted wanted) {
    LoadedRecording read = load(wanted.file());
    if (wanted.firstBeatSeconds() >= read.seconds()) {
      throw new BadInput(
          Texts.of(
              "play.backing.file.beyond",
              wanted.file().getFileName(),
              Texts.fixed(wanted.firstBeatSeconds(), 2),
              Texts.fixed(read.seconds(), 2)));
    }
    return LiveBacking.once(
        read.level(),
        read.sampleRate(),
        wanted.firstBeatSeconds(),
        wanted.speed(),
        gain,
        LiveBacking.Clicks.COUNT_IN);
  }

  private LoadedRecording load(Path wanted) {
    Optional<LoadedRecording> there = loaded.filter(read -> read.isStill(wanted));
    LoadedRecording read =
        there.orElseGet(() -> LoadedRecording.read(wanted, share -> shareRead = share));
    loaded = Optional.of(read);
    return read;
  }

  // ---- what is shown

  /** The recording, if one is chosen. */
  ReadOnlyObjectProperty<Optional<Path>> file() {
    return file.getReadOnlyProperty();
  }

  /** Its name; empty where there is none. */
  String name() {
    return file.get().map(f -> f.getFileName().toString()).orElse("");
  }

  /** Beats a minute. */
  DoubleProperty tempo() {
    return tempo;
  }

  /** Where the first beat is, seconds from its beginning. */
  DoubleProperty firstBeat() {
    return firstBeat;
  }

  /** Whether a recording is being read. */
  ReadOnlyBooleanProperty reading() {
    return reading.getReadOnlyProperty();
  }

  /** The share of it that is read; empty where that is not known. */
  ReadOnlyObjectProperty<OptionalDouble> progress() {
    return progress.getReadOnlyProperty();
  }

  /** Whether it sounds to be tapped along with. */
  ReadOnlyBooleanProperty sounds() {
    return sounds.getReadOnlyProperty();
  }

  /** One line on what was found or what is amiss; empty for none. */
  ReadOnlyStringProperty line() {
    return line.getReadOnlyProperty();
  }
}
