package neckway.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Takes lie with the music, as the file format of xdg-user-dirs (user-dirs.dirs(5)) has it. */
class MusicFolderTests {
  private static final Path HOME = Path.of("kim").toAbsolutePath();
  private static final Path USUAL = HOME.resolve("Music").resolve("Neckway");

  private static Path of(String... lines) {
    return MusicFolder.of(List.of(lines), HOME);
  }

  @Test
  void isNamedBelowTheHomeFolderOrFromTheRoot() {
    assertThat(of("# made by hand", "XDG_MUSIC_DIR=\"$HOME/Musik\""))
        .isEqualTo(HOME.resolve("Musik").resolve("Neckway"));
    assertThat(of("XDG_MUSIC_DIR=\"/disk/a \\\"b\\\"\""))
        .isEqualTo(Path.of("/disk/a \"b\"").resolve("Neckway"));
    assertThat(of("XDG_MUSIC_DIR=\"/one\"", "XDG_MUSIC_DIR=\"/two\""))
        .isEqualTo(Path.of("/two/Neckway"));
  }

  @Test
  void isTheUsualOneWhereNoneIsNamed() {
    assertThat(of()).isEqualTo(USUAL);
    assertThat(of("#XDG_MUSIC_DIR=\"/one\"")).isEqualTo(USUAL);
    assertThat(of("XDG_MUSIC_DIR=\"relative\"")).isEqualTo(USUAL);
    assertThat(of("XDG_DESKTOP_DIR=\"$HOME/Desktop\"")).isEqualTo(USUAL);
  }

  /** The format says that a folder which is the home folder stands for none. */
  @Test
  void isTheUsualOneWhereItIsTheHomeFolder() {
    assertThat(of("XDG_MUSIC_DIR=\"$HOME/\"")).isEqualTo(USUAL);
    assertThat(of("XDG_MUSIC_DIR=\"" + HOME + "\"")).isEqualTo(USUAL);
  }
}
