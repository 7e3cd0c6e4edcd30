package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import neckway.bench.RecordedNotes;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.file.sound.Tools;
import neckway.hear.Tuner;
import neckway.neck.Pitch;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TuneCommandTests {
  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int tune(String... more) {
    List<String> args = new ArrayList<>(List.of("tune"));
    args.addAll(List.of(more));
    return Main.run(new PrintWriter(out), new PrintWriter(err), args.toArray(new String[0]));
  }

  /** A tone made by sox, which we did not write. */
  @Tag("programs")
  @Test
  void toneOfAnotherProgramIsToldToATenthOfACent() throws Exception {
    Tools.run(folder, "sox", "-n", "-r", "44100", "a.wav", "synth", "2", "sine", "109.5");
    assertThat(tune("--take", folder.resolve("a.wav").toString())).isZero();
    // 1200 log2(109.5 / 110) = -7.887
    assertThat(out.toString().lines()).singleElement().asString().contains("A2     -7.9 cents");
    assertThat(out.toString()).contains("string 5 (A2): tighten it");
  }

  @Tag("programs")
  @Test
  void stringsAreOfTheTuningAskedFor() throws Exception {
    Tools.run(folder, "sox", "-n", "-r", "48000", "d.flac", "synth", "2", "pluck", "73.416");
    String take = folder.resolve("d.flac").toString();
    assertThat(tune("--take", take, "--tuning", "D2 A2 D3 G3 B3 E4")).isZero();
    assertThat(out.toString()).contains("D2 ").contains("string 6 (D2)");
  }

  @Tag("programs")
  @Test
  void silenceSaysNothing() throws Exception {
    Tools.run(folder, "sox", "-n", "-r", "48000", "s.wav", "trim", "0", "1");
    assertThat(tune("--take", folder.resolve("s.wav").toString())).isZero();
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void missingRecordingIsOneLine() {
    assertThat(tune("--take", folder.resolve("no.wav").toString())).isEqualTo(2);
    assertThat(err.toString().lines()).singleElement().asString().contains("no such file");
  }

  @Test
  void tuningThatIsNoneIsOneLine() {
    assertThat(tune("--tuning", "H7 nothing")).isEqualTo(2);
    assertThat(err.toString().lines()).singleElement().asString().contains("--tuning");
  }

  /** Notes of real guitars recorded by others; their index's cents are another program's. */
  @Test
  void recordedNotesAreTheNoteThatTheyAre() throws IOException {
    Path index = RecordedNotes.folder().resolve("index.csv");
    Assumptions.assumeTrue(Files.exists(index), "no recorded notes here: not checked");
    List<Double> off = new ArrayList<>();
    int unheard = 0;
    List<String> lines = Files.readAllLines(index);
    for (int i = 1; i < lines.size(); i += 4) {
      String[] cells = lines.get(i).split(",", -1);
      if (cells[7].isEmpty()) {
        continue;
      }
      double wanted = Double.parseDouble(cells[2]) + Double.parseDouble(cells[7]) / 100;
      Double heard = firstReading(RecordedNotes.folder().resolve(cells[0]));
      if (heard == null) {
        unheard++;
      } else {
        off.add(Math.abs(100 * (heard - wanted)));
      }
    }
    Collections.sort(off);
    double median = off.get(off.size() / 2);
    double most = off.get(off.size() * 95 / 100);
    System.out.printf(
        "tuner on %d recorded notes: %d unheard, off the index by %.2f cents (median), %.2f (95 %%)"
            + ", %.1f at most%n",
        off.size() + unheard, unheard, median, most, off.get(off.size() - 1));
    assertThat(unheard).isLessThanOrEqualTo(off.size() / 50);
    assertThat(median).isLessThan(2);
    assertThat(most).isLessThan(12);
  }

  private static Double firstReading(Path file) {
    try (TakeReader reader = TakeReader.open(file, Channel.AUTO)) {
      Tuner tuner = new Tuner(reader.sampleRate());
      float[] block = new float[512];
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        if (tuner.process(block, 0, got) && tuner.steady()) {
          return Pitch.midiOfHz(tuner.pitchHz());
        }
      }
      return null;
    }
  }
}
