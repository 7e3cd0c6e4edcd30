package neckway.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.desk.page.PageWords;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.page.PageModel;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;
import org.junit.jupiter.api.Test;

/** Sentence, terminal and window say the same of a take. */
class OnePageTests {
  private static final Path AUDIO = Path.of("test-audio");

  /** The take whose shift up is told to land a quarter of a second late. */
  @Test
  void aLateLandingIsOneNumberInSentenceTerminalAndWindow() {
    PlayableDrill drill = DrillFile.read(AUDIO.resolve("late-landing.drill.json"));
    Review review = review(drill, AUDIO.resolve("late-landing.wav"), 3.548);
    String sentences = String.join(" ", review.summary().words());
    assertThat(sentences).contains("landed 220 ms late");
    PageModel page = new PageModel(drill);
    page.review(review);
    int landing = review.shifts().get(0).planned().landingStep();
    assertThat(new PageWords().spoken(page, landing))
        .contains("220 ms late")
        .doesNotContain("early");
    String shown = printed(drill, review);
    List<String> figures =
        shown
            .lines()
            .filter(line -> line.strip().startsWith("ms "))
            .flatMap(line -> Arrays.stream(line.strip().substring(2).strip().split("\\s+")))
            .toList();
    assertThat(figures.get(landing)).isEqualTo("+220");
  }

  private static String printed(PlayableDrill drill, Review review) {
    StringWriter out = new StringWriter();
    new Page(drill, review).print(new PrintWriter(out, true));
    return out.toString();
  }

  private static Review review(PlayableDrill drill, Path take, double firstBeat) {
    try (TakeReader reader = TakeReader.open(take, Channel.AUTO)) {
      Run run =
          new Run(
              drill,
              Optional.empty(),
              reader.sampleRate(),
              OptionalDouble.of(firstBeat),
              Clock.MEASURED,
              verdict -> {});
      float[] block = new float[4096];
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        run.feed(block, 0, got);
      }
      return run.finish();
    }
  }
}
