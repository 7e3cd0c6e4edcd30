package neckway.desk.sound;

import java.util.List;
import java.util.Optional;
import neckway.sound.RoundTrip;

/** The sound devices as the sound room asks for them; each question may take a while. */
public interface SoundDevices {
  /** Takes what comes in, on the listening's own thread. */
  interface Taker {
    /** A device is open. */
    void opened(double sampleRate);

    /** Sound, mono, -1 to 1. */
    void sound(float[] samples, int length);

    /** Nothing comes in for now; one line that says why. */
    void trouble(String line);
  }

  /** A stretch of listening. */
  interface Listening {
    /** Ends it, without waiting; {@code then} follows, on any thread, once the device is free. */
    void stop(Runnable then);
  }

  /**
   * Names of the inputs.
   *
   * @throws neckway.neck.BadInput where the sound system does not answer
   */
  List<String> inputs();

  /** Names of the outputs, as {@link #inputs}. */
  List<String> outputs();

  /**
   * The name of the input that is opened for a name.
   *
   * @throws neckway.neck.BadInput where there is none
   */
  String inputName(Optional<String> name);

  /** The same for the output. */
  String outputName(Optional<String> name);

  /** Listens until it is stopped; a device that goes and comes back is opened again. */
  Listening listen(Optional<String> input, Taker taker);

  /**
   * Measures the round trip; takes about eight seconds.
   *
   * @throws neckway.neck.BadInput where a device is missing or too few clicks are heard
   */
  RoundTrip measure(Optional<String> input, Optional<String> output, double gain);
}
