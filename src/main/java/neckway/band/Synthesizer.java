package neckway.band;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Makes a score sound by Java's own synthesizer, faster than it lasts, with the soundfont that the
 * machine has for it or with the one that is built in.
 */
final class Synthesizer {
  /** What it works at, frames a second. */
  static final int SAMPLE_RATE = 44_100;

  private static final int CHANNELS = 2;
  private static final int SAMPLE_BYTES = 2;
  private static final float FULL_SCALE = 32_768;

  /**
   * From a command to its sound, frames: one of its steps of a 147th of a second, and what its
   * built-in sounds take (measured, 6.9 ms).
   */
  private static final int LATE_FRAMES = 304;

  private static final int TICKS_PER_BEAT = 960;
  private static final double TAIL_SECONDS = 1.5;

  /** General MIDI 1 programs and channel, from 0 (from memory). */
  private static final int ELECTRIC_PIANO = 4;

  private static final int FINGERED_BASS = 33;
  private static final int DRUM_CHANNEL = 9;
  private static final int TEMPO_META = 0x51;
  private static final int VOLUME_CONTROL = 7;
  private static final int REVERB_CONTROL = 91;
  private static final int CHORUS_CONTROL = 93;
  private static final double MICROSECONDS_A_MINUTE = 60e6;

  private Synthesizer() {}

  /** On which channel a part plays, with what, and how loud beside the others (0 to 127). */
  private record Desk(int channel, int program, int volume) {
    static Desk of(Score.Part part) {
      return switch (part) {
        case CHORDS -> new Desk(0, ELECTRIC_PIANO, 84);
        case BASS -> new Desk(1, FINGERED_BASS, 104);
        case DRUMS -> new Desk(DRUM_CHANNEL, 0, 88);
      };
    }
  }

  /**
   * Plays a score.
   *
   * @param tempo beats a minute
   * @return mono; the first sample is the first beat's, and what rings on at the end is there
   * @throws BadInput where this Java has no synthesizer
   */
  static float[] play(Score score, double tempo) {
    double seconds = score.beats() * 60 / tempo + TAIL_SECONDS;
    float[] samples = new float[(int) Math.round(seconds * SAMPLE_RATE)];
    try (AudioInputStream sound =
        AudioSystem.getAudioInputStream(new ByteArrayInputStream(midi(score, tempo)))) {
      read(sound, samples);
    } catch (UnsupportedAudioFileException e) {
      throw new BadInput(Wording.of("music.band.noSynthesizer"), e);
    } catch (IOException | InvalidMidiDataException e) {
      throw new IllegalStateException(e);
    }
    return samples;
  }

  private static void read(AudioInputStream sound, float[] samples) throws IOException {
    sound.skipNBytes((long) LATE_FRAMES * CHANNELS * SAMPLE_BYTES);
    byte[] bytes = sound.readNBytes(samples.length * CHANNELS * SAMPLE_BYTES);
    ShortBuffer values = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer();
    for (int i = 0; i < values.limit() / CHANNELS; i++) {
      samples[i] = (values.get(CHANNELS * i) + values.get(CHANNELS * i + 1)) / (2 * FULL_SCALE);
    }
  }

  /** The score as a Standard MIDI File. */
  private static byte[] midi(Score score, double tempo)
      throws InvalidMidiDataException, IOException {
    Sequence sequence = new Sequence(Sequence.PPQ, TICKS_PER_BEAT);
    Track track = sequence.createTrack();
    int microseconds = (int) Math.round(MICROSECONDS_A_MINUTE / tempo);
    byte[] data = {(byte) (microseconds >> 16), (byte) (microseconds >> 8), (byte) microseconds};
    track.add(new MidiEvent(new MetaMessage(TEMPO_META, data, data.length), 0));
    for (Score.Part part : Score.Part.values()) {
      Desk desk = Desk.of(part);
      add(track, 0, ShortMessage.PROGRAM_CHANGE, desk.channel(), desk.program(), 0);
      add(track, 0, ShortMessage.CONTROL_CHANGE, desk.channel(), VOLUME_CONTROL, desk.volume());
      add(track, 0, ShortMessage.CONTROL_CHANGE, desk.channel(), REVERB_CONTROL, 0);
      add(track, 0, ShortMessage.CONTROL_CHANGE, desk.channel(), CHORUS_CONTROL, 0);
    }
    for (Score.Note note : score.notes()) {
      int channel = Desk.of(note.part()).channel();
      long from = Math.round(note.beat() * TICKS_PER_BEAT);
      long to = Math.round((note.beat() + note.beats()) * TICKS_PER_BEAT);
      add(track, from, ShortMessage.NOTE_ON, channel, note.pitch(), note.velocity());
      add(track, to, ShortMessage.NOTE_OFF, channel, note.pitch(), 0);
    }
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    MidiSystem.write(sequence, 1, file);
    return file.toByteArray();
  }

  private static void add(Track track, long tick, int command, int channel, int one, int two)
      throws InvalidMidiDataException {
    track.add(new MidiEvent(new ShortMessage(command, channel, one, two), tick));
  }
}
