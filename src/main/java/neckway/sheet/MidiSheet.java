package neckway.sheet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.drill.Slots;
import neckway.neck.Step;

/**
 * A drill as a Standard MIDI File (MIDI 1.0, file format 0): the steps of all rounds one after the
 * other, without the count-in, with title, tempo, metre and key.
 */
public final class MidiSheet {
  /** Ticks a beat: the least common multiple of 1 to 8, so that every slot is exact. */
  private static final int TICKS_PER_BEAT = 840;

  private static final int ONE_TRACK = 0;
  private static final int VELOCITY = 90;

  /** "Electric Guitar (clean)" of General MIDI level 1, counted from 0. */
  private static final int CLEAN_GUITAR = 27;

  private static final int TRACK_NAME = 0x03;
  private static final int TEMPO = 0x51;
  private static final int TIME_SIGNATURE = 0x58;
  private static final int KEY_SIGNATURE = 0x59;
  private static final double MICROSECONDS_PER_MINUTE = 60e6;

  /** A quarter note as MIDI's time signature writes it: the power of two below the line. */
  private static final int QUARTER = 2;

  private static final int CLOCKS_PER_QUARTER = 24;
  private static final int THIRTY_SECONDS_PER_QUARTER = 8;

  private MidiSheet() {}

  /** The whole file. */
  public static byte[] of(PlayableDrill drill) {
    try {
      Sequence sequence = new Sequence(Sequence.PPQ, TICKS_PER_BEAT);
      head(sequence.createTrack(), drill);
      notes(sequence.getTracks()[0], drill);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      MidiSystem.write(sequence, ONE_TRACK, bytes);
      return bytes.toByteArray();
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException("a drill whose notes MIDI cannot have", e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void head(Track track, PlayableDrill drill) throws InvalidMidiDataException {
    Pulse pulse = drill.pulse();
    int beatMicroseconds = (int) Math.round(MICROSECONDS_PER_MINUTE / pulse.tempo());
    byte[] tempo = ByteBuffer.allocate(Integer.BYTES).putInt(beatMicroseconds).array();
    byte[] metre = {
      (byte) pulse.beatsPerBar(), QUARTER, CLOCKS_PER_QUARTER, THIRTY_SECONDS_PER_QUARTER
    };
    byte[] key = {(byte) drill.key().signs(), (byte) (drill.key().minor() ? 1 : 0)};
    meta(track, TRACK_NAME, drill.spokenTitle().getBytes(StandardCharsets.UTF_8));
    meta(track, TEMPO, Arrays.copyOfRange(tempo, 1, tempo.length));
    meta(track, TIME_SIGNATURE, metre);
    meta(track, KEY_SIGNATURE, key);
    add(track, 0, new ShortMessage(ShortMessage.PROGRAM_CHANGE, 0, CLEAN_GUITAR, 0));
  }

  private static void notes(Track track, PlayableDrill drill) throws InvalidMidiDataException {
    int slotTicks = TICKS_PER_BEAT / drill.pulse().notesPerBeat();
    Slots slots = drill.pulse().slots();
    List<Step> steps = drill.route().steps();
    for (Step step : steps) {
      long from = tick(slots.position((long) step.index()), slotTicks);
      long to = tick(slots.position(step.index() + 1L), slotTicks);
      add(track, from, new ShortMessage(ShortMessage.NOTE_ON, 0, step.midi(), VELOCITY));
      add(track, to, new ShortMessage(ShortMessage.NOTE_OFF, 0, step.midi(), 0));
    }
  }

  private static long tick(double slots, int slotTicks) {
    return Math.round(slots * slotTicks);
  }

  private static void meta(Track track, int type, byte[] data) throws InvalidMidiDataException {
    add(track, 0, new MetaMessage(type, data, data.length));
  }

  private static void add(Track track, long tick, MidiMessage message) {
    track.add(new MidiEvent(message, tick));
  }
}
