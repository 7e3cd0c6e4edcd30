package neckway.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import neckway.calibration.Calibration;
import neckway.calibration.Plucks;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.GuitarFile;
import neckway.file.MistakesFile;
import neckway.file.SettingsFile;
import neckway.file.sound.Channel;
import neckway.file.sound.WavWriter;
import neckway.neck.BadInput;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings.Condition;
import neckway.recording.Recording;
import neckway.recording.RecordingReviewer;

/**
 * Files of every kind that the program reads, spoilt by chance: bits turned over, numbers made
 * huge, pieces left out, doubled and cut off. Each must be read or refused in one line.
 */
public final class MutatedFiles {
  private static final double SOUND_SECONDS = 3;
  private static final int HEAD_BYTES = 160;
  private static final List<Integer> FRETS = List.of(0, 3, 7, 12);
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");
  private static final Pattern TOKEN =
      Pattern.compile("\"[^\"]*\"|-?[0-9]+(\\.[0-9]+)?|true|false|null|[\\[\\]{},:]");
  private static final String[] NUMBERS = {
    "0", "-1", "1e308", "-1e308", "1e999", "2147483648", "9223372036854775808", "0.0000001", "99999"
  };
  private static final String[] VALUES = {
    "null", "true", "\"\"", "[]", "{}", "\"major\"", "[[[[[[[[[[]]]]]]]]]]", "-0", "\"\\u0000\""
  };

  /** What became of a file. */
  public enum Outcome {
    READ,
    REFUSED
  }

  /** How a file of one kind is read. */
  private interface Reading {
    void of(Path file) throws Exception;
  }

  private record Kind(List<byte[]> originals, boolean text, String ending, Reading reading) {}

  private final Path folder;
  private final Map<String, Kind> kinds = new LinkedHashMap<>();
  private final PlayableDrill drill;

  /**
   * Makes the files that are then spoilt; needs the programs sox, flac, lame and ffmpeg.
   *
   * @param folder for files that come and go
   */
  public MutatedFiles(Path folder) throws IOException, InterruptedException {
    this.folder = folder;
    Random random = new Random(5);
    drill = new RandomDrills(random).ordinary();
    VirtualPlayer player = new VirtualPlayer(OrdinaryDraw.settings(5, Condition.CLEAN));
    Performance take = player.play(drill.route(), drill.pulse(), List.of(), 5);
    Path wav = folder.resolve("whole.wav");
    int frames = (int) Math.min(take.samples().length, SOUND_SECONDS * take.sampleRate());
    try (WavWriter out = new WavWriter(wav, (int) take.sampleRate(), WavWriter.Coding.PCM_16)) {
      out.write(take.samples(), 0, frames);
      out.finish();
    }
    sound("WAV", "wav", wav, List.of("-b 16", "-b 24 -c 2", "-b 32 -e floating-point"));
    sound("AIFF", "aiff", wav, List.of("-b 16", "-b 24 -c 2"));
    sound("AU", "au", wav, List.of("-b 16", "-e mu-law -c 2"));
    sound("FLAC", "flac", wav, List.of("-b 16", "-b 24 -c 2"));
    sound("Ogg Vorbis", "ogg", wav, List.of("-C 3", "-C 6 -c 2"));
    Path mp3 = folder.resolve("whole.mp3");
    TalkTakes.call(List.of("lame", "--quiet", "-b", "64", "" + wav, "" + mp3));
    kinds.put("MP3", new Kind(List.of(Files.readAllBytes(mp3)), false, "mp3", this::review));
    phone("M4A", "m4a", wav, List.of("-c:a aac -b:a 64k", "-c:a aac -ac 2 -movflags +faststart"));
    phone("Opus", "opus", wav, List.of("-c:a libopus -b:a 32k", "-c:a libopus -ac 2"));
    texts(player, wav);
  }

  private void sound(String name, String ending, Path wav, List<String> codings)
      throws IOException, InterruptedException {
    List<byte[]> originals = new ArrayList<>();
    for (String coding : codings) {
      Path made = folder.resolve("whole-coded." + ending);
      List<String> command = new ArrayList<>(List.of("sox", "" + wav));
      command.addAll(List.of(coding.split(" ")));
      command.add("" + made);
      TalkTakes.call(command);
      originals.add(Files.readAllBytes(made));
      Files.delete(made);
    }
    kinds.put(name, new Kind(originals, false, ending, this::review));
  }

  /** As phones and messengers write sound. */
  private void phone(String name, String ending, Path wav, List<String> codings)
      throws IOException, InterruptedException {
    List<byte[]> originals = new ArrayList<>();
    for (String coding : codings) {
      Path made = folder.resolve("whole-coded." + ending);
      List<String> command =
          new ArrayList<>(List.of("ffmpeg", "-v", "error", "-y", "-i", "" + wav));
      command.addAll(List.of(coding.split(" ")));
      command.add("" + made);
      TalkTakes.call(command);
      originals.add(Files.readAllBytes(made));
      Files.delete(made);
    }
    kinds.put(name, new Kind(originals, false, ending, this::review));
  }

  private void texts(VirtualPlayer player, Path wav) throws IOException {
    Path json = folder.resolve("whole.json");
    DrillFile.write(json, drill);
    kinds.put(
        "drill",
        text(
            Files.readAllBytes(json),
            file ->
                review(
                    new Recording(
                        wav,
                        DrillFile.read(file),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        Channel.AUTO))));
    Performance sequence = player.calibration(Tuning.STANDARD, FRETS, 82);
    Plucks plucks = new Plucks(sequence.sampleRate());
    plucks.feed(sequence.samples(), 0, sequence.samples().length);
    GuitarFile.write(
        json,
        new Calibration(Tuning.STANDARD, FRETS).learn(plucks.finish()).profile(),
        Tuning.STANDARD);
    kinds.put(
        "guitar",
        text(
            Files.readAllBytes(json),
            file ->
                review(
                    new Recording(
                        wav,
                        drill,
                        Optional.of(GuitarFile.read(file, drill.tuning())),
                        OptionalDouble.empty(),
                        Channel.AUTO))));
    String mistakes =
        "[{\"kind\": \"wrong\", \"step\": 5, \"midi\": 50}, {\"kind\": \"skip\", \"step\": 9},"
            + " {\"kind\": \"late\", \"step\": 12, \"ms\": 120}, {\"kind\": \"shift\", \"round\":"
            + " 0, \"direction\": \"up\", \"string\": null}]";
    kinds.put(
        "mistakes",
        text(
            mistakes.getBytes(StandardCharsets.UTF_8),
            file -> MistakesFile.read(file, drill.route())));
    SettingsFile settings = SettingsFile.at(folder.resolve("whole-settings.json"));
    settings.put("key", "A major");
    settings.put("tempo", 80);
    settings.put("click", true);
    settings.save();
    kinds.put("settings", text(Files.readAllBytes(settings.path()), MutatedFiles::readSettings));
    Files.delete(json);
  }

  private static Kind text(byte[] original, Reading reading) {
    return new Kind(List.of(original), true, "json", reading);
  }

  private static void readSettings(Path file) throws IOException {
    SettingsFile settings = SettingsFile.at(file);
    settings.whole("tempo", 20, 400);
    settings.number("tempo", 20, 400);
    settings.flag("click", false);
    settings.text("key");
    settings.drill("drill");
    Path aside = file.resolveSibling(file.getFileName() + ".broken-1");
    if (Files.deleteIfExists(aside)) {
      throw new BadInput(settings.complaint().orElseThrow());
    }
  }

  private void review(Path file) {
    review(new Recording(file, drill, Optional.empty(), OptionalDouble.empty(), Channel.AUTO));
  }

  private static void review(Recording recording) {
    RecordingReviewer.review(recording, (seconds, share) -> {}, () -> false);
  }

  /** The kinds of file. */
  public List<String> kinds() {
    return List.copyOf(kinds.keySet());
  }

  /**
   * Spoils a file and reads it.
   *
   * @param seed what is done to it follows from this alone
   * @throws Exception a fault of the program: anything but a refusal in one line
   */
  public Outcome read(String name, long seed) throws Exception {
    Kind kind = kinds.get(name);
    Path file = folder.resolve("spoilt-" + name.replace(' ', '-') + "." + kind.ending());
    Files.write(file, spoilt(kind, new Random(seed * 31 + name.hashCode())));
    try {
      kind.reading().of(file);
      return Outcome.READ;
    } catch (BadInput refused) {
      if (refused.getMessage().lines().count() != 1) {
        throw new IllegalStateException("not one line: " + refused.getMessage(), refused);
      }
      return Outcome.REFUSED;
    } finally {
      Files.deleteIfExists(file);
    }
  }

  private static byte[] spoilt(Kind kind, Random random) {
    byte[] file = kind.originals().get(random.nextInt(kind.originals().size())).clone();
    for (int times = 1 + random.nextInt(3); times > 0; times--) {
      file =
          kind.text() && random.nextInt(4) > 0
              ? spoiltText(file, random)
              : spoiltBytes(file, random);
    }
    return file;
  }

  private static byte[] spoiltBytes(byte[] file, Random random) {
    if (file.length < 8) {
      return file;
    }
    int within = random.nextInt(3) > 0 ? Math.min(file.length, HEAD_BYTES) : file.length;
    int at = random.nextInt(within);
    switch (random.nextInt(6)) {
      case 0 -> file[at] ^= (byte) (1 << random.nextInt(8));
      case 1 -> file[at] = (byte) random.nextInt(256);
      case 2 -> {
        byte with = new byte[] {0, (byte) 0xff, 0x7f, (byte) 0x80}[random.nextInt(4)];
        Arrays.fill(file, at, Math.min(file.length, at + 1 + random.nextInt(8)), with);
      }
      case 3 -> {
        return Arrays.copyOf(file, at);
      }
      case 4 -> {
        return without(file, at, Math.min(file.length, at + 1 + random.nextInt(64)));
      }
      default -> {
        return doubled(file, at, Math.min(file.length, at + 1 + random.nextInt(64)));
      }
    }
    return file;
  }

  private static byte[] without(byte[] file, int from, int to) {
    byte[] left = Arrays.copyOf(file, file.length - (to - from));
    System.arraycopy(file, to, left, from, file.length - to);
    return left;
  }

  private static byte[] doubled(byte[] file, int from, int to) {
    byte[] longer = Arrays.copyOf(file, file.length + (to - from));
    System.arraycopy(file, from, longer, to, file.length - from);
    return longer;
  }

  private static byte[] spoiltText(byte[] file, Random random) {
    String text = new String(file, StandardCharsets.UTF_8);
    Pattern what = random.nextBoolean() ? NUMBER : TOKEN;
    List<MatchResult> places = what.matcher(text).results().toList();
    if (places.isEmpty()) {
      return file;
    }
    MatchResult place = places.get(random.nextInt(places.size()));
    String[] others = what == NUMBER ? NUMBERS : VALUES;
    String other = random.nextInt(5) == 0 ? "" : others[random.nextInt(others.length)];
    String spoilt = text.substring(0, place.start()) + other + text.substring(place.end());
    return spoilt.getBytes(StandardCharsets.UTF_8);
  }
}
