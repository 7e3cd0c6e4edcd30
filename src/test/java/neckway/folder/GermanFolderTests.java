package neckway.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.sound.Channel;
import neckway.recording.Beside;
import neckway.recording.Recording;
import neckway.recording.RecordingReviewer;
import neckway.recording.RecordingReviewer.Reviewed;
import neckway.words.GermanSaid;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said of recordings and folders of them, where German is spoken. */
class GermanFolderTests {
  private static final Path TAKE = Path.of("test-audio/clean-run.wav");
  private static final Path DRILL = Path.of("test-audio/clean-run.drill.json");

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "file\n",
        "name\nAda\n",
        "file,age\nx.wav,7\n",
        "file,name\n,Ada\n",
        "file,firstBeat\nx.wav,soon\n",
        "file,channel\nx.wav,middle\n",
        "file,name\nx.wav,\"Ada\n"
      })
  void listThatCannotBeUsedIsToldInGerman(String text) throws IOException {
    Path list = Files.writeString(folder.resolve("list.csv"), text);
    GermanSaid.complaint(() -> TakeList.ofList(list, Channel.AUTO));
  }

  @Test
  void foldersAreToldInGerman() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "");
    FolderReview.Terms none = new FolderReview.Terms(Optional.empty(), Optional.empty());
    GermanSaid.complaint(() -> TakeList.ofFolder(folder, Channel.AUTO));
    GermanSaid.complaint(() -> TakeList.ofFolder(file, Channel.AUTO));
    GermanSaid.complaint(() -> new FolderReview(List.of(), file.resolve("into"), none));
    GermanSaid.complaint(() -> new FolderReview(List.of(), folder.resolve("into"), none));
  }

  private static void review(Recording recording) {
    RecordingReviewer.review(recording, (seconds, share) -> {}, () -> false);
  }

  /**
   * The recording is 20 to 40 s long; seconds in prose have a comma, those of an option a point.
   */
  @Test
  void placesOutsideARecordingAreToldInGerman() {
    Recording take = Recording.of(TAKE, DrillFile.read(DRILL), Optional.empty());
    assertThat(
            GermanSaid.complaint(() -> review(take.heardAs(OptionalDouble.of(99.5), Channel.AUTO))))
        .contains("Ein erster Schlag bei 99,5 s liegt außerhalb dieser Aufnahme");
    assertThat(
            GermanSaid.complaint(
                () -> review(take.beside(new Beside(TAKE, OptionalDouble.of(99.5))))))
        .startsWith("--beside-starts 99.5: liegt außerhalb");
  }

  /** What is made of one recording and its review. */
  private static final class Reports implements FolderReview.Listener {
    private final FolderReports reports;
    private int reviewed;

    Reports(Path into) {
      reports = new FolderReports(into);
    }

    @Override
    public void done(int count, int of) {}

    @Override
    public synchronized void reviewed(TakeJob job, Reviewed now, String name) {
      reviewed++;
      reports.write(job, now.drill(), now.review(), name);
    }

    @Override
    public void unchanged(TakeJob job, Path review, String name) {
      reports.renew(job, review, name);
    }
  }

  private int reviewedIn(Tongue tongue) {
    Path into = folder.resolve("out");
    PlayableDrill drill = DrillFile.read(DRILL);
    FolderReview.Terms terms = new FolderReview.Terms(Optional.of(drill), Optional.empty());
    Reports reports = new Reports(into);
    List<TakeJob> jobs = TakeList.ofFolder(folder, Channel.AUTO);
    Wording.in(tongue, () -> new FolderReview(jobs, into, terms).run(reports, () -> false));
    return reports.reviewed;
  }

  @Test
  void folderReviewedInAnotherLanguageIsSaidAnewAsAWhole() throws IOException {
    Files.copy(TAKE, folder.resolve("take.wav"));
    Files.writeString(folder.resolve("broken.m4a"), "this is no sound");
    assertThat(reviewedIn(Tongue.ENGLISH)).isEqualTo(1);
    assertThat(reviewedIn(Tongue.ENGLISH)).isZero();
    assertThat(reviewedIn(Tongue.GERMAN)).isEqualTo(1);
    assertThat(reviewedIn(Tongue.GERMAN)).isZero();
    assertThat(folder.resolve("out/table.csv")).content().contains("Als Nächstes:");
    assertThat(folder.resolve("out/take.html"))
        .content()
        .contains("<html lang=\"de\"", "Als Nächstes:")
        .doesNotContain("Next:");
  }
}
