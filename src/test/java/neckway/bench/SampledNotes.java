package neckway.bench;

import java.io.File;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.util.Map;
import java.util.Optional;
import javax.sound.midi.Instrument;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Patch;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Soundbank;
import javax.sound.midi.Synthesizer;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;

/**
 * The JDK's own software synthesizer, rendering off line: the built-in bank or a soundfont.
 *
 * <p>Needs {@code --add-exports java.desktop/com.sun.media.sound=ALL-UNNAMED}: what renders off
 * line is not in the public interface.
 */
final class SampledNotes {
  static final float RATE = 44_100;
  private static final String PACKAGE = "com.sun.media.sound.";

  /** A bank of sounds, its name, and how its notes' onsets are known. */
  record Bank(String name, Soundbank sounds) {}

  private SampledNotes() {}

  /** The bank that the JDK makes for itself where no other is installed. */
  static Bank builtIn() throws ReflectiveOperationException {
    Object bank =
        Class.forName(PACKAGE + "EmergencySoundbank").getMethod("createSoundbank").invoke(null);
    return new Bank("built-in bank", (Soundbank) bank);
  }

  /** A soundfont, where there is one. */
  static Optional<Bank> soundfont(File file) throws IOException, InvalidMidiDataException {
    return file.isFile()
        ? Optional.of(new Bank(file.getName(), MidiSystem.getSoundbank(file)))
        : Optional.empty();
  }

  /** Renders what the player sends; every sample is mono and from -1 to 1. */
  static float[] render(Bank bank, int program, double seconds, Sender player)
      throws MidiUnavailableException,
          InvalidMidiDataException,
          IOException,
          ReflectiveOperationException {
    Synthesizer synthesizer = MidiSystem.getSynthesizer();
    AudioFormat format = new AudioFormat(RATE, 16, 1, true, false);
    try (AudioInputStream sound = open(synthesizer, format)) {
      Instrument instrument = bank.sounds().getInstrument(new Patch(0, program));
      synthesizer.loadInstrument(instrument);
      Receiver receiver = synthesizer.getReceiver();
      receiver.send(new ShortMessage(ShortMessage.PROGRAM_CHANGE, 0, program, 0), 0);
      player.send(receiver);
      byte[] bytes = sound.readNBytes(2 * (int) (seconds * RATE));
      float[] samples = new float[bytes.length / 2];
      for (int i = 0; i < samples.length; i++) {
        samples[i] = ((bytes[2 * i] & 0xff) | (bytes[2 * i + 1] << 8)) / 32768f;
      }
      return samples;
    } finally {
      synthesizer.close();
    }
  }

  /** Sends what is to be played. */
  interface Sender {
    void send(Receiver receiver) throws InvalidMidiDataException;
  }

  private static AudioInputStream open(Synthesizer synthesizer, AudioFormat format)
      throws ReflectiveOperationException {
    Map<String, Object> settings =
        Map.of(
            "load default soundbank", false,
            "reverb", false,
            "chorus", false,
            "auto gain control", false);
    try {
      return (AudioInputStream)
          Class.forName(PACKAGE + "AudioSynthesizer")
              .getMethod("openStream", AudioFormat.class, Map.class)
              .invoke(synthesizer, format, settings);
    } catch (InvocationTargetException e) {
      throw new IllegalStateException("the synthesizer does not open", e.getCause());
    }
  }
}
