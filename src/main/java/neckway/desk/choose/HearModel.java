package neckway.desk.choose;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import neckway.desk.RouteSound;
import neckway.desk.Texts;
import neckway.drill.PlayableDrill;
import neckway.neck.BadInput;
import neckway.neck.Place;
import neckway.sound.Clip;
import neckway.sound.PlayedSound;

/**
 * "Hear it": renders a route and plays it, in a thread of its own, until it is over or stopped.
 * Everything is told through the window's own thread.
 */
public final class HearModel {
  private static final long LOOK_MILLIS = 15;
  private static final int SAMPLE_RATE = 44_100;

  /** What goes on. */
  public enum State {
    SILENT,
    RENDERING,
    PLAYING
  }

  /** Where the sound goes. */
  @FunctionalInterface
  public interface Outlet {
    /**
     * Begins to play.
     *
     * @throws BadInput where there is no device
     */
    Playing play(PlayedSound sound, int sampleRate);
  }

  /** A sound that plays. */
  public interface Playing extends AutoCloseable {
    /** How many frames have been heard, about. */
    long framesHeard();

    /** Whether the device is gone. */
    boolean gone();

    @Override
    void close();
  }

  private final Outlet outlet;
  private final Executor window;
  private final Consumer<String> say;
  private final ReadOnlyObjectWrapper<State> state =
      new ReadOnlyObjectWrapper<>(this, "state", State.SILENT);
  private final ReadOnlyObjectWrapper<Optional<Place>> place =
      new ReadOnlyObjectWrapper<>(this, "place", Optional.empty());
  private volatile Job job;
  private volatile double gain;

  /**
   * @param window runs things in the window's thread
   * @param say where a line for the player goes
   */
  HearModel(Outlet outlet, Executor window, Consumer<String> say) {
    this.outlet = outlet;
    this.window = window;
    this.say = say;
  }

  /** What goes on. */
  public ReadOnlyObjectProperty<State> state() {
    return state.getReadOnlyProperty();
  }

  /** The place that sounds. */
  public ReadOnlyObjectProperty<Optional<Place>> place() {
    return place.getReadOnlyProperty();
  }

  /** How loud, 0 to 1; also while it plays. */
  public void gain(double share) {
    gain = share;
  }

  /** Plays a drill once through, or stops what plays. */
  public void toggle(PlayableDrill drill) {
    if (state.get() == State.SILENT) {
      start(() -> RouteSound.of(drill.once().route(), drill.pulse(), SAMPLE_RATE));
    } else {
      stop();
    }
  }

  private void start(java.util.function.Supplier<RouteSound> rendering) {
    Job mine = new Job(rendering);
    job = mine;
    state.set(State.RENDERING);
    Thread thread = new Thread(mine, "hear it");
    thread.setDaemon(true);
    thread.start();
  }

  /** Stops what plays. */
  public void stop() {
    job = null;
    state.set(State.SILENT);
    place.set(Optional.empty());
  }

  private final class Job implements Runnable {
    private final java.util.function.Supplier<RouteSound> rendering;

    Job(java.util.function.Supplier<RouteSound> rendering) {
      this.rendering = rendering;
    }

    @Override
    public void run() {
      try {
        RouteSound sound = rendering.get();
        if (wanted()) {
          tell(() -> state.set(State.PLAYING));
          play(sound);
        }
      } catch (BadInput e) {
        tell(() -> say.accept(e.getMessage()));
      } finally {
        tell(HearModel.this::stop);
      }
    }

    private void play(RouteSound sound) {
      IntFunction<Optional<Place>> places = step -> placeOf(sound, step);
      int shown = Integer.MIN_VALUE;
      Clip clip = Clip.ofLevelled(sound.samples(), sound.sampleRate(), false, () -> gain);
      try (Playing playing = outlet.play(clip, clip.sampleRate())) {
        while (wanted() && playing.framesHeard() < clip.frames()) {
          if (playing.gone()) {
            throw new BadInput(Texts.of("problem.output-gone"));
          }
          int step = sound.stepAt(playing.framesHeard());
          if (step != shown) {
            shown = step;
            tell(() -> place.set(places.apply(step)));
          }
          Thread.sleep(LOOK_MILLIS);
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }

    private Optional<Place> placeOf(RouteSound sound, int step) {
      boolean inside = step >= 0 && step < sound.route().steps().size();
      return inside ? Optional.of(sound.route().steps().get(step).place()) : Optional.empty();
    }

    private boolean wanted() {
      return job == this;
    }

    private void tell(Runnable what) {
      window.execute(
          () -> {
            if (wanted()) {
              what.run();
            }
          });
    }
  }
}
