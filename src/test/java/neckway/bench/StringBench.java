package neckway.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import neckway.bench.StringNotes.Family;
import neckway.player.settings.Guitar;
import neckway.player.surroundings.Amp;

/**
 * How often the string of a single note is heard rightly, of all the strings that have its pitch.
 *
 * <pre>StringBench [recorded|runs|virtual|amps|hollowbody]... [--guitars N] [--seed S]
 *     [--ms 100,120,...] [--temper T] [--errors]</pre>
 *
 * <p>Prints a table, the distance of ln B by string, and how far the probabilities are to be
 * trusted.
 */
public final class StringBench {
  private StringBench() {}

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    double temper = Double.parseDouble(option(words, "--temper", "1"));
    int[] said = new int[16];
    int[] right = new int[16];
    System.out.println("| notes | ms | n | right | p>=.9 | of them right | surprise | ms a note |");
    for (Family family : families(words)) {
      for (String ms : option(words, "--ms", "100,120,150,200,300").split(",")) {
        StringScore score = new StringScore(family, Double.parseDouble(ms) / 1000, temper);
        System.out.println(score.line() + " " + score.confusions);
        System.out.println("   " + score.offs());
        if (words.contains("--errors")) {
          score.errors.forEach(System.out::println);
        }
        for (int i = 0; i < score.said.length; i++) {
          said[i] += score.said[i];
          right[i] += score.saidRight[i];
        }
      }
    }
    System.out.println("p below 0.5, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 1: right of said");
    for (int i = 0; i < 8; i++) {
      System.out.printf(
          Locale.ROOT, "  %d of %d: %.3f%n", right[i], said[i], (double) right[i] / said[i]);
    }
  }

  public static String option(List<String> words, String name, String otherwise) {
    int at = words.indexOf(name);
    return at < 0 ? otherwise : words.get(at + 1);
  }

  static List<Family> families(List<String> words) throws IOException {
    int guitars = Integer.parseInt(option(words, "--guitars", "3"));
    long seed = Long.parseLong(option(words, "--seed", "1"));
    List<Family> families = new ArrayList<>();
    if (words.contains("recorded")) {
      families.add(
          StringNotes.recorded(
              StringNotes.loadRecorded(), "solidbody", StringNotes.RECORDED_FRETS));
    }
    if (words.contains("hollowbody")) {
      families.add(
          StringNotes.recorded(StringNotes.loadRecorded(), "hollowbody", List.of(0, 1, 3, 7, 12)));
    }
    if (words.contains("runs")) {
      families.add(StringNotes.stitched(StringNotes.loadRecorded(), false, 4 * guitars, seed));
      families.add(StringNotes.stitched(StringNotes.loadRecorded(), true, 4 * guitars, seed));
    }
    for (Guitar.Model model : Guitar.Model.values()) {
      if (words.contains("virtual")) {
        families.add(StringNotes.virtual("clean", model, guitars, seed, s -> s));
        families.add(StringNotes.virtual("ringing", model, guitars, seed, StringNotes::ringing));
        families.add(StringNotes.virtual("room", model, guitars, seed, StringNotes::room));
        families.add(StringNotes.virtual("noise", model, guitars, seed, StringNotes::noise));
      }
      if (words.contains("amps") && model != Guitar.Model.NYLON) {
        for (Amp.Voicing v :
            List.of(Amp.Voicing.CLEAN, Amp.Voicing.EDGE, Amp.Voicing.CRUNCH, Amp.Voicing.LEAD)) {
          String name = v.name().toLowerCase(Locale.ROOT) + " amp";
          families.add(StringNotes.virtual(name, model, guitars, seed, StringNotes.amp(v)));
        }
      }
    }
    return families;
  }
}
