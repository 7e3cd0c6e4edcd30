package neckway.review.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftVerdict;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.words.EnglishWords;
import neckway.words.Tongue;
import neckway.words.Wording;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** What must hold of the advice after any take. */
class AdvicePropertiesTests {
  private static final List<String> SHAPES =
      List.of("major", "major,dorian", "major,dorian,phrygian", "major,dorian,phrygian,mixolydian");
  private static final Pattern FRET =
      Pattern.compile("(?:fret (\\d+) on the|the open) (\\w+) string");
  private static final Pattern STRING = Pattern.compile("(\\w+) string\\b");

  @Property(tries = 300)
  void oneSentenceAtMostAndOnlyOfStepsAndStringsOfTheDrill(@ForAll long seed) {
    MadeUp take = random(new Random(seed));
    List<String> words = take.review().summary().words();
    List<String> advice =
        words.stream().filter(w -> w.startsWith("First:") || w.startsWith("Next:")).toList();
    assertThat(words).isNotEmpty();
    assertThat(advice).hasSizeLessThanOrEqualTo(1);
    advice.forEach(sentence -> ofTheDrill(take.drill(), sentence));
    assertThat(advice).noneMatch(sentence -> sentence.matches(".*\\d ms\\b.*"));
  }

  @Property(tries = 200)
  void germanSaysAsMuchAndIsGerman(@ForAll long seed) {
    MadeUp take = random(new Random(seed));
    List<Sentence> german =
        Wording.in(Tongue.GERMAN, () -> Words.sentences(take.drill(), take.review()));
    assertThat(german).hasSameSizeAs(Words.sentences(take.drill(), take.review()));
    for (Sentence sentence : german) {
      assertThat(EnglishWords.in(sentence.text())).as(sentence.text()).isEmpty();
      assertThat(sentence.text()).endsWith(".").doesNotContain("{", "  ", "..");
    }
  }

  private static void ofTheDrill(PlayableDrill drill, String sentence) {
    Set<String> strings =
        drill.tuning().strings().stream()
            .map(s -> Phrases.ordinal(s.number()))
            .collect(Collectors.toSet());
    Matcher string = STRING.matcher(sentence);
    while (string.find()) {
      assertThat(strings).as(sentence).contains(string.group(1));
    }
    Set<String> places =
        drill.route().steps().stream()
            .map(s -> Phrases.fretOnString(s.place()))
            .collect(Collectors.toSet());
    Matcher fret = FRET.matcher(sentence);
    while (fret.find() && !sentence.contains("stays silent")) {
      assertThat(places).as(sentence).contains(fret.group());
    }
  }

  /** Any mixture of slips, from none to one at most places. */
  private static MadeUp random(Random random) {
    PlayableDrill drill =
        Phrasebook.drill(
            SHAPES.get(random.nextInt(SHAPES.size())),
            1 + random.nextInt(3),
            50 + random.nextInt(100));
    MadeUp take = new MadeUp(drill);
    double often = random.nextDouble() * random.nextDouble();
    int steps = drill.route().steps().size();
    take.stopsAfter(random.nextBoolean() ? steps - 1 : random.nextInt(steps));
    for (int s = 0; s < steps; s++) {
      if (random.nextDouble() < often) {
        slip(take, s, random);
      }
    }
    for (int i = 0; i < drill.route().shifts().size(); i++) {
      if (random.nextDouble() < often) {
        shift(take, i, random);
      }
    }
    for (int t = random.nextInt(4); t > 0; t--) {
      take.tryBefore(random.nextInt(steps));
    }
    double unevenMs = often * 100;
    return take.leans(40 * random.nextGaussian() * often)
        .uneven(s -> unevenMs * Math.sin(2.4 * s * s))
        .beatFrom(random.nextBoolean() ? Grid.Source.GIVEN : Grid.Source.NOTES)
        .clock(random.nextBoolean() ? Clock.MEASURED : Clock.UNMEASURED);
  }

  private static void slip(MadeUp take, int step, Random random) {
    switch (random.nextInt(6)) {
      case 0 -> take.wrong(step, 1 + random.nextInt(3));
      case 1 -> take.leftOut(step);
      case 2 -> take.twice(step);
      case 3 -> take.besides(step, 40 + random.nextInt(30));
      case 4 -> take.waits(step, 50 + random.nextInt(1500));
      default -> take.unclear(step);
    }
  }

  private static void shift(MadeUp take, int index, Random random) {
    switch (random.nextInt(3)) {
      case 0 -> take.shift(index, ShiftVerdict.MISSED);
      case 1 -> take.shift(index, ShiftVerdict.UNHEARD);
      default -> take.moved(index, 1 + random.nextInt(6));
    }
  }
}
