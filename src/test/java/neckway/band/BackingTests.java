package neckway.band;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import neckway.drill.Pulse;
import neckway.neck.Key;
import neckway.sound.Levelling;
import neckway.sound.Loudness;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

final class BackingTests {
  private static final Key KEY = Key.parse("A major");
  private static final int FRAME = 220;

  private static Backing backing(Feel feel, Pulse pulse, int bars) {
    ChordRow row = ChordRow.parse("I vi IV V", KEY);
    return Backing.of(row, feel, pulse, bars, Backing.Clicks.COUNT_IN);
  }

  /** Rise of energy from frame to frame of 220 samples, as onset detectors have it. */
  private static double[] rises(Backing backing, int from) {
    int frames = (backing.samples().length - from) / FRAME;
    double[] energy = new double[frames];
    for (int f = 0; f < frames; f++) {
      for (int i = 0; i < FRAME; i++) {
        double sample = backing.samples()[from + f * FRAME + i];
        energy[f] += sample * sample;
      }
    }
    double[] rises =
        IntStream.range(1, frames)
            .mapToDouble(f -> Math.max(0, Math.sqrt(energy[f]) - Math.sqrt(energy[f - 1])))
            .toArray();
    // a beat need not begin where a frame does
    return IntStream.range(1, rises.length - 1)
        .mapToDouble(f -> rises[f - 1] / 2 + rises[f] + rises[f + 1] / 2)
        .toArray();
  }

  /** The lag at which what follows is most like what was before, within 2 % of the one expected. */
  private static double likestLag(double[] rises, double expected) {
    int best = 0;
    double most = -1;
    for (int lag = (int) (0.98 * expected); lag <= 1.02 * expected; lag++) {
      double sum = 0;
      for (int i = lag; i < rises.length; i++) {
        sum += rises[i] * rises[i - lag];
      }
      if (sum > most) {
        most = sum;
        best = lag;
      }
    }
    return best;
  }

  @ParameterizedTest
  @EnumSource(Feel.class)
  @Tag("slow")
  void tempoIsExact(Feel feel) {
    Pulse pulse = new Pulse(92.7, 2, 4, 4);
    Backing backing = backing(feel, pulse, 32);
    int bar1 = (int) (pulse.countIn() * pulse.beatSeconds() * backing.sampleRate());
    double beatFrames = pulse.beatSeconds() * backing.sampleRate() / FRAME;
    // four bars of four chords, and so again and again
    double lag = likestLag(rises(backing, bar1), 64 * beatFrames);
    assertThat(lag / 64 / beatFrames).isCloseTo(1, within(0.001));
  }

  @ParameterizedTest
  @EnumSource(Feel.class)
  void barOneBeginsWhereItShould(Feel feel) {
    Pulse pulse = new Pulse(60, 2, 4, 4);
    Backing backing = backing(feel, pulse, 2);
    double[] rises = rises(backing, 0);
    int bar1 = 4 * backing.sampleRate() / FRAME;
    int strongest =
        IntStream.range(bar1 - 20, bar1 + 20)
            .reduce((a, b) -> rises[a] >= rises[b] ? a : b)
            .orElseThrow();
    assertThat(Math.abs(strongest + 2 - bar1) * 1000.0 * FRAME / backing.sampleRate())
        .as("milliseconds off")
        .isLessThan(16);
    assertThat(rises(backing, 0)[0]).as("nothing before the first click").isLessThan(0.2);
  }

  /**
   * Energy by pitch class against the notes of each major and minor chord: the one asked for must
   * come out (template matching, as in Fujishima 1999).
   */
  @ParameterizedTest
  @EnumSource(Feel.class)
  void chordsAreThoseAskedFor(Feel feel) {
    Pulse pulse = new Pulse(90, 2, 4, 4);
    Backing backing = backing(feel, pulse, 8);
    ChordRow row = ChordRow.parse("I vi IV V", KEY);
    List<String> heard = new ArrayList<>();
    List<String> asked = new ArrayList<>();
    for (int bar = 0; bar < 8; bar++) {
      double from = (pulse.countIn() + 4 * bar) * pulse.beatSeconds() * backing.sampleRate();
      int length = (int) (4 * pulse.beatSeconds() * backing.sampleRate());
      heard.add(likest(chroma(backing, (int) from, length)));
      asked.add(ChordRow.name(row.bar(bar).get(0), KEY));
    }
    assertThat(heard).isEqualTo(asked);
  }

  private static double[] chroma(Backing backing, int from, int length) {
    double[] chroma = new double[12];
    for (int midi = 48; midi < 84; midi++) {
      double step = 2 * Math.PI * 440 * Math.pow(2, (midi - 69) / 12.0) / backing.sampleRate();
      double real = 0;
      double imaginary = 0;
      for (int i = 0; i < length; i++) {
        double window = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / length);
        double sample = window * backing.samples()[from + i];
        real += sample * Math.cos(step * i);
        imaginary += sample * Math.sin(step * i);
      }
      chroma[midi % 12] += Math.hypot(real, imaginary);
    }
    return chroma;
  }

  private static String likest(double[] chroma) {
    String best = "";
    double most = -1;
    for (int root = 0; root < 12; root++) {
      for (Chord.Quality quality : List.of(Chord.Quality.MAJOR, Chord.Quality.MINOR)) {
        Chord chord = new Chord(root, quality);
        double sum = chord.pitchClasses().stream().mapToDouble(p -> chroma[p]).sum();
        if (sum > most) {
          most = sum;
          best = ChordRow.name(chord, KEY);
        }
      }
    }
    return best;
  }

  @Test
  void isAsLoudAsAllPlaybackAndComesInQuietly() {
    Pulse pulse = new Pulse(90, 2, 4, 0);
    Backing backing = backing(Feel.STRAIGHT, pulse, 16);
    float[] all = backing.samples();
    assertThat(Loudness.integrated(all, backing.sampleRate()).orElseThrow())
        .isCloseTo(Levelling.TARGET_LKFS, within(1.0));
    int beat = (int) (pulse.beatSeconds() * backing.sampleRate());
    assertThat(peak(all, 0, beat)).isLessThan(0.6 * peak(all, 16 * beat, 20 * beat));
  }

  private static double peak(float[] samples, int from, int to) {
    return IntStream.range(from, to).mapToDouble(i -> Math.abs(samples[i])).max().orElseThrow();
  }

  @Test
  void sameAskedForTwiceIsTheSameSound() {
    Pulse pulse = new Pulse(120, 2, 3, 3);
    assertThat(backing(Feel.SHUFFLE, pulse, 2).samples())
        .isEqualTo(backing(Feel.SHUFFLE, pulse, 2).samples());
  }
}
