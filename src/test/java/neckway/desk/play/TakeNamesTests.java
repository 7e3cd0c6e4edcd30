package neckway.desk.play;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import neckway.drill.Drills;
import neckway.file.SettingsFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names of takes. */
class TakeNamesTests {
  private static final LocalDateTime NOW = LocalDateTime.of(2026, 10, 25, 2, 30);

  @TempDir Path folder;

  @Test
  void timeThatComesTwiceReplacesNoTake() throws IOException {
    SettingsFile file = SettingsFile.at(folder.resolve("settings.json"));
    file.put(RunSettings.TAKES, folder.resolve("takes").toString());
    RunSettings settings = new RunSettings(file);
    Path first = settings.takeFile(Drills.example(), NOW, 0);
    Files.createFile(first);
    LocalDateTime free = settings.freeTime(Drills.example(), NOW);
    assertThat(free).isEqualTo(NOW.plusSeconds(1));
    Files.createFile(settings.takeFile(Drills.example(), free, 0));
    assertThat(settings.freeTime(Drills.example(), NOW)).isEqualTo(NOW.plusSeconds(2));
    assertThat(settings.freeTime(Drills.example(), NOW.plusHours(1))).isEqualTo(NOW.plusHours(1));
  }
}
