package neckway.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import neckway.calibration.Calibrated;
import neckway.calibration.Calibration;
import neckway.neck.BadInput;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import neckway.string.StringProfile;

/**
 * How near the learnt stiffness comes to the truth, over virtual guitars of each sort and
 * condition, and what a recorded guitar is learnt to be. Arguments: takes for each, and {@code
 * --errors}.
 */
public final class CalibrationBench {
  private static final int FIRST_SEED = 1;

  private CalibrationBench() {}

  /** Prints the table. */
  public static void main(String[] args) throws IOException {
    int takes = args.length > 0 ? Integer.parseInt(args[0]) : 10;
    boolean errors = args.length > 1;
    System.out.println(
        "guitar, player: |ln B - truth| median, 95 %, most; strings with |z| > 3; refused; findings");
    for (Condition condition : List.of(Condition.CLEAN, Condition.DIRTY)) {
      for (Guitar.Model model : Guitar.Model.values()) {
        virtual(model, condition, takes, errors);
      }
    }
    RecordedNotes.load().ifPresent(CalibrationBench::recorded);
  }

  private static void virtual(Guitar.Model model, Condition condition, int takes, boolean errors) {
    List<Double> off = new ArrayList<>();
    int refused = 0;
    int findings = 0;
    int far = 0;
    for (int seed = FIRST_SEED; seed < FIRST_SEED + takes; seed++) {
      PlayerSettings player = CalibrationTakes.player(model, seed, condition);
      Performance played =
          CalibrationTakes.played(player, Tuning.STANDARD, Calibration.USUAL_FRETS, seed);
      try {
        Calibrated learnt =
            CalibrationTakes.learnt(
                played.samples(), played.sampleRate(), Tuning.STANDARD, Calibration.USUAL_FRETS);
        findings += learnt.findings().size();
        for (StringProfile string : learnt.profile().strings()) {
          double truth = Math.log(player.guitar().stiffness().get(string.string().number() - 1));
          double d = string.lnStiffness() - truth;
          off.add(Math.abs(d));
          far += Math.abs(d) > 3 * string.spread() ? 1 : 0;
          if (errors && Math.abs(d) > 0.1) {
            System.out.printf(
                Locale.ROOT,
                "  seed %d string %s off %+.2f, spread %.2f%n",
                seed,
                string.string(),
                d,
                string.spread());
          }
        }
        if (errors) {
          learnt.findings().forEach(f -> System.out.println("  " + f.words()));
        }
      } catch (BadInput e) {
        refused++;
        if (errors) {
          System.out.println("  seed " + seed + ": " + e.getMessage());
        }
      }
    }
    Collections.sort(off);
    int n = off.size();
    System.out.printf(
        Locale.ROOT,
        "%-10s %-6s %.3f %.3f %.3f; %d of %d; %d of %d; %d%n",
        model,
        condition,
        n == 0 ? 0 : off.get(n / 2),
        n == 0 ? 0 : off.get(n * 95 / 100),
        n == 0 ? 0 : off.get(n - 1),
        far,
        n,
        refused,
        takes,
        findings);
  }

  private static void recorded(RecordedNotes notes) {
    List<List<Integer>> choices =
        List.of(List.of(1, 3, 7, 12), List.of(2, 5, 9), List.of(4, 8, 11));
    for (List<Integer> frets : choices) {
      float[] samples = CalibrationTakes.recorded(notes.of("solidbody"), frets, 0);
      Calibrated learnt =
          CalibrationTakes.learnt(samples, RecordedNotes.SAMPLE_RATE, Tuning.STANDARD, frets);
      StringBuilder line = new StringBuilder("solidbody, frets " + frets + ":");
      for (StringProfile string : learnt.profile().strings()) {
        line.append(
            String.format(
                Locale.ROOT,
                " %.1f+-%.0f%%",
                1e6 * Math.exp(string.lnStiffness()),
                100 * string.spread()));
      }
      System.out.println(line);
      learnt.findings().forEach(f -> System.out.println("  " + f.words()));
    }
  }
}
