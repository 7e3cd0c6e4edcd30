package neckway.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import neckway.bench.NoteMatching.Criterion;
import neckway.bench.NoteMatching.Note;
import neckway.bench.NoteMatching.Score;
import neckway.file.sound.WavWriter;

/**
 * A general note tracker as an outside reference: {@code aubionotes} of aubio (Debian package
 * aubio-tools), with its own defaults. Its constant delay, the median of its offsets from the
 * truth, is taken out.
 */
public final class Aubio {
  private static final String PROGRAM = "aubionotes";
  private static final int LIMIT_SECONDS = 120;

  private Aubio() {}

  /** Whether it is installed. */
  public static boolean isThere() {
    return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(":"))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, PROGRAM)));
  }

  /**
   * What it made of a take.
   *
   * @param truth what there was to hear
   * @param notes as heard, its delay still in
   * @param seconds that it took, its start included
   */
  public record Hearing(List<Note> truth, List<Note> notes, double seconds) {}

  /** Runs it over a take. */
  public static Hearing listen(Take take) throws IOException, InterruptedException {
    Path wav = Files.createTempFile("neckway-bench", ".wav");
    Path said = Files.createTempFile("neckway-bench", ".txt");
    try {
      write(take, wav);
      long start = System.nanoTime();
      Process process =
          new ProcessBuilder(PROGRAM, "-i", wav.toString(), "-r", "0")
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .redirectOutput(said.toFile())
              .start();
      if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IOException(PROGRAM + " did not end: " + Files.readString(said));
      }
      String text = Files.readString(said);
      double seconds = (System.nanoTime() - start) / 1e9;
      List<Note> notes = new ArrayList<>();
      for (String line : text.split("\n")) {
        String[] cells = line.trim().split("\\s+");
        if (cells.length == 3) {
          notes.add(Note.at(Double.parseDouble(cells[1]), Double.parseDouble(cells[0])));
        }
      }
      return new Hearing(truth(take), notes, seconds);
    } finally {
      Files.delete(wav);
      Files.delete(said);
    }
  }

  private static void write(Take take, Path wav) throws IOException {
    try (WavWriter writer = new WavWriter(wav, (int) take.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(take.samples(), 0, take.samples().length);
      writer.finish();
    }
  }

  /** Median of its offsets over takes, seconds: pairs of the same pitch within 150 ms. */
  public static double delaySeconds(List<Hearing> hearings) {
    double[] offsets = hearings.stream().flatMapToDouble(Aubio::offsets).sorted().toArray();
    return offsets.length == 0 ? 0 : EarTotals.quantile(offsets, 0.5);
  }

  private static DoubleStream offsets(Hearing h) {
    int[] partners = NoteMatching.match(h.truth(), h.notes(), 0.15, Criterion.ONSET_PITCH);
    return IntStream.range(0, partners.length)
        .filter(i -> partners[i] >= 0)
        .mapToDouble(i -> h.notes().get(partners[i]).onset() - h.truth().get(i).onset());
  }

  /** Its score on takes once a delay is taken out. */
  public static Score score(List<Hearing> hearings, double delay, double tolerance) {
    Score sum = new Score(0, 0, 0);
    for (Hearing h : hearings) {
      List<Note> shifted =
          h.notes().stream().map(n -> Note.at(n.onset() - delay, n.pitch())).toList();
      sum = sum.plus(NoteMatching.score(h.truth(), shifted, tolerance, Criterion.ONSET_PITCH));
    }
    return sum;
  }

  /** As it sounds: nobody takes the guitar's offset off for it. */
  private static List<Note> truth(Take take) {
    return take.notes().stream()
        .map(n -> Note.at(n.time(), n.midi() + take.tuningCents() / 100))
        .toList();
  }
}
