package neckway.desk.play;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import neckway.band.Backing;
import neckway.band.ChordRow;
import neckway.band.Feel;
import neckway.desk.Texts;
import neckway.desk.read.ClipOutput;
import neckway.drill.PlayableDrill;
import neckway.file.SettingsFile;
import neckway.live.LiveBacking;
import neckway.neck.BadInput;

/**
 * Whether a backing is played in place of the click, which, and how loud; kept. Changed in the
 * window's thread.
 */
public final class BackingChoice {
  /** The row that is usual in the drill's key. */
  public static final String USUAL_ROW = "";

  /** It begins again after so many bars at least, so that what rings on has died away. */
  private static final int LEAST_BARS = 4;

  /** What is played. */
  enum Kind {
    /** Chords, bass and drums. */
    BAND,
    /** A recording of the player's own. */
    RECORDING;

    /** As it is kept. */
    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private static final double PERCENT = 100;
  private static final String KEPT_KIND = "backingKind";
  private static final String KEPT_ROW = "backingRow";
  private static final String KEPT_FEEL = "backingFeel";
  private static final String KEPT_PERCENT = "backingPercent";

  private final BooleanProperty plays = new SimpleBooleanProperty(this, "backingPlays", false);
  private final ObjectProperty<Kind> kind = new SimpleObjectProperty<>(this, KEPT_KIND, Kind.BAND);
  private final StringProperty row = new SimpleStringProperty(this, KEPT_ROW, USUAL_ROW);
  private final ObjectProperty<Feel> feel =
      new SimpleObjectProperty<>(this, KEPT_FEEL, Feel.STRAIGHT);
  private final DoubleProperty percent =
      new SimpleDoubleProperty(this, KEPT_PERCENT, PERCENT * LiveBacking.USUAL_GAIN);
  private final OwnRecording recording;
  private volatile double gain;

  /**
   * As it was kept; what is not known any more is as usual.
   *
   * @param output on which a recording is heard while its beat is tapped
   */
  BackingChoice(SettingsFile settings, ClipOutput output) {
    recording = new OwnRecording(settings, output, () -> gain);
    settings
        .text(KEPT_KIND)
        .flatMap(word -> Arrays.stream(Kind.values()).filter(k -> k.word().equals(word)).findAny())
        .ifPresent(kind::set);
    kind.addListener((o, old, now) -> settings.put(KEPT_KIND, now.word()));
    plays.set(settings.flag(plays.getName(), false));
    row.set(settings.text(KEPT_ROW).filter(rows()::contains).orElse(USUAL_ROW));
    settings
        .text(KEPT_FEEL)
        .flatMap(word -> Arrays.stream(Feel.values()).filter(f -> f.word().equals(word)).findAny())
        .ifPresent(feel::set);
    settings.number(KEPT_PERCENT, 0, PERCENT).ifPresent(percent::set);
    gain = percent.get() / PERCENT;
    plays.addListener((o, old, now) -> settings.put(plays.getName(), now));
    row.addListener((o, old, now) -> settings.put(KEPT_ROW, now));
    feel.addListener((o, old, now) -> settings.put(KEPT_FEEL, now.word()));
    percent.addListener(
        (o, old, now) -> {
          gain = now.doubleValue() / PERCENT;
          settings.put(KEPT_PERCENT, now.doubleValue());
        });
  }

  /** The rows that can be chosen, the usual one first. */
  static List<String> rows() {
    List<String> rows = new ArrayList<>(List.of(USUAL_ROW));
    rows.addAll(List.of(ChordRow.names().split(", ")));
    return rows;
  }

  /** Whether a backing is played. */
  public BooleanProperty plays() {
    return plays;
  }

  /** What is played. */
  ObjectProperty<Kind> kind() {
    return kind;
  }

  /** The player's own recording. */
  OwnRecording recording() {
    return recording;
  }

  /** Takes a recording as what is played. */
  public void play(Path file) {
    kind.set(Kind.RECORDING);
    recording.choose(file);
  }

  /** One of {@link #rows}. */
  StringProperty row() {
    return row;
  }

  /** How it moves within a beat. */
  ObjectProperty<Feel> feel() {
    return feel;
  }

  /** How loud it is, percent. */
  DoubleProperty percent() {
    return percent;
  }

  private ChordRow chords(PlayableDrill drill) {
    return row.get().equals(USUAL_ROW)
        ? ChordRow.usual(drill.key())
        : ChordRow.parse(row.get(), drill.key());
  }

  /**
   * The drill as it can be played to this.
   *
   * @throws BadInput in one line where it cannot
   */
  PlayableDrill inTempo(PlayableDrill drill) {
    return switch (kind.get()) {
      case BAND -> drill;
      case RECORDING -> recording.inTempo(drill);
    };
  }

  /**
   * What plays, in one line.
   *
   * @param asked the drill as it was chosen
   * @param played as {@link #inTempo} gave it
   */
  String said(PlayableDrill asked, PlayableDrill played) {
    return switch (kind.get()) {
      case BAND -> bandSaid(played);
      case RECORDING -> recording.said(asked, played);
    };
  }

  private String bandSaid(PlayableDrill drill) {
    return Texts.of("play.backing.sounds", chords(drill).sheet(drill.key()), feel.get().word());
  }

  /**
   * Makes what is chosen, in a thread of its own, since that takes a second or two a minute of it.
   *
   * @param drill as {@link #inTempo} gave it
   * @param ready told it, in that thread
   * @param refused told why it cannot be made, in that thread
   */
  void make(PlayableDrill drill, Consumer<LiveBacking> ready, Consumer<String> refused) {
    Supplier<LiveBacking> maker = maker(drill);
    Thread thread =
        new Thread(
            () -> {
              LiveBacking made;
              try {
                made = maker.get();
              } catch (BadInput e) {
                refused.accept(e.getMessage());
                return;
              }
              ready.accept(made);
            },
            "backing");
    thread.setDaemon(true);
    thread.start();
  }

  private Supplier<LiveBacking> maker(PlayableDrill drill) {
    return switch (kind.get()) {
      case BAND -> {
        ChordRow chords = chords(drill);
        Feel asked = feel.get();
        yield () -> made(chords, asked, drill);
      }
      case RECORDING -> {
        OwnRecording.Wanted wanted = recording.wanted(drill);
        yield () -> recording.made(wanted);
      }
    };
  }

  private LiveBacking made(ChordRow chords, Feel asked, PlayableDrill drill) {
    int length = chords.bars().size();
    int bars = (LEAST_BARS + length - 1) / length * length;
    Backing backing = Backing.goingRound(chords, asked, drill.pulse(), bars);
    return new LiveBacking(
        backing.samples(),
        backing.sampleRate(),
        0,
        OptionalDouble.of((double) bars * drill.pulse().beatsPerBar()),
        () -> gain,
        LiveBacking.Clicks.COUNT_IN);
  }
}
