package neckway.desk.read;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.desk.Texts;
import neckway.drill.PlayableDrill;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.neck.BadInput;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;
import neckway.string.GuitarProfile;

/** A recording being reviewed like a run, with its progress; it can be cancelled. */
public final class RecordingModel {
  private static final int BLOCK = 4096;
  private static final double SHOWN_STEP = 0.005;

  /** A review, and what is to be known of the file, such as that it was cut short. */
  private record Heard(Review review, Optional<String> warning) {}

  private final Executor work;
  private final Executor window;
  private final Consumer<ReadTake> reading;
  private final Consumer<String> say;
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper(this, "running", false);
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper(this, "progress", 0);
  private final ReadOnlyStringWrapper name = new ReadOnlyStringWrapper(this, "name", "");
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
    cancelled.set(true);
    AtomicBoolean mine = new AtomicBoolean();
    cancelled = mine;
    name.set(file.getFileName() == null ? file.toString() : file.getFileName().toString());
    progress.set(0);
    running.set(true);
    work.execute(
        () -> {
          try {
            Optional<Heard> heard = review(file, drill, guitar, mine);
            window.execute(() -> done(mine, heard, file, drill));
          } catch (BadInput e) {
            window.execute(() -> failed(mine, e.getMessage()));
          }
        });
  }

  private Optional<Heard> review(
      Path file, PlayableDrill drill, Optional<GuitarProfile> guitar, AtomicBoolean stop) {
    try (TakeReader reader = TakeReader.open(file, Channel.AUTO)) {
      Run run =
          new Run(
              drill,
              guitar,
              reader.sampleRate(),
              OptionalDouble.empty(),
              Clock.MEASURED,
              verdict -> {});
      double frames = reader.frames().orElse(0);
      double shown = 0;
      float[] block = new float[BLOCK];
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        if (stop.get()) {
          return Optional.empty();
        }
        run.feed(block, 0, got);
        double share = frames > 0 ? run.seconds() * reader.sampleRate() / frames : 0;
        if (share > shown + SHOWN_STEP) {
          shown = share;
          window.execute(() -> progressed(stop, share));
        }
      }
      return Optional.of(new Heard(run.finish(), reader.warning()));
    }
  }

  private void progressed(AtomicBoolean of, double share) {
    if (of == cancelled) {
      progress.set(Math.min(1, share));
    }
  }

  private void done(AtomicBoolean of, Optional<Heard> heard, Path file, PlayableDrill drill) {
    if (of == cancelled && heard.isPresent()) {
      running.set(false);
      Review review = heard.get().review();
      reading.accept(new ReadTake(drill, review, Optional.of(file), OptionalInt.empty()));
      heard.get().warning().ifPresent(say);
    }
  }

  private void failed(AtomicBoolean of, String why) {
    if (of == cancelled) {
      running.set(false);
      say.accept(why);
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
