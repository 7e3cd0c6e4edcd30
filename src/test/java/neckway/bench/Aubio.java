package neckway.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import neckway.bench.NoteMatching.Criterion;
import neckway.bench.NoteMatching.Note;
import neckway.bench.NoteMatching.Score;
import neckway.file.WavWriter;

/**
 * A general note tracker as an outside reference: {@code aubionotes} of aubio (Debian package
 * aubio-tools), with its own defaults. Its constant delay, the median of its offsets from the
 * truth, is taken out.
 */
public final class Aubio {
  private static final String PROGRAM = "aubionotes";

  private Aubio() {}

  /** Whether it is installed. */
  public static boolean isThere() {
    return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(":"))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, PROGRAM)));
  }

  /**
   * What it made of a take.
   *
   * @param notes as heard, its delay still in
   * @param seconds that it took, its start included
   */
  public record Hearing(List<Note> notes, double seconds) {}

  /** Runs it over a take. */
  public static Hearing listen(Take take) throws IOException, InterruptedException {
    Path wav = Files.createTempFile("neckway-bench", ".wav");
    try {
      write(take, wav);
      long start = System.nanoTime();
      Process process =
          new ProcessBuilder(PROGRAM, "-i", wav.toString(), "-r", "0")
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      String text = new String(process.getInputStream().readAllBytes());
      process.waitFor();
      double seconds = (System.nanoTime() - start) / 1e9;
      List<Note> notes = new ArrayList<>();
      for (String line : text.split("\n")) {
        String[] cells = line.trim().split("\\s+");
        if (cells.length == 3) {
          notes.add(Note.at(Double.parseDouble(cells[1]), Double.parseDouble(cells[0])));
        }
      }
      return new Hearing(notes, seconds);
    } finally {
      Files.delete(wav);
    }
  }

  private static void write(Take take, Path wav) throws IOException {
    try (WavWriter writer = new WavWriter(wav, (int) take.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(take.samples(), 0, take.samples().length);
      writer.finish();
    }
  }

  /** Median of its offsets over takes, seconds: pairs of the same pitch within 150 ms. */
  public static double delaySeconds(List<Take> takes, List<Hearing> hearings) {
    List<Double> offsets = new ArrayList<>();
    for (int t = 0; t < takes.size(); t++) {
      List<Note> truth = truth(takes.get(t));
      List<Note> heard = hearings.get(t).notes();
      int[] partners = NoteMatching.match(truth, heard, 0.15, Criterion.ONSET_PITCH);
      for (int i = 0; i < partners.length; i++) {
        if (partners[i] >= 0) {
          offsets.add(heard.get(partners[i]).onset() - truth.get(i).onset());
        }
      }
    }
    double[] sorted = offsets.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    return sorted.length == 0 ? 0 : EarTotals.quantile(sorted, 0.5);
  }

  /** Its score on a take once a delay is taken out. */
  public static Score score(Take take, Hearing hearing, double delay, double tolerance) {
    List<Note> shifted =
        hearing.notes().stream().map(n -> Note.at(n.onset() - delay, n.pitch())).toList();
    return NoteMatching.score(truth(take), shifted, tolerance, Criterion.ONSET_PITCH);
  }

  /** As it sounds: nobody takes the guitar's offset off for it. */
  private static List<Note> truth(Take take) {
    return take.notes().stream()
        .map(n -> Note.at(n.time(), n.midi() + take.tuningCents() / 100))
        .toList();
  }
}
