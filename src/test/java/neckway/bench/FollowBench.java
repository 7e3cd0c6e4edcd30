package neckway.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import neckway.bench.Measured.Said;
import neckway.player.settings.PlayerSettings.Condition;

/**
 * Ear and follower on one family of takes, to look into what they say wrongly.
 *
 * <pre>FollowBench FAMILY [N] [--seed S] [--ordinary] [--errors]</pre>
 *
 * <p>FAMILY is one of {@code clean}, {@code dirty}, {@code legato}, {@code low} and {@code
 * low-dirty} (tunings that go below E2), {@code stitched} (recorded notes), {@code crowded} (two
 * slips within two steps), {@code click} and {@code notes} (first beat to be found), {@code
 * semitone}, {@code random}, {@code speech}, {@code noise} (strangers). {@code --ordinary}:
 * ordinary takes instead of hard ones. {@code --errors} lists, for each take that has any, mistakes
 * made and said where they differ, verdicts given late, and what strangers' notes were called
 * right.
 */
public final class FollowBench {
  private static final double LATE_SECONDS = 0.075;

  private FollowBench() {}

  public static void main(String[] args) throws Exception {
    if (args.length == 0) {
      System.err.println("FollowBench FAMILY [N] [--seed S] [--ordinary] [--errors]");
      System.exit(2);
    }
    List<String> words = Arrays.asList(args);
    int n = args.length > 1 && args[1].matches("\\d+") ? Integer.parseInt(args[1]) : 20;
    int at = words.indexOf("--seed");
    long seed = at < 0 ? 1 : Long.parseLong(words.get(at + 1));
    boolean given = !args[0].equals("click") && !args[0].equals("notes");
    Population population = words.contains("--ordinary") ? Population.ORDINARY : Population.HARD;
    Totals totals = new Totals();
    List<String> lines =
        Batch.run(
            args[0],
            makers(args[0], population, n, seed),
            played -> {
              Measured measured = FollowRun.of(played, given);
              if (given) {
                totals.add(played, measured);
              } else {
                totals.addPhase(played, measured);
              }
              return errors(played, measured, given);
            });
    if (words.contains("--errors")) {
      lines.stream().filter(l -> !l.isEmpty()).forEach(System.out::println);
    }
    System.out.println(sum(totals));
  }

  private static List<Callable<PlayedTake>> makers(String family, Population p, int n, long seed)
      throws IOException {
    return switch (family) {
      case "clean" -> Families.virtual(p, n, seed, Condition.CLEAN);
      case "dirty" -> Families.virtual(p, n, seed, Condition.DIRTY);
      case "legato" -> Families.virtual(p, n, seed, Condition.LEGATO);
      case "low" -> Families.low(p, n, seed, Condition.CLEAN);
      case "low-dirty" -> Families.low(p, n, seed, Condition.DIRTY);
      case "stitched" -> stitched(p, n, seed);
      case "crowded" -> Families.crowded(p, n, seed);
      case "click" -> Families.noFirstBeat(p, n, seed, true);
      case "notes" -> Families.noFirstBeat(p, n, seed, false);
      case "semitone" -> Families.semitoneUp(n, seed);
      case "random" -> Families.randomNotes(n, seed);
      case "speech" -> Families.speechLike(n, seed);
      case "noise" -> Families.noise(n, seed);
      default -> throw new IllegalArgumentException("no family of takes called " + family);
    };
  }

  private static List<Callable<PlayedTake>> stitched(Population p, int n, long seed)
      throws IOException {
    List<Callable<PlayedTake>> makers = new ArrayList<>();
    RecordedNotes recorded = RecordedNotes.load().orElseThrow();
    for (String guitar : recorded.guitars()) {
      makers.addAll(
          p == Population.ORDINARY
              ? Families.stitchedOrdinary(recorded, guitar, n, seed)
              : Families.stitched(recorded, guitar, n, seed, false));
    }
    return makers;
  }

  private static String sum(Totals t) {
    return String.format(
        "%d takes  F1@50 %.4f  F1@10 %.4f  mistakes made %d said %d found %d, invented %.2f per"
            + " 1,000  decided %s ms (below E2 %s)  slips %s slots  off %s ms  phase %s ms  x%.0f",
        t.takes,
        t.wide.f1(),
        t.narrow.f1(),
        t.mistakes.made(),
        t.mistakes.said(),
        t.mistakes.found(),
        t.inventedPerThousand(),
        t.rightDelayMs,
        t.lowRightDelayMs,
        t.slipDelaySlots,
        t.offErrorMs,
        t.phaseErrorMs,
        t.seconds / t.cpuSeconds);
  }

  private static String errors(PlayedTake played, Measured measured, boolean given) {
    List<String> lines = new ArrayList<>();
    boolean stranger =
        played.take().notes().isEmpty()
            || played.take().notes().stream().noneMatch(n -> isOfTheDrill(played, n));
    if (stranger) {
      for (Said s : measured.notes()) {
        if (s.verdict().equals(Measured.RIGHT)) {
          lines.add("  RIGHT " + text(s));
        }
      }
    } else if (!given) {
      lines.add(
          String.format(
              "  first beat %.4f said %.4f gap %.4f said %.4f by %s, player's own bias %.1f ms",
              played.firstBeat(),
              measured.firstBeat(),
              played.drill().pulse().slotSeconds(),
              measured.slotSeconds(),
              measured.gridSource(),
              1000 * Totals.biasSeconds(played)));
    } else {
      String made = played.mistakes().toString();
      String said = MistakeScore.said(played, measured).toString();
      MistakeScore score = MistakeScore.of(played, measured);
      if (score.found() < score.made() || score.invented() > 0) {
        lines.add("  MADE " + made + "\n  SAID " + said);
      }
      for (Said s : measured.notes()) {
        if (s.verdict().equals(Measured.RIGHT) && s.decided() - s.time() > LATE_SECONDS) {
          lines.add(String.format("  LATE by %.0f ms ", 1000 * (s.decided() - s.time())) + text(s));
        }
      }
    }
    return lines.isEmpty() ? "" : played.take().name() + "\n" + String.join("\n", lines);
  }

  private static boolean isOfTheDrill(PlayedTake played, TrueNote note) {
    return note.step().isPresent()
        && played.drill().route().steps().get(note.step().getAsInt()).midi() == note.midi();
  }

  private static String text(Said s) {
    return String.format(
        "%.3f midi %d step %s",
        s.time(), s.midi(), s.step().isPresent() ? s.step().getAsInt() : "-");
  }
}
