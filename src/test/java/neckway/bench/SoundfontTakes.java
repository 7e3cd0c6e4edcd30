package neckway.bench;

import java.io.BufferedInputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import neckway.player.settings.PlayerSettings.Condition;

/**
 * What the virtual player plays, slips and all, on a sampled guitar: rendered by {@code fluidsynth}
 * (Debian package fluidsynth) from a General MIDI soundfont, without reverb and chorus. A note is
 * held until the next one, give or take some milliseconds; the sample's own release follows.
 */
final class SoundfontTakes {
  /** General MIDI programs of guitars, from 0 (General MIDI System Level 1, sound set). */
  enum Sound {
    NYLON(24),
    STEEL(25),
    JAZZ(26),
    CLEAN(27),
    OVERDRIVE(29),
    DISTORTION(30);

    private final int program;

    Sound(int program) {
      this.program = program;
    }
  }

  private static final String PROGRAM = "fluidsynth";
  private static final int RATE = 44_100;
  private static final int LIMIT_SECONDS = 120;

  /** At the 120 beats a minute that a MIDI file has by itself, 10,000 ticks are a second. */
  private static final int TICKS_PER_BEAT = 5_000;

  private static final int TICKS_PER_SECOND = 2 * TICKS_PER_BEAT;
  private static final double LAST_NOTE_SECONDS = 1.2;
  private static final String GAIN = "0.6";

  /** Highest sample of a take, dBFS from to. */
  private static final double LEAST_PEAK_DBFS = -18;

  private static final double MOST_PEAK_DBFS = -3;

  private final File font;

  SoundfontTakes(File font) {
    this.font = font;
  }

  /** Whether {@code fluidsynth} is installed. */
  static boolean rendererIsThere() {
    return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(":"))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, PROGRAM)));
  }

  String name(Sound sound) {
    return font.getName().replace(".sf2", "") + " " + sound.name().toLowerCase(Locale.ROOT);
  }

  /** An ordinary run with some slips. */
  PlayedTake take(Sound sound, long seed) throws Exception {
    PlayedTake played = VirtualTakes.take(Population.ORDINARY, seed, Condition.CLEAN);
    Random random = new Random(seed * 31 + sound.program);
    random.nextInt();
    Take dry = played.take();
    float[] samples = render(sequence(dry.notes(), sound, random), dry.seconds());
    double peak = LEAST_PEAK_DBFS + (MOST_PEAK_DBFS - LEAST_PEAK_DBFS) * random.nextDouble();
    setPeak(samples, Math.pow(10, peak / 20));
    Take take =
        new Take(
            String.format("%s seed %d %s", name(sound), seed, played.mistakes()),
            RATE,
            samples,
            dry.notes(),
            0,
            dry.firstBeat(),
            dry.beatSeconds());
    return played.withTake(take);
  }

  private static Sequence sequence(List<TrueNote> notes, Sound sound, Random random)
      throws InvalidMidiDataException {
    Sequence sequence = new Sequence(Sequence.PPQ, TICKS_PER_BEAT);
    Track track = sequence.createTrack();
    track.add(new MidiEvent(new ShortMessage(ShortMessage.PROGRAM_CHANGE, 0, sound.program, 0), 0));
    for (int i = 0; i < notes.size(); i++) {
      TrueNote note = notes.get(i);
      double end =
          i + 1 == notes.size()
              ? note.time() + LAST_NOTE_SECONDS
              : notes.get(i + 1).time() - 0.01 + 0.03 * random.nextDouble();
      if (i + 1 < notes.size() && notes.get(i + 1).midi() == note.midi()) {
        end = notes.get(i + 1).time() - 0.005;
      }
      int velocity = 60 + random.nextInt(60);
      track.add(event(ShortMessage.NOTE_ON, note.midi(), velocity, note.time()));
      track.add(event(ShortMessage.NOTE_OFF, note.midi(), 0, end));
    }
    return sequence;
  }

  private static MidiEvent event(int command, int midi, int velocity, double seconds)
      throws InvalidMidiDataException {
    return new MidiEvent(
        new ShortMessage(command, 0, midi, velocity), Math.round(seconds * TICKS_PER_SECOND));
  }

  private float[] render(Sequence sequence, double seconds)
      throws IOException, InterruptedException, UnsupportedAudioFileException {
    Path midi = Files.createTempFile("neckway-bench", ".mid");
    Path wav = Files.createTempFile("neckway-bench", ".wav");
    Path said = Files.createTempFile("neckway-bench", ".txt");
    try {
      MidiSystem.write(sequence, 0, midi.toFile());
      List<String> command =
          List.of(
              PROGRAM, "-ni", "-R", "0", "-C", "0", "-g", GAIN, "-r", "" + RATE, "-F", "" + wav,
              "-T", "wav", "" + font, "" + midi);
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(said.toFile())
              .start();
      if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IOException(PROGRAM + " did not end: " + Files.readString(said));
      }
      return read(wav, (int) (seconds * RATE));
    } finally {
      Files.delete(midi);
      Files.delete(wav);
      Files.delete(said);
    }
  }

  /** The mean of two channels of 16 bits, cut or filled up with silence to a length. */
  private static float[] read(Path wav, int frames)
      throws IOException, UnsupportedAudioFileException {
    float[] samples = new float[frames];
    try (InputStream in = new BufferedInputStream(Files.newInputStream(wav));
        AudioInputStream sound = AudioSystem.getAudioInputStream(in)) {
      byte[] b = sound.readNBytes(4 * frames);
      for (int i = 0; i < b.length / 4; i++) {
        int left = b[4 * i] & 0xff | b[4 * i + 1] << 8;
        int right = b[4 * i + 2] & 0xff | b[4 * i + 3] << 8;
        samples[i] = (left + right) / 65_536f;
      }
    }
    return samples;
  }

  static void setPeak(float[] samples, double peak) {
    float top = 1e-9f;
    for (float s : samples) {
      top = Math.max(top, Math.abs(s));
    }
    float gain = (float) (peak / top);
    for (int i = 0; i < samples.length; i++) {
      samples[i] *= gain;
    }
  }
}
