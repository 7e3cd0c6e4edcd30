package neckway.bench;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import neckway.drill.PlayableDrill;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.player.settings.PlayerSettings.Condition;

/**
 * Takes into which a backing leaks from a loudspeaker: chords, bass and drums of a soundfont, by
 * {@code fluidsynth} without reverb and chorus, in the drill's tempo, through a small loudspeaker
 * and a room of noise that dies away.
 */
final class BackingTakes {
  static final String SOUNDFONT = "/usr/share/sounds/sf2/FluidR3_GM.sf2";

  private static final int TICKS = 480;
  private static final int DRUMS = 9;
  private static final int[] CHORD_PROGRAMS = {0, 4, 16, 25, 27, 48};
  private static final int[] BASS_PROGRAMS = {32, 33, 34};
  private static final int[][] DEGREES = {{0, 5, 3, 4}, {0, 4, 5, 3}, {5, 3, 0, 4}, {1, 4, 0, 0}};
  private static final int[] MAJOR = {0, 2, 4, 5, 7, 9, 11};

  private BackingTakes() {}

  /**
   * A take and what sounded beside it.
   *
   * @param alone without the backing
   * @param backing what came from the loudspeaker
   * @param backingRate of it, Hz
   * @param starts where its first sample sounds in the take, seconds
   * @param drift by which share its clock is faster than the take's
   * @param leak as it came to the microphone, as loud as the guitar (root mean squares)
   */
  record Beside(
      PlayedTake alone,
      float[] backing,
      double backingRate,
      double starts,
      double drift,
      float[] leak) {
    /** The take with the leak so many dB under the guitar. */
    PlayedTake leaking(double underDb) {
      float gain = (float) Math.pow(10, -underDb / 20);
      float[] samples = alone.take().samples().clone();
      for (int i = 0; i < samples.length; i++) {
        samples[i] += gain * leak[i];
      }
      return with(samples);
    }

    PlayedTake with(float[] samples) {
      Take t = alone.take();
      return alone.withTake(
          new Take(
              t.name(),
              t.sampleRate(),
              samples,
              t.notes(),
              t.tuningCents(),
              t.firstBeat(),
              t.beatSeconds()));
    }
  }

  /** One drawn by a seed; every third backing is in another key than the drill. */
  static Beside of(long seed, double roomSeconds, double mostDrift) throws Exception {
    Random random = new Random(77_000 + seed);
    PlayedTake alone = VirtualTakes.take(Population.ORDINARY, seed, Condition.CLEAN);
    PlayableDrill drill = alone.drill();
    Take take = alone.take();
    double barSeconds = 4 * take.beatSeconds();
    int bars = (int) Math.ceil(take.seconds() / barSeconds) + (int) (seed % 3) - 1;
    int root = drill.key().majorTonic() + (seed % 3 == 2 ? 1 + random.nextInt(11) : 0);
    float[] backing =
        render(sequence(random, root, bars), 60 / take.beatSeconds(), seed, SOUNDFONT);
    double rate = take.sampleRate();
    double drift = mostDrift * (2 * random.nextDouble() - 1);
    double lead = take.firstBeat().getAsDouble() - barSeconds;
    double starts = lead + 0.02 * random.nextGaussian();
    float[] leak = leaked(backing, rate, take.samples().length, starts, drift, roomSeconds, random);
    scale(leak, rms(take) / power(leak));
    return new Beside(alone, backing, RATE, starts, drift, leak);
  }

  static final double RATE = 44_100;

  /** Of the guitar from its first note to a second after its last. */
  private static double rms(Take take) {
    int from = (int) (take.notes().get(0).time() * take.sampleRate());
    int to = (int) ((take.notes().get(take.notes().size() - 1).time() + 1) * take.sampleRate());
    return power(java.util.Arrays.copyOfRange(take.samples(), from, to));
  }

  /** Root mean square of what is not silent. */
  private static double power(float[] x) {
    double sum = 0;
    int count = 1;
    for (float v : x) {
      sum += v * v;
      count += Math.abs(v) > 1e-5 ? 1 : 0;
    }
    return Math.sqrt(sum / count);
  }

  private static void scale(float[] x, double gain) {
    for (int i = 0; i < x.length; i++) {
      x[i] *= (float) gain;
    }
  }

  static Sequence sequence(Random random, int root, int bars) throws InvalidMidiDataException {
    Sequence sequence = new Sequence(Sequence.PPQ, TICKS);
    Track track = sequence.createTrack();
    int chords = CHORD_PROGRAMS[random.nextInt(CHORD_PROGRAMS.length)];
    int bass = BASS_PROGRAMS[random.nextInt(BASS_PROGRAMS.length)];
    int[] degrees = DEGREES[random.nextInt(DEGREES.length)];
    boolean sustained = random.nextBoolean();
    track.add(message(ShortMessage.PROGRAM_CHANGE, 0, chords, 0, 0));
    track.add(message(ShortMessage.PROGRAM_CHANGE, 1, bass, 0, 0));
    for (int bar = 0; bar < bars; bar++) {
      int at = 4 * TICKS * bar;
      int degree = degrees[bar % degrees.length];
      for (int third = 0; third < 3; third++) {
        int midi = 48 + degree(root, degree + 2 * third);
        if (sustained) {
          note(track, 0, midi, at, 4 * TICKS - 20, 70 + random.nextInt(20));
        } else {
          for (int beat = 0; beat < 4; beat += 2) {
            note(track, 0, midi, at + beat * TICKS, TICKS, 70 + random.nextInt(30));
          }
        }
      }
      for (int eighth = 0; eighth < 8; eighth++) {
        int midi = 36 + degree(root, degree) - (root % 12 > 6 ? 12 : 0);
        if (eighth % 2 == 0 || random.nextInt(3) == 0) {
          note(track, 1, midi, at + eighth * TICKS / 2, TICKS / 2, 80 + random.nextInt(30));
        }
        note(track, DRUMS, 42, at + eighth * TICKS / 2, 100, 50 + random.nextInt(40));
      }
      note(track, DRUMS, 36, at, 100, 100 + random.nextInt(20));
      note(track, DRUMS, 36, at + 2 * TICKS, 100, 100 + random.nextInt(20));
      note(track, DRUMS, 38, at + TICKS, 100, 90 + random.nextInt(30));
      note(track, DRUMS, 38, at + 3 * TICKS, 100, 90 + random.nextInt(30));
    }
    return sequence;
  }

  private static int degree(int root, int degree) {
    return root % 12 + MAJOR[degree % 7] + 12 * (degree / 7);
  }

  private static void note(Track track, int channel, int midi, int at, int ticks, int velocity)
      throws InvalidMidiDataException {
    track.add(message(ShortMessage.NOTE_ON, channel, midi, velocity, at));
    track.add(message(ShortMessage.NOTE_OFF, channel, midi, 0, at + ticks));
  }

  private static MidiEvent message(int command, int channel, int one, int two, int at)
      throws InvalidMidiDataException {
    return new MidiEvent(new ShortMessage(command, channel, one, two), at);
  }

  static float[] render(Sequence sequence, double tempo, long seed, String soundfont)
      throws IOException, InterruptedException, InvalidMidiDataException {
    Path folder = Files.createTempDirectory("backing");
    Path midi = folder.resolve("backing.mid");
    Path wav = folder.resolve("backing.wav");
    int microseconds = (int) Math.round(60e6 / tempo);
    byte[] beat = {(byte) (microseconds >> 16), (byte) (microseconds >> 8), (byte) microseconds};
    sequence.getTracks()[0].add(new MidiEvent(new javax.sound.midi.MetaMessage(0x51, beat, 3), 0));
    try {
      MidiSystem.write(sequence, 0, midi.toFile());
      List<String> command =
          List.of(
              "fluidsynth",
              "-ni",
              "-q",
              "-R",
              "0",
              "-C",
              "0",
              "-g",
              "0.5",
              "-r",
              "44100",
              "-F",
              wav.toString(),
              soundfont,
              midi.toString());
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(new File(folder.toFile(), "log"))
              .start();
      if (process.waitFor() != 0) {
        throw new IOException("fluidsynth: " + Files.readString(folder.resolve("log")));
      }
      try (TakeReader reader = TakeReader.open(wav, Channel.MIX)) {
        float[] sound = new float[(int) reader.frames().getAsLong()];
        float[] block = new float[4096];
        int at = 0;
        for (int got = reader.read(block); got > 0; got = reader.read(block)) {
          System.arraycopy(block, 0, sound, at, got);
          at += got;
        }
        return sound;
      }
    } finally {
      for (String name : List.of("backing.mid", "backing.wav", "log")) {
        Files.deleteIfExists(folder.resolve(name));
      }
      Files.delete(folder);
    }
  }

  /** The backing as it comes to the microphone; its level is as it falls out. */
  private static float[] leaked(
      float[] backing,
      double rate,
      int length,
      double starts,
      double drift,
      double roomSeconds,
      Random random) {
    float[] placed = new float[length];
    for (int n = 0; n < length; n++) {
      placed[n] = (float) Sinc.at(backing, (n / rate - starts) * RATE * (1 + drift));
    }
    neckway.player.surroundings.Biquad.highPass(120, 0.7, rate).run(placed);
    neckway.player.surroundings.Biquad.lowPass(9000, 0.7, rate).run(placed);
    return convolve(placed, impulse(rate, roomSeconds, random));
  }

  /** Direct sound after a metre or two, and noise that falls by 60 dB in the room's time. */
  static float[] impulse(double rate, double roomSeconds, Random random) {
    float[] impulse = new float[(int) (1.2 * roomSeconds * rate)];
    int direct = (int) (rate * (0.003 + 0.005 * random.nextDouble()));
    double energy = 0;
    for (int n = direct; n < impulse.length; n++) {
      double decay = Math.pow(10, -3.0 * (n - direct) / rate / roomSeconds);
      impulse[n] = (float) (decay * random.nextGaussian());
      energy += impulse[n] * impulse[n];
    }
    // as much direct sound as all the rest, give or take 3 dB
    impulse[direct] = (float) Math.sqrt(energy * Math.pow(10, 0.3 * (2 * random.nextDouble() - 1)));
    return impulse;
  }

  static float[] convolve(float[] x, float[] h) {
    int size = Integer.highestOneBit(2 * h.length) * 4;
    int block = size - h.length;
    be.tarsos.dsp.util.fft.FFT fft = new be.tarsos.dsp.util.fft.FFT(size);
    float[] hs = java.util.Arrays.copyOf(h, size);
    fft.forwardTransform(hs);
    float[] out = new float[x.length];
    for (int from = 0; from < x.length; from += block) {
      float[] s = new float[size];
      System.arraycopy(x, from, s, 0, Math.min(block, x.length - from));
      fft.forwardTransform(s);
      s[0] *= hs[0];
      s[1] *= hs[1];
      for (int k = 2; k < size; k += 2) {
        float re = s[k] * hs[k] - s[k + 1] * hs[k + 1];
        s[k + 1] = s[k] * hs[k + 1] + s[k + 1] * hs[k];
        s[k] = re;
      }
      fft.backwardsTransform(s);
      for (int i = 0; i < size && from + i < x.length; i++) {
        out[from + i] += s[i];
      }
    }
    return out;
  }
}
