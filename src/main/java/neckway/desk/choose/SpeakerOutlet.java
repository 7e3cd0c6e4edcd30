package neckway.desk.choose;

import java.util.Optional;
import java.util.function.Supplier;
import neckway.sound.Devices;
import neckway.sound.Playback;
import neckway.sound.PlayedSound;

/** The chosen output of this machine. */
final class SpeakerOutlet implements HearModel.Outlet {
  private final Supplier<Optional<String>> output;

  /**
   * @param output name of the output, asked for each time; empty: the first
   */
  SpeakerOutlet(Supplier<Optional<String>> output) {
    this.output = output;
  }

  @Override
  public HearModel.Playing play(PlayedSound sound, int sampleRate) {
    Playback playback = new Playback(Devices.openOutput(output.get(), sampleRate), sound);
    playback.start();
    return new HearModel.Playing() {
      @Override
      public long framesHeard() {
        return Math.max(0, playback.framesWritten() - playback.bufferFrames());
      }

      @Override
      public boolean gone() {
        return playback.gone();
      }

      @Override
      public void close() {
        playback.close();
      }
    };
  }
}
