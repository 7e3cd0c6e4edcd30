package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import neckway.file.JsonFile;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.file.sound.WavWriter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A take into which a backing leaks, reviewed with the backing known. */
class ReviewBesideTests {
  private static final String[] DRILL = {
    "--key", "G major", "--shapes", "major,dorian", "--start", "3", "--up", "3", "--down", "5"
  };

  private static final double STARTS = 0.7;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  @TempDir private Path folder;
  private Path take;
  private Path backing;
  private int rate;
  private float[] guitar;
  private float[] leak;

  @BeforeEach
  void makeTakeAndBacking() throws IOException {
    Path alone = folder.resolve("alone.wav");
    Files.writeString(folder.resolve("slips.json"), "[{\"kind\": \"wrong\", \"step\": 6}]");
    assertThat(
            run(
                "perform",
                "--mistakes",
                folder.resolve("slips.json").toString(),
                "--seed",
                "7",
                "--out",
                alone.toString(),
                "--truth",
                folder.resolve("truth.json").toString()))
        .as(err.toString())
        .isZero();
    guitar = read(alone);
    float[] band = band((int) (0.7 * guitar.length));
    backing = folder.resolve("backing.wav");
    write(backing, band);
    leak = leaked(band);
    take = folder.resolve("take.wav");
    write(take, mixed(1));
    err.getBuffer().setLength(0);
  }

  private int run(String command, String... args) {
    List<String> all = new ArrayList<>(List.of(command));
    all.addAll(List.of(DRILL));
    all.addAll(List.of(args));
    out.getBuffer().setLength(0);
    return Main.run(new PrintWriter(out), new PrintWriter(err), all.toArray(String[]::new));
  }

  private float[] read(Path file) {
    try (TakeReader reader = TakeReader.open(file, Channel.MIX)) {
      rate = reader.sampleRate();
      float[] all = new float[(int) reader.frames().orElseThrow()];
      float[] block = new float[2048];
      int at = 0;
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        System.arraycopy(block, 0, all, at, got);
        at += got;
      }
      return all;
    }
  }

  private void write(Path file, float[] samples) throws IOException {
    try (WavWriter writer = new WavWriter(file, rate, WavWriter.Coding.FLOAT_32)) {
      writer.write(samples, 0, samples.length);
      writer.finish();
    }
  }

  /** Chords that die away, in no key of the drill's, and a stroke of noise with each; invented. */
  private float[] band(int frames) {
    float[] x = new float[frames];
    Random random = new Random(3);
    for (int from = 0; from < frames; from += rate / 2 + random.nextInt(rate / 8)) {
      double root = 100 * Math.pow(2, random.nextInt(12) / 12.0);
      for (int i = 0; i < rate && from + i < frames; i++) {
        double t = i / (double) rate;
        double sum = 0;
        for (double part : new double[] {1, 1.26, 1.5, 2, 3}) {
          sum += Math.sin(2 * Math.PI * root * part * t) * Math.exp(-3 * t);
        }
        x[from + i] += (float) (0.06 * sum + 0.1 * random.nextGaussian() * Math.exp(-40 * t));
      }
    }
    for (int i = 0; i < rate; i++) {
      x[frames - 1 - i] *= i / (float) rate;
    }
    return x;
  }

  private float[] leaked(float[] band) {
    float[] y = new float[guitar.length];
    Random random = new Random(4);
    for (int echo = 0; echo < 60; echo++) {
      double delay = echo == 0 ? 0.003 : 0.003 + 0.1 * random.nextDouble();
      double gain = echo == 0 ? 0.3 : 0.08 * random.nextGaussian() * Math.exp(-40 * delay);
      int shift = (int) ((STARTS + delay) * rate);
      for (int i = shift; i < y.length && i - shift < band.length; i++) {
        y[i] += (float) (gain * band[i - shift]);
      }
    }
    return y;
  }

  private float[] mixed(float guitarGain) {
    float[] x = new float[guitar.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = guitarGain * guitar[i] + leak[i];
    }
    return x;
  }

  private JsonNode review(String... more) {
    Path json = folder.resolve("review.json");
    String beat = JsonFile.read(folder.resolve("truth.json")).get("grid").get("firstBeat").asText();
    List<String> args =
        new ArrayList<>(List.of(take.toString(), "--first-beat", beat, "--json", json.toString()));
    args.addAll(List.of(more));
    assertThat(run("review", args.toArray(String[]::new))).as(err.toString()).isZero();
    return JsonFile.read(json);
  }

  @Test
  void withTheBackingKnownOnlyTheGuitarIsHeard() {
    JsonNode without = review();
    assertThat(without.get("notes").size()).as("the leak is heard").isGreaterThan(25);
    JsonNode with = review("--beside", backing.toString());
    assertThat(err.toString()).contains("sounds in the take from 0.70 s on and was taken out");
    assertThat(with.get("summary").get("notes").asInt()).isEqualTo(25);
    assertThat(with.get("summary").get("right").asInt()).isEqualTo(24);
    assertThat(with.get("summary").get("wrong").asInt()).isEqualTo(1);
    assertThat(with.get("attempts").asInt()).isEqualTo(1);
  }

  @Test
  void aStartThatIsGivenRoughlyIsEnough() {
    JsonNode with = review("--beside", backing.toString(), "--beside-starts", "0.9");
    assertThat(err.toString()).contains("from 0.70 s on");
    assertThat(with.get("summary").get("right").asInt()).isEqualTo(24);
  }

  @Test
  void withoutAGuitarHardlyANoteIsLeftAndNoneIsRight() throws IOException {
    float[] room = mixed(0);
    Random hiss = new Random(6);
    for (int i = 0; i < room.length; i++) {
      room[i] += (float) (0.0005 * hiss.nextGaussian());
    }
    write(take, room);
    assertThat(review().get("notes")).as("the leak is heard").hasSizeGreaterThan(2);
    JsonNode with = review("--beside", backing.toString());
    // measured: 2, both where a chord breaks in
    assertThat(with.get("notes").size()).isLessThanOrEqualTo(2);
    assertThat(with.get("summary").get("right").asInt()).isZero();
  }

  @Test
  void aBackingThatIsNotInTheTakeIsSaidToBeSoAndNothingChanges() throws IOException {
    write(take, guitar);
    JsonNode without = review();
    JsonNode with = review("--beside", backing.toString());
    assertThat(err.toString()).contains("is not heard in").contains("nothing was taken out");
    assertThat(with).isEqualTo(without);
  }

  @Test
  void whatCannotBeUsedIsSaidInOneLine() throws IOException {
    Path text = folder.resolve("words.wav");
    Files.writeString(text, "no sound at all");
    refused("words.wav", "--beside", text.toString());
    Path silent = folder.resolve("silent.wav");
    write(silent, new float[rate]);
    refused("is silent", "--beside", silent.toString());
    refused("lies outside", "--beside", backing.toString(), "--beside-starts", "-1");
    refused("lies outside", "--beside", backing.toString(), "--beside-starts", "999");
    refused("lies outside", "--beside", backing.toString(), "--beside-starts", "NaN");
    refused("--beside", "--beside-starts", "1");
    refused("nothere.wav", "--beside", folder.resolve("nothere.wav").toString());
  }

  private void refused(String because, String... more) {
    err.getBuffer().setLength(0);
    List<String> args = new ArrayList<>(List.of(take.toString()));
    args.addAll(List.of(more));
    assertThat(run("review", args.toArray(String[]::new))).isEqualTo(2);
    assertThat(err.toString()).contains(because);
    assertThat(err.toString().lines()).hasSize(1);
  }
}
