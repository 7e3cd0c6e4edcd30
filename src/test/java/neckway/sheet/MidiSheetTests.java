package neckway.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.Step;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is written is read by the JDK's own reader of Standard MIDI Files. */
final class MidiSheetTests {
  static List<PlayableDrill> drills() {
    return SheetDrills.many();
  }

  private static Sequence read(PlayableDrill drill) throws Exception {
    return MidiSystem.getSequence(new ByteArrayInputStream(MidiSheet.of(drill)));
  }

  private static byte[] meta(Sequence sequence, int type) {
    Track track = sequence.getTracks()[0];
    for (int i = 0; i < track.size(); i++) {
      if (track.get(i).getMessage() instanceof MetaMessage meta && meta.getType() == type) {
        assertThat(track.get(i).getTick()).isZero();
        return meta.getData();
      }
    }
    throw new AssertionError("no meta event " + type);
  }

  private static List<MidiEvent> events(Sequence sequence, int command) {
    Track track = sequence.getTracks()[0];
    List<MidiEvent> found = new ArrayList<>();
    for (int i = 0; i < track.size(); i++) {
      if (track.get(i).getMessage() instanceof ShortMessage m && m.getCommand() == command) {
        found.add(track.get(i));
      }
    }
    return found;
  }

  private static int pitch(MidiEvent event) {
    return ((ShortMessage) event.getMessage()).getData1();
  }

  @ParameterizedTest
  @MethodSource("drills")
  void pitchesAndTimesAreTheRoutes(PlayableDrill drill) throws Exception {
    Sequence sequence = read(drill);
    byte[] tempo = meta(sequence, 0x51);
    double beatSeconds = ((tempo[0] & 0xFF) << 16 | (tempo[1] & 0xFF) << 8 | tempo[2] & 0xFF) / 1e6;
    double tickSeconds = beatSeconds / sequence.getResolution();
    // the file has whole microseconds a beat, so a whole take may be off by half of one each beat
    assertThat(beatSeconds).isCloseTo(60 / drill.pulse().tempo(), within(0.5e-6));

    List<MidiEvent> on = events(sequence, ShortMessage.NOTE_ON);
    List<MidiEvent> off = events(sequence, ShortMessage.NOTE_OFF);
    List<Step> steps = drill.route().steps();
    assertThat(on).extracting(MidiSheetTests::pitch).isEqualTo(pitches(steps));
    assertThat(off).extracting(MidiSheetTests::pitch).isEqualTo(pitches(steps));
    for (int i = 0; i < steps.size(); i++) {
      double due = drill.pulse().dueSeconds(i);
      assertThat(on.get(i).getTick() * tickSeconds).isCloseTo(due, within(1e-4));
      assertThat(off.get(i).getTick() * tickSeconds)
          .isCloseTo(drill.pulse().dueSeconds(i + 1), within(1e-4));
    }
  }

  private static List<Integer> pitches(List<Step> steps) {
    return steps.stream().map(Step::midi).toList();
  }

  @ParameterizedTest
  @MethodSource("drills")
  void theHeadNamesTitleMetreAndKey(PlayableDrill drill) throws Exception {
    Sequence sequence = read(drill);
    Pulse pulse = drill.pulse();
    assertThat(new String(meta(sequence, 0x03), StandardCharsets.UTF_8)).isEqualTo(drill.title());
    // MIDI 1.0, Standard MIDI Files: FF 58 04 nn dd cc bb, dd a power of two
    assertThat(meta(sequence, 0x58)).isEqualTo(new byte[] {(byte) pulse.beatsPerBar(), 2, 24, 8});
    assertThat(meta(sequence, 0x59)[0]).isEqualTo((byte) drill.key().signs());
    assertThat(meta(sequence, 0x59)[1]).isEqualTo((byte) (drill.key().minor() ? 1 : 0));
  }
}
