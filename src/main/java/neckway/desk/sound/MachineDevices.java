package neckway.desk.sound;

import java.util.List;
import java.util.Optional;
import neckway.desk.Texts;
import neckway.sound.Devices;
import neckway.sound.InputWatch;
import neckway.sound.RoundTrip;

/** The devices of this machine. */
public final class MachineDevices implements SoundDevices {
  @Override
  public List<String> inputs() {
    return Devices.inputs();
  }

  @Override
  public List<String> outputs() {
    return Devices.outputs();
  }

  @Override
  public String inputName(Optional<String> name) {
    return Devices.inputName(name);
  }

  @Override
  public String outputName(Optional<String> name) {
    return Devices.outputName(name);
  }

  @Override
  public RoundTrip measure(Optional<String> input, Optional<String> output, double gain) {
    return RoundTrip.measure(input, output, gain);
  }

  @Override
  public Listening listen(Optional<String> input, Taker taker) {
    return InputWatch.start(input, new Told(taker), "sound room")::stop;
  }

  /** Tells the sound room in its own words. */
  private record Told(Taker taker) implements InputWatch.Taker {
    @Override
    public void opened(double sampleRate) {
      taker.opened(sampleRate);
    }

    @Override
    public void sound(float[] samples, int length) {
      taker.sound(samples, length);
    }

    @Override
    public void gone() {
      taker.trouble(Texts.of("check.gone"));
    }

    @Override
    public void refused(String why) {
      taker.trouble(why);
    }
  }
}
