package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The window's command, in a process of its own that has no screen. */
@Tag("programs")
class DeskCommandTests {
  private record Ended(int status, String said) {}

  private static Ended withoutScreen(List<String> options, String... args)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), "neckway.cli.Main"));
    command.addAll(List.of(args));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().remove("DISPLAY");
    Process process = builder.start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return new Ended(process.exitValue(), said);
  }

  @Test
  void withoutAScreenOneLineSaysSoWithACommandAndWithoutOne() throws Exception {
    Ended desk = withoutScreen(List.of(), "desk");
    assertThat(desk.status()).isEqualTo(2);
    assertThat(desk.said().lines()).hasSize(1);
    assertThat(desk.said()).startsWith("neckway: there is no screen").contains("--help");
    assertThat(withoutScreen(List.of())).isEqualTo(desk);
  }

  @Test
  void theProgramSpeaksTheMachinesLanguage() throws Exception {
    String german = withoutScreen(List.of("-Duser.language=de"), "map", "--key", "H").said();
    assertThat(german).contains("ist keine Tonart");
    assertThat(withoutScreen(List.of("-Duser.language=de")).said()).contains("keinen Bildschirm");
    String french = withoutScreen(List.of("-Duser.language=fr"), "map", "--key", "H").said();
    assertThat(french).contains("is not a key");
  }

  @Test
  void otherCommandsLoadNothingOfTheWindow() throws Exception {
    List<String> tell = List.of("-Xlog:class+load:stdout");
    for (String[] args :
        List.of(
            new String[] {"--version"},
            new String[] {"--help"},
            new String[] {"desk", "--help"},
            new String[] {"map", "--key", "A major"})) {
      Ended ended = withoutScreen(tell, args);
      assertThat(ended.status()).isZero();
      assertThat(ended.said()).contains(" neckway.cli.Main ");
      assertThat(ended.said()).doesNotContain(" javafx.").doesNotContain(" neckway.desk.");
    }
  }
}
