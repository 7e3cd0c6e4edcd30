package neckway.desk.read;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import neckway.neck.BadInput;
import neckway.sound.Devices;
import neckway.sound.SoundPlayer;

/** Plays through an output device of this machine. */
public final class DevicePlayer implements Player {
  private final Supplier<Optional<String>> output;
  private final AtomicReference<SoundPlayer> now = new AtomicReference<>();

  /**
   * @param output asked for the output's name each time; empty: the first
   */
  public DevicePlayer(Supplier<Optional<String>> output) {
    this.output = output;
  }

  @Override
  public void play(float[] sound, int sampleRate, boolean loop, Ended ended) {
    stop();
    try {
      SoundPlayer next =
          new SoundPlayer(
              Devices.openOutput(output.get(), sampleRate), sound, loop, () -> ended.ended(""));
      SoundPlayer before = now.getAndSet(next);
      if (before != null) {
        before.close();
      }
    } catch (BadInput e) {
      ended.ended(e.getMessage());
    }
  }

  @Override
  public void stop() {
    SoundPlayer playing = now.getAndSet(null);
    if (playing != null) {
      playing.close();
    }
  }
}
