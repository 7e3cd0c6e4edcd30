package neckway.desk.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.neck.BadInput;
import neckway.sound.RoundTrip;

/** Devices that come, go and sound as a test says. */
public final class FakeDevices implements SoundDevices {
  private static final int BLOCK = 512;

  final List<String> inputs = new ArrayList<>(List.of("Table interface", "Built-in microphone"));
  final List<String> outputs = new ArrayList<>(List.of("Table interface", "Headphones"));
  final List<Double> gains = new ArrayList<>();
  final List<String> opened = new ArrayList<>();
  boolean clicksAreHeard = true;
  Runnable whileMeasuring = () -> {};
  private Optional<Taker> taker = Optional.empty();

  private static String chosen(List<String> names, Optional<String> name) {
    return names.stream()
        .filter(each -> name.isEmpty() || each.equals(name.get()))
        .findFirst()
        .orElseThrow(() -> new BadInput("--device " + name.orElse("") + ": no such device"));
  }

  @Override
  public List<String> inputs() {
    return List.copyOf(inputs);
  }

  @Override
  public List<String> outputs() {
    return List.copyOf(outputs);
  }

  @Override
  public String inputName(Optional<String> name) {
    return chosen(inputs, name);
  }

  @Override
  public String outputName(Optional<String> name) {
    return chosen(outputs, name);
  }

  @Override
  public Listening listen(Optional<String> input, Taker to) {
    if (taker.isPresent()) {
      throw new IllegalStateException("the device is busy");
    }
    taker = Optional.of(to);
    try {
      opened.add(inputName(input));
      to.opened(48_000);
    } catch (BadInput e) {
      to.trouble(e.getMessage());
    }
    return then -> {
      taker = Optional.empty();
      then.run();
    };
  }

  @Override
  public RoundTrip measure(Optional<String> input, Optional<String> output, double gain) {
    if (taker.isPresent()) {
      throw new IllegalStateException("the device is busy");
    }
    gains.add(gain);
    whileMeasuring.run();
    if (!clicksAreHeard) {
      throw new BadInput("the input heard 3 of 16 clicks clearly; turn it up a little");
    }
    return new RoundTrip(0.0042, 0.0001, 15, 48_000);
  }

  boolean listens() {
    return taker.isPresent();
  }

  /** The device is pulled out. */
  void pullOut() {
    taker.get().trouble("the sound input is gone");
  }

  /** The listening has it back. */
  void plugIn() {
    taker.get().opened(48_000);
  }

  /** The input hears this. */
  public void sound(float[] samples, int from, int to) {
    float[] block = new float[BLOCK];
    for (int at = from; at < to; at += BLOCK) {
      int length = Math.min(BLOCK, to - at);
      System.arraycopy(samples, at, block, 0, length);
      taker.get().sound(block, length);
    }
  }

  /** The input hears a tone. */
  public void tone(double hz, double amplitude, double seconds) {
    float[] samples = new float[(int) (seconds * 48_000)];
    for (int i = 0; i < samples.length; i++) {
      samples[i] =
          (float) Math.max(-1, Math.min(1, amplitude * Math.sin(2 * Math.PI * hz * i / 48_000)));
    }
    sound(samples, 0, samples.length);
  }
}
