package neckway.bench;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jflac.FLACDecoder;
import org.jflac.PCMProcessor;
import org.jflac.metadata.StreamInfo;
import org.jflac.util.ByteData;

/**
 * Single notes of real guitars, recorded by others: a folder with FLAC files and an {@code
 * index.csv}. Named by the environment variable {@code NECKWAY_GUITARS}, else {@code
 * ../shared/guitars}.
 */
public final class RecordedNotes {
  /** A note whose indexed and measured onsets differ by more is left out, seconds. */
  static final double ONSET_DOUBT_SECONDS = 0.003;

  /**
   * One recording.
   *
   * @param file relative to the folder
   * @param midi MIDI note number
   * @param string as players number them; 0 where only the pitch is known
   * @param fret 0 for the open string
   * @param onsetFrame as indexed
   * @param measuredOnsetFrame first sample over 5 % of the peak of the first 30 ms, and over the
   *     noise before it
   * @param earlyPeak the peak of the first 30 ms
   * @param samples 44.1 kHz
   */
  public record Recording(
      String file,
      int midi,
      int string,
      int fret,
      int onsetFrame,
      int measuredOnsetFrame,
      float earlyPeak,
      float[] samples) {
    double onsetDoubtSeconds() {
      return Math.abs(measuredOnsetFrame - onsetFrame) / SAMPLE_RATE;
    }
  }

  static final double SAMPLE_RATE = 44_100;

  private final Map<String, List<Recording>> byGuitar = new TreeMap<>();
  private final List<String> leftOut = new ArrayList<>();

  private RecordedNotes() {}

  /** Where the recordings are looked for. */
  public static Path folder() {
    String named = System.getenv("NECKWAY_GUITARS");
    return Path.of(named == null || named.isBlank() ? "../shared/guitars" : named);
  }

  /** Loads all of them; empty where the folder is not there. */
  public static Optional<RecordedNotes> load() throws IOException {
    Path index = folder().resolve("index.csv");
    if (!Files.isRegularFile(index)) {
      return Optional.empty();
    }
    RecordedNotes notes = new RecordedNotes();
    List<String> lines = Files.readAllLines(index);
    List<String> heads = List.of(lines.get(0).split(","));
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      notes.add(
          cells[heads.indexOf("guitar")],
          read(
              cells[heads.indexOf("file")],
              Integer.parseInt(cells[heads.indexOf("midi")]),
              number(cells[heads.indexOf("string")]),
              number(cells[heads.indexOf("fret")]),
              Double.parseDouble(cells[heads.indexOf("onsetSeconds")])));
    }
    return Optional.of(notes);
  }

  private static int number(String cell) {
    return cell.isEmpty() ? 0 : Integer.parseInt(cell);
  }

  private void add(String guitar, Recording r) {
    if (r.onsetDoubtSeconds() > ONSET_DOUBT_SECONDS) {
      leftOut.add(
          String.format(
              "%s: indexed onset %.1f ms, measured %.1f ms",
              r.file(),
              1000 * r.onsetFrame() / SAMPLE_RATE,
              1000 * r.measuredOnsetFrame() / SAMPLE_RATE));
    } else {
      byGuitar.computeIfAbsent(guitar, g -> new ArrayList<>()).add(r);
    }
  }

  private static Recording read(String file, int midi, int string, int fret, double onsetSeconds)
      throws IOException {
    float[] samples = decode(folder().resolve(file));
    int onset = (int) Math.round(onsetSeconds * SAMPLE_RATE);
    float early = peak(samples, onset, onset + (int) (0.03 * SAMPLE_RATE));
    float before = peak(samples, 0, onset - (int) (0.001 * SAMPLE_RATE));
    float threshold = Math.max(0.05f * early, 1.5f * before);
    int measured = 0;
    while (measured < samples.length - 1 && Math.abs(samples[measured]) <= threshold) {
      measured++;
    }
    return new Recording(file, midi, string, fret, onset, measured, early, samples);
  }

  private static float peak(float[] samples, int from, int to) {
    float peak = 0;
    for (int i = Math.max(0, from); i < Math.min(to, samples.length); i++) {
      peak = Math.max(peak, Math.abs(samples[i]));
    }
    return peak;
  }

  /** Samples of a 16-bit mono FLAC file, its mean taken off. */
  private static float[] decode(Path file) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(200_000);
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
      FLACDecoder decoder = new FLACDecoder(in);
      decoder.addPCMProcessor(
          new PCMProcessor() {
            @Override
            public void processStreamInfo(StreamInfo info) {
              if (info.getBitsPerSample() != 16
                  || info.getChannels() != 1
                  || info.getSampleRate() != SAMPLE_RATE) {
                throw new IllegalArgumentException(file + " is not 16-bit mono at 44.1 kHz");
              }
            }

            @Override
            public void processPCM(ByteData pcm) {
              bytes.write(pcm.getData(), 0, pcm.getLen());
            }
          });
      decoder.decode();
    }
    byte[] b = bytes.toByteArray();
    float[] samples = new float[b.length / 2];
    double sum = 0;
    for (int i = 0; i < samples.length; i++) {
      samples[i] = ((b[2 * i] & 0xff) | (b[2 * i + 1] << 8)) / 32768f;
      sum += samples[i];
    }
    float mean = (float) (sum / samples.length);
    for (int i = 0; i < samples.length; i++) {
      samples[i] -= mean;
    }
    return samples;
  }

  /** Recordings left out, with the reason. */
  public List<String> leftOut() {
    return List.copyOf(leftOut);
  }

  /** Names of the guitars. */
  public List<String> guitars() {
    return List.copyOf(byGuitar.keySet());
  }

  /** All recordings of one guitar. */
  public List<Recording> of(String guitar) {
    return List.copyOf(byGuitar.get(guitar));
  }
}
