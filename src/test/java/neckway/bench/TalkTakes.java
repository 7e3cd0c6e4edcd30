package neckway.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import neckway.drill.PlayableDrill;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.file.sound.WavWriter;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Behaviours;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;

/**
 * Runs of the virtual player as a phone brings them home, with what is heard around them: sentences
 * spoken by the speech synthesizer espeak-ng, tuning up, noodling, hands clapped. What a phone does
 * to sound is done by ffmpeg: codec, automatic gain, room. Both are called as programs.
 */
final class TalkTakes {
  /** What surrounds the run. */
  enum Around {
    ALONE,
    /** A sentence before and one after. */
    TALK,
    /** A count before it, in time. */
    COUNT_IN,
    /** The six open strings one after the other, then a sentence. */
    TUNING_UP,
    /** Part of a run through another drill, before and after. */
    NOODLING,
    /** A sentence before, hands clapped after. */
    APPLAUSE
  }

  private static final String[] BEFORE = {
    "okay, second try, here we go",
    "sorry, let me start again",
    "right, this is the one from last week",
    "is it on? yes, I think it is recording now",
    "so this is my homework, I hope it is good enough",
    "wait, one more time from the top, a bit slower"
  };

  private static final String[] AFTER = {
    "oh no, I missed that one, never mind",
    "that was better than before, wasn't it?",
    "okay, that is it for today, see you on Monday",
    "well, nearly. I will do it again tomorrow",
    "how was that? I think the end was too fast",
    "stop it now, where is the button"
  };

  /** For development, and others for the table. */
  private static final String[] VOICES = {"en-us+m3", "en+f2", "en-gb+m1", "en-us+f4"};

  private static final String[] OTHER_VOICES = {
    "en-gb-x-rp+m5", "en-gb-scotland+f3", "en-us+m7", "en+f1", "en-gb-x-gbcwmd+m2", "en-029+f5"
  };

  /** From these seeds on other voices speak. */
  static final long FIRST_OTHER_VOICES_SEED = 1_000;

  private static final String[] CODECS = {"aac", "opus", "mp3", "16k"};
  private static final int SLIPS = 2;

  private final Path folder;

  TalkTakes(Path folder) {
    this.folder = folder;
  }

  /**
   * A take.
   *
   * @param name what is around it, its seed and its phone
   * @param file where its sound lies
   */
  record TalkTake(String name, PlayedTake played, Path file) {}

  /** The take of a seed: the same run through the same phone, whatever is around it. */
  TalkTake take(long seed, Around around) throws IOException, InterruptedException {
    Random random = new Random(seed * 7_368_787 + 3);
    PlayableDrill drill = new RandomDrills(random).ordinary();
    PlayerSettings settings =
        OrdinaryDraw.settings(seed, Condition.CLEAN).withBehaviour(Behaviours.withMistakes(SLIPS));
    Performance run =
        new VirtualPlayer(settings).play(drill.route(), drill.pulse(), List.of(), seed);
    double rate = run.sampleRate();
    float[] samples = run.samples();
    double level = rms(samples);
    String chain = chain(seed, random);
    double speechDb = -8 + 12 * random.nextDouble();
    List<float[]> parts = new ArrayList<>();
    float[] pause = new float[(int) ((0.3 + random.nextDouble()) * rate)];
    switch (around) {
      case ALONE -> {}
      case TALK -> parts.add(spoken(seed, BEFORE, 160, speechDb, level, rate, random));
      case APPLAUSE -> parts.add(spoken(seed, BEFORE, 160, speechDb, level, rate, random));
      case COUNT_IN -> parts.add(counted(seed, drill, speechDb, level, rate, random));
      case TUNING_UP -> {
        parts.add(tuningUp(settings, drill, seed));
        parts.add(spoken(seed, BEFORE, 160, speechDb, level, rate, random));
      }
      case NOODLING -> parts.add(noodled(settings, seed, random));
    }
    if (around != Around.ALONE) {
      parts.add(pause);
    }
    int lead = parts.stream().mapToInt(p -> p.length).sum();
    parts.add(samples);
    switch (around) {
      case ALONE, COUNT_IN -> {}
      case TALK, TUNING_UP ->
          parts.add(spoken(seed + 3, AFTER, 170, speechDb, level, rate, random));
      case APPLAUSE -> parts.add(clapped(level, rate, random));
      case NOODLING -> parts.add(noodled(settings, seed + 1, random));
    }
    float[] all = joined(parts);
    String name = String.format(Locale.ROOT, "%s-%d", around, seed).toLowerCase(Locale.ROOT);
    Path raw = folder.resolve(name + ".raw.wav");
    write(raw, all, (int) rate);
    Path file = folder.resolve(name + ".wav");
    throughPhone(raw, file, chain, name);
    Files.delete(raw);
    PlayedTake played = VirtualTakes.of(seed, name, settings, drill, run);
    return new TalkTake(name + " " + chain, later(played, lead / rate), file);
  }

  /** The same, begun so many seconds later; without its sound. */
  static PlayedTake later(PlayedTake p, double seconds) {
    List<TrueNote> notes =
        p.take().notes().stream()
            .map(
                n ->
                    new TrueNote(
                        n.time() + seconds,
                        n.midi(),
                        n.string(),
                        n.fret(),
                        n.kind(),
                        n.step(),
                        n.note()))
            .toList();
    Take t = p.take();
    Take take =
        new Take(
            t.name(),
            t.sampleRate(),
            new float[0],
            notes,
            t.tuningCents(),
            OptionalDouble.empty(),
            t.beatSeconds());
    return new PlayedTake(take, p.drill(), p.firstBeat() + seconds, p.mistakes());
  }

  /** What a seed's phone does to sound. */
  static String chain(long seed, Random random) {
    List<String> filters = new ArrayList<>();
    if (random.nextInt(3) == 0) {
      filters.add("aecho=0.8:0.7:23|41|67:0.18|0.12|0.08");
    }
    switch (random.nextInt(3)) {
      case 0 -> filters.add("dynaudnorm=f=250:g=15:m=8");
      case 1 -> filters.add("acompressor=threshold=0.06:ratio=4:attack=8:release=200:makeup=2");
      default -> {
        // the gain stays as it is
      }
    }
    return CODECS[(int) (seed % CODECS.length)] + ";" + String.join(",", filters);
  }

  private void throughPhone(Path raw, Path out, String chain, String name)
      throws IOException, InterruptedException {
    Path phone = phoneFile(raw, chain, name);
    if (!phone.equals(out)) {
      call(List.of("ffmpeg", "-v", "error", "-y", "-i", "" + phone, "-c:a", "pcm_s16le", "" + out));
      Files.delete(phone);
    }
  }

  /** Sound as a phone's own file, coded as the chain says. */
  Path recorded(float[] samples, int rate, String chain, String name)
      throws IOException, InterruptedException {
    Path raw = folder.resolve(name + ".raw.wav");
    write(raw, samples, rate);
    Path phone = phoneFile(raw, chain, name);
    Files.delete(raw);
    return phone;
  }

  private Path phoneFile(Path raw, String chain, String name)
      throws IOException, InterruptedException {
    String codec = chain.substring(0, chain.indexOf(';'));
    String filters = chain.substring(chain.indexOf(';') + 1);
    List<String> coded = new ArrayList<>(List.of("ffmpeg", "-v", "error", "-y", "-i", "" + raw));
    if (!filters.isEmpty()) {
      coded.addAll(List.of("-af", filters));
    }
    String ending =
        switch (codec) {
          case "aac" -> ".m4a";
          case "16k" -> ".wav";
          default -> "." + codec;
        };
    Path phone = folder.resolve(name + ending);
    coded.addAll(
        switch (codec) {
          case "16k" -> List.of("-ar", "16000", "-ac", "1", "-c:a", "pcm_s16le");
          case "aac" -> List.of("-c:a", "aac", "-b:a", "64k");
          case "opus" -> List.of("-c:a", "libopus", "-b:a", "24k");
          default -> List.of("-c:a", "libmp3lame", "-b:a", "64k");
        });
    coded.add("" + phone);
    call(coded);
    return phone;
  }

  /** A sentence said before a run, or after it, so much louder than the run's level. */
  float[] sentence(boolean before, long seed, double db, double level, double rate, Random random)
      throws IOException, InterruptedException {
    return spoken(seed, before ? BEFORE : AFTER, before ? 160 : 170, db, level, rate, random);
  }

  private float[] spoken(
      long seed, String[] words, int pace, double db, double level, double rate, Random random)
      throws IOException, InterruptedException {
    return said(seed, words[random.nextInt(words.length)], pace, db, level, rate, random);
  }

  private float[] said(
      long seed, String words, int pace, double db, double level, double rate, Random random)
      throws IOException, InterruptedException {
    String[] voices = seed < FIRST_OTHER_VOICES_SEED ? VOICES : OTHER_VOICES;
    String voice = voices[(int) (seed % voices.length)];
    int pitch = 25 + random.nextInt(45);
    int speed = pace - 25 + random.nextInt(50);
    Path at = Files.createTempFile(folder, "said", ".wav");
    Path resampled = Files.createTempFile(folder, "said", ".wav");
    call(
        List.of(
            "espeak-ng", "-v", voice, "-p", "" + pitch, "-s", "" + speed, "-w", "" + at, words));
    call(
        List.of(
            "ffmpeg", "-v", "error", "-y", "-i", "" + at, "-ar", "" + (int) rate, "" + resampled));
    float[] voiceSamples = read(resampled);
    Files.delete(at);
    Files.delete(resampled);
    return scaled(voiceSamples, level * Math.pow(10, db / 20) / rms(voiceSamples));
  }

  /** Numbers up to the beats of a bar, each on its beat, the last one a beat before the run. */
  private float[] counted(
      long seed, PlayableDrill drill, double db, double level, double rate, Random random)
      throws IOException, InterruptedException {
    String[] numbers = {"one", "two", "three", "four"};
    int beat = (int) (drill.pulse().beatSeconds() * rate);
    float[] all = new float[numbers.length * beat];
    for (int i = 0; i < numbers.length; i++) {
      float[] number = said(seed, numbers[i], 220, db, level, rate, random);
      System.arraycopy(number, 0, all, i * beat, Math.min(beat, number.length));
    }
    return all;
  }

  private static float[] tuningUp(PlayerSettings settings, PlayableDrill drill, long seed) {
    return new VirtualPlayer(settings).calibration(drill.tuning(), List.of(0), seed).samples();
  }

  /** Part of a run through another drill, begun somewhere. */
  private static float[] noodled(PlayerSettings settings, long seed, Random random) {
    PlayableDrill drill = new RandomDrills(random).ordinary();
    Performance other =
        new VirtualPlayer(settings.withBehaviour(Behaviours.withMistakes(3)))
            .play(drill.route(), drill.pulse(), List.of(), seed + 500_000);
    int from = 4 + random.nextInt(5);
    int to = Math.min(other.notes().size() - 1, from + 4 + random.nextInt(4));
    int begin = (int) ((other.notes().get(from).time() - 0.03) * other.sampleRate());
    int end = (int) ((other.notes().get(to).time() - 0.03) * other.sampleRate());
    float[] part = java.util.Arrays.copyOfRange(other.samples(), begin, end);
    int fade = (int) (0.02 * other.sampleRate());
    for (int i = 0; i < fade; i++) {
      part[i] *= (float) i / fade;
      part[part.length - 1 - i] *= (float) i / fade;
    }
    return part;
  }

  /** Some pairs of hands, each clap a burst of noise that dies within some 20 ms. */
  private static float[] clapped(double level, double rate, Random random) {
    float[] all = new float[(int) (3 * rate)];
    for (double at = 0.3; at < 2.8; at += 0.02 + 0.12 * random.nextDouble()) {
      double loud = level * (1 + 3 * random.nextDouble());
      int start = (int) (at * rate);
      for (int i = 0; start + i < all.length && i < 0.1 * rate; i++) {
        all[start + i] += (float) (loud * random.nextGaussian() * Math.exp(-i / (0.012 * rate)));
      }
    }
    return all;
  }

  static float[] joined(List<float[]> parts) {
    float[] all = new float[parts.stream().mapToInt(p -> p.length).sum()];
    int at = 0;
    for (float[] part : parts) {
      System.arraycopy(part, 0, all, at, part.length);
      at += part.length;
    }
    return all;
  }

  static double rms(float[] samples) {
    double sum = 0;
    for (float s : samples) {
      sum += s * s;
    }
    return Math.sqrt(sum / samples.length);
  }

  private static float[] scaled(float[] samples, double gain) {
    for (int i = 0; i < samples.length; i++) {
      samples[i] *= (float) gain;
    }
    return samples;
  }

  private static float[] read(Path file) throws IOException {
    try (TakeReader reader = TakeReader.open(file, Channel.AUTO)) {
      float[] all = new float[(int) reader.frames().orElseThrow()];
      float[] block = new float[4096];
      int at = 0;
      for (int got = reader.read(block); got > 0 && at < all.length; got = reader.read(block)) {
        int use = Math.min(got, all.length - at);
        System.arraycopy(block, 0, all, at, use);
        at += use;
      }
      return all;
    }
  }

  private static void write(Path file, float[] samples, int rate) throws IOException {
    float peak = 0.9f;
    for (float s : samples) {
      peak = Math.max(peak, Math.abs(s));
    }
    float[] fitting = scaled(samples.clone(), 0.9 / peak);
    try (WavWriter writer = new WavWriter(file, rate, WavWriter.Coding.FLOAT_32)) {
      writer.write(fitting, 0, fitting.length);
      writer.finish();
    }
  }

  /** Runs a program to its end. */
  static void call(List<String> command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectInput(ProcessBuilder.Redirect.from(new java.io.File("/dev/null")))
            .start();
    String said = new String(process.getInputStream().readAllBytes());
    if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != 0) {
      throw new IOException(String.join(" ", command) + ": " + said);
    }
  }
}
