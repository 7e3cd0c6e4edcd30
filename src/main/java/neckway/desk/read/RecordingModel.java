package neckway.desk.read;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import neckway.desk.Texts;
import neckway.drill.PlayableDrill;
import neckway.file.sound.Channel;
import neckway.neck.BadInput;
import neckway.recording.Recording;
import neckway.recording.RecordingReviewer;
import neckway.recording.RecordingReviewer.Reviewed;
import neckway.string.GuitarProfile;

/**
 * A recording being reviewed like a run, with its progress; it can be cancelled. Once it is read,
 * it can be read again with another first beat or on another channel.
 */
public final class RecordingModel {
  private static final double SHOWN_STEP = 0.005;

  /** Seconds as they are written in the field, with a point or a comma. */
  private static final Pattern SECONDS = Pattern.compile("\\d{1,6}([.,]\\d{0,6})?");

  private final Executor work;
  private final Executor window;
  private final Consumer<ReadTake> reading;
  private final Consumer<String> say;
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper(this, "running", false);
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper(this, "progress", 0);
  private final ReadOnlyStringWrapper name = new ReadOnlyStringWrapper(this, "name", "");
  private final StringProperty firstBeat = new SimpleStringProperty(this, "firstBeat", "");
  private final ObjectProperty<Channel> channel =
      new SimpleObjectProperty<>(this, "channel", Channel.AUTO);
  private AtomicBoolean cancelled = new AtomicBoolean();

  /**
   * @param work runs what listens
   * @param window runs what changes this model
   * @param reading told the take that is reviewed
   * @param say told one line where that cannot be done
   */
  public RecordingModel(
      Executor work, Executor window, Consumer<ReadTake> reading, Consumer<String> say) {
    this.work = work;
    this.window = window;
    this.reading = reading;
    this.say = say;
  }

  /** Begins; one that is being reviewed already is cancelled. */
  public void start(Path file, PlayableDrill drill, Optional<GuitarProfile> guitar) {
    start(Recording.of(file, drill, guitar));
  }

  /**
   * Reads a recording again, with the first beat and on the channel that are written in the fields.
   * What cannot be is said in one line, and what was read stays.
   *
   * @param shown the take that is read; one that was played live stays as it is
   */
  public void again(ReadTake shown) {
    shown
        .recording()
        .ifPresent(
            recording -> {
              try {
                OptionalDouble first = firstBeatWithin(shown.review().take().seconds());
                start(recording.heardAs(first, channel.get()));
              } catch (BadInput e) {
                say.accept(e.getMessage());
              }
            });
  }

  private OptionalDouble firstBeatWithin(double takeSeconds) {
    String written = firstBeat.get().strip();
    if (written.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (!SECONDS.matcher(written).matches()) {
      throw new BadInput(Texts.of("again.noTime", written));
    }
    double seconds = Double.parseDouble(written.replace(',', '.'));
    if (seconds >= takeSeconds) {
      throw new BadInput(Texts.of("again.outside", written, Texts.plain(takeSeconds)));
    }
    return OptionalDouble.of(seconds);
  }

  private void start(Recording recording) {
    cancelled.set(true);
    AtomicBoolean mine = new AtomicBoolean();
    cancelled = mine;
    Path file = recording.file();
    name.set(file.getFileName() == null ? file.toString() : file.getFileName().toString());
    progress.set(0);
    running.set(true);
    work.execute(
        () -> {
          try {
            Optional<Reviewed> heard = review(recording, mine);
            window.execute(() -> done(mine, heard, recording));
          } catch (BadInput e) {
            window.execute(() -> failed(mine, e.getMessage()));
          } finally {
            window.execute(() -> ended(mine));
          }
        });
  }

  private Optional<Reviewed> review(Recording recording, AtomicBoolean stop) {
    double[] shown = new double[1];
    return RecordingReviewer.review(
        recording,
        (seconds, share) -> {
          if (share.orElse(0) > shown[0] + SHOWN_STEP) {
            shown[0] = share.getAsDouble();
            window.execute(() -> progressed(stop, share.getAsDouble()));
          }
        },
        stop::get);
  }

  private void progressed(AtomicBoolean of, double share) {
    if (of == cancelled) {
      progress.set(share);
    }
  }

  private void done(AtomicBoolean of, Optional<Reviewed> heard, Recording recording) {
    if (of == cancelled && heard.isPresent()) {
      Recording against = recording.heldAgainst(heard.get().drill());
      running.set(false);
      show(against);
      reading.accept(ReadTake.recorded(against, heard.get().review()));
      heard.get().warning().ifPresent(say);
    }
  }

  private void show(Recording recording) {
    OptionalDouble given = recording.firstBeat();
    firstBeat.set(given.isPresent() ? BigDecimal.valueOf(given.getAsDouble()).toPlainString() : "");
    channel.set(recording.channel());
  }

  private void failed(AtomicBoolean of, String why) {
    if (of == cancelled) {
      running.set(false);
      say.accept(why);
    }
  }

  /** Whatever became of it, a fault of the program included: nothing runs any more. */
  private void ended(AtomicBoolean of) {
    if (of == cancelled) {
      running.set(false);
    }
  }

  /** Gives up the one that is being reviewed; what was read before stays. */
  public void cancel() {
    if (running.get()) {
      cancelled.set(true);
      running.set(false);
      say.accept(Texts.of("read.cancelled", name.get()));
    }
  }

  /** When the first note is due in the recording that is read, seconds as text; empty: found. */
  public StringProperty firstBeat() {
    return firstBeat;
  }

  /** The channel of it that the guitar is on. */
  public ObjectProperty<Channel> channel() {
    return channel;
  }

  /** Whether a recording is being listened to. */
  public ReadOnlyBooleanProperty running() {
    return running.getReadOnlyProperty();
  }

  /** How much of it, 0 to 1; stays 0 where its length is not known. */
  public ReadOnlyDoubleProperty progress() {
    return progress.getReadOnlyProperty();
  }

  /** Its name. */
  public ReadOnlyStringProperty name() {
    return name.getReadOnlyProperty();
  }
}
