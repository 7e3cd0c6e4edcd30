package neckway.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import neckway.desk.Screen.Place;
import neckway.drill.PlayableDrill;
import neckway.file.SettingsFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DeskTests {
  @TempDir private Path folder;
  private Desk desk;

  @BeforeEach
  void open() {
    desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  @Test
  void aDroppedDrillIsChosenWhateverIsInFront() throws IOException {
    desk.router().go(Place.READING);
    desk.open(
        file(
            "evening.JSON",
            "{\"format\":\"neckway-drill/1\",\"key\":\"C major\","
                + "\"route\":{\"shapes\":[\"minor\",\"major\"]}}"));
    assertThat(desk.drill().drill().key()).hasToString("C major");
    assertThat(desk.router().current().get()).isEqualTo(Place.CHOOSING);
    assertThat(desk.notice().get()).isEqualTo("opened evening.JSON");
  }

  @Test
  void aBrokenDrillIsSaidInOneLineAndTheOldOneStays() throws IOException {
    PlayableDrill before = desk.drill().drill();
    for (String text :
        List.of(
            "{\"format\":\"neckway-drill/1\",\"key\":\"C ma",
            "{\"format\":\"neckway-drill/1\",\"key\":\"C major\"}",
            "{\"format\":\"neckway-drill/1\",\"key\":\"C major\",\"route\":{\"shapes\":"
                + "[\"minor\",\"major\",\"dorian\",\"phrygian\",\"mixolydian\"],\"start\":17}}",
            "[]")) {
      desk.open(file("broken.json", text));
      assertThat(desk.drill().drill()).isEqualTo(before);
      assertThat(desk.notice().get()).contains("broken.json");
      assertThat(desk.notice().get().lines()).hasSize(1);
    }
  }

  @Test
  void anyOtherFileIsARecordingForWhoeverTakesThem() throws IOException {
    Path take = file("take.wav", "not really");
    desk.open(take);
    assertThat(desk.notice().get()).contains("take.wav");
    List<Path> taken = new ArrayList<>();
    desk.onRecording(taken::add);
    desk.open(take);
    assertThat(taken).containsExactly(take);
  }

  @Test
  void settingsCutInHalfAreSaidAndCostNothing() throws IOException {
    desk.keep();
    Path kept = folder.resolve("settings.json");
    String whole = Files.readString(kept);
    Files.writeString(kept, whole.substring(0, whole.length() / 2));
    Desk again = new Desk(SettingsFile.at(kept));
    assertThat(again.notice().get()).contains("usual settings");
    assertThat(again.drill().drill().key()).hasToString("A major");
    again.keep();
    assertThat(new Desk(SettingsFile.at(kept)).notice().get()).isEmpty();
  }

  @Test
  void settingsThatCannotBeKeptAreSaid() throws IOException {
    Files.createDirectory(folder.resolve("folder"));
    Desk other = new Desk(SettingsFile.at(folder.resolve("folder")));
    other.keep();
    assertThat(other.notice().get().lines()).hasSize(1);
  }

  @Test
  void aLargerWindowHasLargerText() {
    desk.look().text(200);
    desk.look().window(1920, 1080);
    assertThat(desk.look().fontPercent().get()).isEqualTo(270);
    desk.look().window(800, 560);
    assertThat(desk.look().fontPercent().get()).isEqualTo(200);
    desk.look().window(10_000, 10_000);
    assertThat(desk.look().fontPercent().get()).isEqualTo(350);
  }
}
