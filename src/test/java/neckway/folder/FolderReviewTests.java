package neckway.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.JsonFile;
import neckway.file.sound.Channel;
import neckway.neck.BadInput;
import neckway.recording.RecordingReviewer.Reviewed;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class FolderReviewTests {
  private static final Path TAKES = Path.of("test-audio");

  @TempDir private Path folder;
  private final List<String> reviewedNow = new ArrayList<>();
  private Path into;

  @BeforeEach
  void takes() throws IOException {
    into = folder.resolve("out");
    for (String name : List.of("clean-run", "three-slips")) {
      Files.copy(TAKES.resolve(name + ".wav"), folder.resolve(name + ".wav"));
      Files.copy(TAKES.resolve(name + ".drill.json"), folder.resolve(name + ".drill.json"));
    }
    Files.writeString(folder.resolve("broken.m4a"), "this is no sound");
  }

  private Path list(String... lines) throws IOException {
    return Files.writeString(folder.resolve("list.csv"), String.join("\n", lines) + "\n");
  }

  private FolderReview.Counted review(List<TakeJob> jobs, Optional<PlayableDrill> drill) {
    FolderReview.Terms terms = new FolderReview.Terms(drill, Optional.empty());
    return new FolderReview(jobs, into, terms)
        .run(
            new FolderReview.Listener() {
              @Override
              public void done(int count, int of) {
                assertThat(count).isBetween(1, of);
              }

              @Override
              public void reviewed(TakeJob job, Reviewed reviewed, String name) {
                synchronized (reviewedNow) {
                  reviewedNow.add(name);
                }
              }
            },
            () -> false);
  }

  private List<String> table() throws IOException {
    return Files.readAllLines(into.resolve("table.csv"), StandardCharsets.UTF_8);
  }

  @Test
  void oneThatCannotBeReadStopsNoOtherAndTheOrderIsTheLists() throws IOException {
    Path list =
        list(
            "file,drill,name",
            "three-slips.wav,three-slips.drill.json,\"Bo, the second\"",
            "broken.m4a,clean-run.drill.json,Di",
            "clean-run.wav,clean-run.drill.json,Ada",
            "clean-run.wav,missing.drill.json,Ed");
    FolderReview.Counted counted = review(TakeList.ofList(list, Channel.AUTO), Optional.empty());
    assertThat(counted).isEqualTo(new FolderReview.Counted(2, 2));
    List<String> table = table();
    assertThat(table.get(0))
        .isEqualTo(
            "file,name,status,drill,notes,right,wrong,extra,repeat,skipped,shiftsMade,"
                + "shiftsPlanned,offMsMedian,offMsSpread,firstAdvice");
    assertThat(table.get(1))
        .startsWith("three-slips.wav,\"Bo, the second\",ok,")
        .contains("First:");
    assertThat(table.get(2)).startsWith("broken.m4a,Di,").contains("is not a sound file");
    assertThat(table.get(3)).startsWith("clean-run.wav,Ada,ok,");
    assertThat(table.get(4)).contains("missing.drill.json: there is no such file");
    JsonNode review = JsonFile.read(into.resolve("three-slips.review.json"));
    assertThat(review.path("format").asText()).isEqualTo("neckway-review/1");
    assertThat(table.get(1)).contains("," + review.path("summary").path("right").asInt() + ",");
    JsonNode takes = JsonFile.read(into.resolve("table.json")).path("takes");
    assertThat(takes.path(0).path("attempts").asInt()).isEqualTo(review.path("attempts").asInt());
    assertThat(takes.path(1).path("attempts").isNull()).isTrue();
  }

  @Test
  void secondCallDoesOnlyWhatChanged() throws IOException {
    PlayableDrill drill = DrillFile.read(folder.resolve("clean-run.drill.json"));
    List<TakeJob> jobs = TakeList.ofFolder(folder, Channel.AUTO);
    review(jobs, Optional.of(drill));
    List<String> first = table();
    assertThat(reviewedNow).containsExactlyInAnyOrder("clean-run", "three-slips");
    reviewedNow.clear();
    JsonNode json = JsonFile.read(into.resolve("table.json"));
    assertThat(json.path("takes")).filteredOn(t -> t.path("attempts").asInt() == 1).hasSize(2);
    review(jobs, Optional.of(drill));
    assertThat(reviewedNow).isEmpty();
    assertThat(table()).isEqualTo(first);
    assertThat(JsonFile.read(into.resolve("table.json"))).isEqualTo(json);
    Files.copy(
        TAKES.resolve("missed-shift.wav"),
        folder.resolve("clean-run.wav"),
        java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    review(jobs, Optional.of(drill));
    assertThat(reviewedNow).containsExactly("clean-run");
    Files.delete(into.resolve("three-slips.review.json"));
    reviewedNow.clear();
    review(jobs, Optional.of(drill));
    assertThat(reviewedNow).containsExactly("three-slips");
  }

  @Test
  void drillThatIsNotNamedIsRecognisedAmongTheOthersAndIsAGuess() throws IOException {
    Path list =
        list(
            "file,drill",
            "clean-run.wav,clean-run.drill.json",
            "three-slips.wav,three-slips.drill.json",
            "copy/three-slips.wav,");
    Files.createDirectory(folder.resolve("copy"));
    Files.copy(TAKES.resolve("three-slips.wav"), folder.resolve("copy/three-slips.wav"));
    review(TakeList.ofList(list, Channel.AUTO), Optional.empty());
    String title = DrillFile.read(folder.resolve("three-slips.drill.json")).title();
    assertThat(table().get(3)).contains(title + " (a guess)");
    assertThat(into.resolve("three-slips-2.review.json")).exists();
  }

  @Test
  void otherDrillOfTheListThanTheOneNamedIsRecognisedAndIsAGuess() throws IOException {
    Path list =
        list(
            "file,drill",
            "clean-run.wav,three-slips.drill.json",
            "copy/clean-run.wav,clean-run.drill.json",
            "three-slips.wav,three-slips.drill.json");
    Files.createDirectory(folder.resolve("copy"));
    Files.copy(TAKES.resolve("clean-run.wav"), folder.resolve("copy/clean-run.wav"));
    review(TakeList.ofList(list, Channel.AUTO), Optional.empty());
    String title = DrillFile.read(folder.resolve("clean-run.drill.json")).title();
    assertThat(table().get(1)).contains(title + " (a guess)");
    assertThat(table().get(2)).contains(title).doesNotContain("a guess");
    assertThat(table().get(3)).doesNotContain("a guess");
    JsonNode words = JsonFile.read(into.resolve("clean-run.review.json")).at("/summary/words");
    assertThat(words.get(0).asText()).contains("it sounds like " + title);
    assertThat(words.get(1).asText()).contains("that is a guess");
    reviewedNow.clear();
    review(TakeList.ofList(list, Channel.AUTO), Optional.empty());
    assertThat(reviewedNow).isEmpty();
    assertThat(table().get(1)).contains(title + " (a guess)");
  }

  /** Another drill on the list changes nothing of a take that fits the one named for it. */
  @Test
  void drillAddedToTheListReadsNothingAnewThatFitsItsOwn() throws IOException {
    String first = "clean-run.wav,clean-run.drill.json";
    review(TakeList.ofList(list("file,drill", first), Channel.AUTO), Optional.empty());
    reviewedNow.clear();
    Path longer = list("file,drill", first, "three-slips.wav,three-slips.drill.json");
    review(TakeList.ofList(longer, Channel.AUTO), Optional.empty());
    assertThat(reviewedNow).containsExactly("three-slips");
  }

  @Test
  void stoppedItKeepsWhatIsDone() throws IOException {
    PlayableDrill drill = DrillFile.read(folder.resolve("clean-run.drill.json"));
    FolderReview.Terms terms = new FolderReview.Terms(Optional.of(drill), Optional.empty());
    new FolderReview(TakeList.ofFolder(folder, Channel.AUTO), into, terms)
        .run(
            new FolderReview.Listener() {
              @Override
              public void done(int count, int of) {}

              @Override
              public void reviewed(TakeJob job, Reviewed reviewed, String name) {}
            },
            () -> true);
    assertThat(table()).hasSize(4).filteredOn(l -> l.contains("not reviewed yet")).hasSize(3);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "name;its first line has no column file",
        "file,colour;the column colour is not known",
        "file;names no recording",
        "file,firstBeat|a.wav,soon;line 2: firstBeat: soon",
        "file,channel|a.wav,middle;line 2: channel: middle",
        "file,name|,Ada;line 2: file: is empty",
      })
  void listThatCannotBeUsedIsToldInOneLine(String text, String line) throws IOException {
    Path list = list(text.split("\\|"));
    assertThatThrownBy(() -> TakeList.ofList(list, Channel.AUTO))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(line)
        .message()
        .doesNotContain("\n");
  }
}
