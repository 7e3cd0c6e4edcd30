package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class PapersTests {
  @TempDir Path folder;

  @Test
  void theManualNamesEveryCommandAndItsOptions() {
    String manual = Papers.manual(Main.commandLine());
    Main.commandLine()
        .getSubcommands()
        .forEach(
            (name, command) -> {
              assertThat(manual).contains(".SS " + name.replace("-", "\\-") + "\n");
              command
                  .getCommandSpec()
                  .options()
                  .forEach(o -> assertThat(manual).contains(o.longestName().replace("-", "\\-")));
            });
    assertThat(manual).startsWith(".TH NECKWAY 1 ");
  }

  /** The same options give the same bytes, so that a package can be built again and compared. */
  @Test
  void isWrittenTheSameEachTime() throws IOException {
    Papers.main(new String[] {folder.resolve("one").toString()});
    Papers.main(new String[] {folder.resolve("two").toString()});
    for (String name : new String[] {"neckway.1", "neckway.bash"}) {
      assertThat(folder.resolve("one").resolve(name))
          .hasSameBinaryContentAs(folder.resolve("two").resolve(name));
    }
  }

  /** By bash itself: what is completed after "neckway re". */
  @Test
  @Tag("programs")
  void bashCompletesCommands() throws Exception {
    Papers.main(new String[] {folder.toString()});
    String script =
        "source '%s'; COMP_WORDS=(neckway re); COMP_CWORD=1; COMP_LINE='neckway re';"
            + " _complete_neckway; echo \"${COMPREPLY[@]}\"";
    Process bash =
        new ProcessBuilder("bash", "-c", String.format(script, folder.resolve("neckway.bash")))
            .redirectErrorStream(true)
            .start();
    String said = new String(bash.getInputStream().readAllBytes());
    assertThat(bash.waitFor(20, TimeUnit.SECONDS)).isTrue();
    assertThat(said).contains("review").contains("reach").contains("report");
    assertThat(Files.readString(folder.resolve("neckway.bash"))).doesNotContain("# Date:");
  }
}
