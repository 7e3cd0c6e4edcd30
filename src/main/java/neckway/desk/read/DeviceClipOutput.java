package neckway.desk.read;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import neckway.neck.BadInput;
import neckway.sound.Clip;
import neckway.sound.ClipPlayback;
import neckway.sound.Devices;

/** Plays through an output device of this machine. */
public final class DeviceClipOutput implements ClipOutput {
  private final Supplier<Optional<String>> output;
  private final AtomicReference<ClipPlayback> now = new AtomicReference<>();

  /**
   * @param output asked for the output's name each time; empty: the first
   */
  public DeviceClipOutput(Supplier<Optional<String>> output) {
    this.output = output;
  }

  @Override
  public void play(Clip clip, Ended ended) {
    stop();
    try {
      ClipPlayback next =
          new ClipPlayback(
              Devices.openOutput(output.get(), clip.sampleRate()), clip, () -> ended.ended(""));
      ClipPlayback before = now.getAndSet(next);
      if (before != null) {
        before.close();
      }
    } catch (BadInput e) {
      ended.ended(e.getMessage());
    }
  }

  @Override
  public void stop() {
    ClipPlayback playing = now.getAndSet(null);
    if (playing != null) {
      playing.close();
    }
  }

  @Override
  public long framesHeard() {
    ClipPlayback playing = now.get();
    return playing == null ? 0 : playing.framesHeard();
  }
}
