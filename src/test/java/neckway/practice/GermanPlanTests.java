package neckway.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import neckway.drill.PlayableDrill;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Tuning;
import neckway.words.EnglishWords;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;

/** Why something is played, in German: over logs that are made up by chance. */
class GermanPlanTests {
  private static final Neck NECK = new Neck(Key.parse("A minor"), Tuning.STANDARD, 22);
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);
  private static final int LOGS = 60;

  /** A log of a player who knows more or fewer of the joins. */
  private static Reach log(long seed) {
    Random random = new Random(seed);
    Reach empty = Reach.of(NECK, List.of(), 100, TODAY);
    List<PlayedRound> rounds = new ArrayList<>();
    double clean = 0.4 + 0.6 * random.nextDouble();
    for (int daysAgo = random.nextInt(60); daysAgo >= 0; daysAgo -= 1 + random.nextInt(6)) {
      LocalDate day = TODAY.minusDays(daysAgo);
      for (Progress join : empty.joins().subList(0, random.nextInt(empty.joins().size()))) {
        for (int i = random.nextInt(6); i > 0; i--) {
          rounds.add(
              new PlayedRound(
                  join.exercise(),
                  day.atStartOfDay().toInstant(ZoneOffset.UTC).plusSeconds(rounds.size()),
                  day,
                  random.nextDouble() < clean,
                  90 - random.nextInt(20),
                  OptionalDouble.empty()));
        }
      }
    }
    return Reach.of(NECK, rounds, 100, TODAY);
  }

  private static List<String> why(long seed) {
    Reach reach = log(seed);
    Optional<LocalDate> last =
        seed % 4 == 0 ? Optional.empty() : Optional.of(TODAY.minusDays(seed % 20));
    WarmUp.Day day = new WarmUp.Day(last, seed % 3 == 0 ? 60 * (seed % 4) : 0);
    List<String> why = new ArrayList<>();
    new PlanMaker(reach)
        .plan(90, seed % 5 == 0 ? Optional.empty() : drill(reach))
        .items()
        .forEach(item -> why.add(item.why()));
    new WarmUp(reach, day).plan(10).items().forEach(item -> why.add(item.why()));
    return why;
  }

  private static Optional<PlayableDrill> drill(Reach reach) {
    return new PlanMaker(reach)
        .plan(20, Optional.empty()).items().stream()
            .flatMap(item -> item.drill().stream())
            .findFirst();
  }

  @Test
  void everyReasonIsGermanAndThereAreAsMany() {
    Set<String> kinds = new TreeSet<>();
    for (long seed = 0; seed < LOGS; seed++) {
      long log = seed;
      List<String> german = Wording.in(Tongue.GERMAN, () -> why(log));
      assertThat(german).hasSameSizeAs(why(log));
      for (String why : german) {
        assertThat(EnglishWords.in(why)).as(why).isEmpty();
        assertThat(why).endsWith(".").doesNotContain("{", "  ", "..");
        kinds.add(why.replaceAll("\\d+|Dur|Moll|(dor|phryg|mixolyd)isch", "#"));
      }
    }
    assertThat(kinds.stream().collect(Collectors.joining("\n")))
        .contains("sitzt", "sauber", "Unterricht", "Pause", "Stimm zuerst", "Lagenwechsel");
    assertThat(kinds).hasSizeGreaterThan(20);
  }
}
