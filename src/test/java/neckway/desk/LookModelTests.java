package neckway.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import neckway.file.SettingsFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LookModelTests {
  @TempDir private Path folder;

  @Test
  void textGoesFrom100To300AndNoFurther() {
    LookModel look = new LookModel(SettingsFile.at(folder.resolve("s.json")));
    look.smallerText();
    assertThat(look.textPercent().get()).isEqualTo(100);
    for (int i = 0; i < 20; i++) {
      look.largerText();
    }
    assertThat(look.textPercent().get()).isEqualTo(300);
  }

  @Test
  void everythingIsKept() {
    SettingsFile file = SettingsFile.at(folder.resolve("s.json"));
    LookModel look = new LookModel(file);
    look.text(175);
    look.dark().set(true);
    look.leftHanded().set(true);
    look.lowStringOnTop().set(true);
    look.closeUp().set(true);
    look.label().set(LookModel.Label.NOTE);
    look.put(file);
    file.save();
    LookModel again = new LookModel(SettingsFile.at(folder.resolve("s.json")));
    assertThat(again.textPercent().get()).isEqualTo(175);
    assertThat(again.dark().get()).isTrue();
    assertThat(again.leftHanded().get()).isTrue();
    assertThat(again.lowStringOnTop().get()).isTrue();
    assertThat(again.closeUp().get()).isTrue();
    assertThat(again.label().get()).isEqualTo(LookModel.Label.NOTE);
  }
}
