package neckway.bench;

import java.io.File;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;
import neckway.bench.Measured.Said;
import neckway.follow.Compass;
import neckway.hear.Ear;

/**
 * Ear and follower on guitars that the ear was not tuned on: sampled ones, recorded ones with hum,
 * and notes of two partials.
 *
 * <pre>OtherGuitarsBench [N] [--seed S] [--only WORDS] [--fonts FILE,FILE] [--errors]</pre>
 *
 * <p>N takes (default 4) of each guitar, with seeds from S on (default 1). {@code --only}: rows
 * whose name has these words. {@code --fonts}: soundfonts in {@value #FONTS_FOLDER}, by default the
 * two of development. {@code --errors} lists what was heard, and what was said, otherwise than
 * played.
 */
public final class OtherGuitarsBench {
  private static final String FONTS_FOLDER = "/usr/share/sounds/sf2";
  private static final String DEVELOPMENT_FONTS = "TimGM6mb.sf2,FluidR3_GM.sf2";
  private static final int[] MAINS_HZ = {50, 60};

  private OtherGuitarsBench() {}

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int n = args.length > 0 && args[0].matches("\\d+") ? Integer.parseInt(args[0]) : 4;
    long seed = Long.parseLong(option(words, "--seed", "1"));
    Map<String, List<Callable<PlayedTake>>> families =
        families(n, seed, option(words, "--fonts", DEVELOPMENT_FONTS).split(","));
    String only = option(words, "--only", "");
    Totals all = new Totals();
    for (Map.Entry<String, List<Callable<PlayedTake>>> family : families.entrySet()) {
      if (family.getKey().contains(only)) {
        measure(family.getKey(), family.getValue(), all, words.contains("--errors"));
      }
    }
    System.out.println(line("all", all));
  }

  private static String option(List<String> words, String name, String otherwise) {
    int at = words.indexOf(name);
    return at < 0 ? otherwise : words.get(at + 1);
  }

  private static Map<String, List<Callable<PlayedTake>>> families(int n, long seed, String[] fonts)
      throws Exception {
    Map<String, List<Callable<PlayedTake>>> families = new LinkedHashMap<>();
    for (String font : fonts) {
      File file = new File(FONTS_FOLDER, font);
      if (!SoundfontTakes.rendererIsThere() || !file.isFile()) {
        System.out.println(font + " or fluidsynth is not there: not measured");
        continue;
      }
      SoundfontTakes takes = new SoundfontTakes(file);
      for (SoundfontTakes.Sound sound : SoundfontTakes.Sound.values()) {
        families.put(takes.name(sound), Families.list(n, seed, s -> takes.take(sound, s)));
      }
    }
    for (int mainsHz : MAINS_HZ) {
      families.put(
          "two partials " + mainsHz + " Hz",
          Families.list(n, seed, s -> FewPartialsTakes.take(mainsHz, s)));
    }
    RecordedNotes.load().ifPresent(recorded -> stitched(recorded, n, seed, families));
    return families;
  }

  private static void stitched(
      RecordedNotes recorded, int n, long seed, Map<String, List<Callable<PlayedTake>>> families) {
    StitchedTakes takes = new StitchedTakes(recorded);
    for (String guitar : recorded.guitars()) {
      for (int mainsHz : MAINS_HZ) {
        families.put(
            "recorded " + guitar + " " + mainsHz + " Hz",
            Families.list(n, seed, s -> humming(takes.ordinary(guitar, s), mainsHz, s)));
      }
    }
  }

  /** The same with hum 50 to 60 dB under its peak. */
  private static PlayedTake humming(PlayedTake played, int mainsHz, long seed) {
    Random random = new Random(seed * 41 + mainsHz);
    random.nextInt();
    Take dry = played.take();
    float[] samples = dry.samples().clone();
    float peak = 0;
    for (float s : samples) {
      peak = Math.max(peak, Math.abs(s));
    }
    double under = 50 + 10 * random.nextDouble();
    Dirt.hum(samples, dry.sampleRate(), mainsHz, peak * Math.pow(10, -under / 20), random);
    return played.withTake(
        new Take(
            dry.name() + " " + mainsHz + " Hz",
            dry.sampleRate(),
            samples,
            dry.notes(),
            dry.tuningCents(),
            dry.firstBeat(),
            dry.beatSeconds()));
  }

  private static void measure(
      String name, List<Callable<PlayedTake>> makers, Totals all, boolean errors) throws Exception {
    Totals totals = new Totals();
    List<String> texts =
        Batch.run(
            name,
            makers,
            played -> {
              Measured measured = FollowRun.of(played, true);
              totals.add(played, measured);
              all.add(played, measured);
              return errors ? errors(played, measured) : "";
            });
    texts.stream().filter(t -> !t.isEmpty()).forEach(System.out::println);
    System.out.println(line(name, totals));
  }

  private static String line(String name, Totals t) {
    return String.format(
        "%-34s %3d takes %5d notes  F1 %.4f  not made %5.1f per 1,000  slips found %d of %d",
        name,
        t.takes,
        t.wide.truth(),
        t.wide.f1(),
        t.inventedPerThousand(),
        t.mistakes.found(),
        t.mistakes.made());
  }

  private static String errors(PlayedTake played, Measured measured) {
    Compass compass = Compass.of(played.drill().tuning(), played.drill().frets());
    Ear ear = new Ear(played.take().sampleRate(), Math.max(Ear.LOWEST_HZ, compass.lowestHz()));
    List<String> lines = new ArrayList<>(new EarRun(played.take(), ear).errors());
    MistakeScore score = MistakeScore.of(played, measured);
    if (score.found() < score.made() || score.invented() > 0) {
      lines.add("  MADE " + played.mistakes() + "\n  SAID " + MistakeScore.said(played, measured));
      for (Said s : measured.notes()) {
        if (!s.verdict().equals(Measured.RIGHT)) {
          lines.add(
              String.format("  %s %.3f midi %d %s", s.verdict(), s.time(), s.midi(), s.step()));
        }
      }
    }
    lines.removeIf(l -> l.startsWith("  OFF"));
    return lines.isEmpty() ? "" : played.take().name() + "\n" + String.join("\n", lines);
  }
}
