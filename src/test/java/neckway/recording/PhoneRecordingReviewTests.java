package neckway.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.sound.Tools;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedStep;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A take sent by phone is told what the same take as WAV is told. */
@Tag("programs")
class PhoneRecordingReviewTests {
  private static final Path TAKES = Path.of("test-audio").toAbsolutePath();
  private static final double MOST_APART_MS = 3;

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "three-slips, a.m4a, -b:a 128k",
    "three-slips, a.opus, -b:a 64k",
    "late-landing, a.m4a, -b:a 128k",
    "late-landing, a.opus, -b:a 64k"
  })
  void verdictsAreThoseOfTheWav(String take, String name, String options) throws Exception {
    Path wav = TAKES.resolve(take + ".wav");
    Tools.run(folder, ("ffmpeg -v error -y -i " + wav + " " + options + " " + name).split(" "));
    PlayableDrill drill = DrillFile.read(TAKES.resolve(take + ".drill.json"));
    Review ofWav = review(wav, drill);
    Review coded = review(folder.resolve(name), drill);
    assertThat(verdicts(coded)).isEqualTo(verdicts(ofWav));
    assertThat(coded.notes()).hasSameSizeAs(ofWav.notes());
    for (int i = 0; i < coded.notes().size(); i++) {
      ReviewedNote here = coded.notes().get(i);
      ReviewedNote there = ofWav.notes().get(i);
      assertThat(here.verdict()).as("note " + i).isEqualTo(there.verdict());
      assertThat(here.midi()).as("note " + i).isEqualTo(there.midi());
      assertThat(1000 * here.time())
          .as("note " + i)
          .isCloseTo(1000 * there.time(), within(MOST_APART_MS));
    }
  }

  private static List<String> verdicts(Review review) {
    return review.steps().stream().map(ReviewedStep::verdict).map(Object::toString).toList();
  }

  private static Review review(Path take, PlayableDrill drill) {
    return RecordingReviewer.review(
            Recording.of(take, drill, Optional.empty()), (seconds, share) -> {}, () -> false)
        .orElseThrow()
        .review();
  }
}
