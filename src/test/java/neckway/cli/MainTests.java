package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.PrintWriter;
import java.io.StringWriter;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.xpath.XPathFactory;
import neckway.neck.BadInput;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import picocli.CommandLine;
import picocli.CommandLine.Command;

class MainTests {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    return Main.run(new PrintWriter(out), new PrintWriter(err), args);
  }

  @Test
  void helpShowsWhatThereIs() {
    assertThat(run("--help")).isZero();
    assertThat(out.toString()).contains("Usage: neckway");
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void versionIsThatOfTheProjectFile() throws Exception {
    Document project =
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new File("pom.xml"));
    String version = XPathFactory.newInstance().newXPath().evaluate("/project/version", project);
    assertThat(version).matches("[0-9]+\\.[0-9]+\\.[0-9]+.*");
    assertThat(run("--version")).isZero();
    assertThat(out.toString().strip()).isEqualTo("neckway " + version);
  }

  @Test
  void unknownOptionIsOneLineWithAHint() {
    assertThat(run("--loud")).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(err.toString()).contains("--loud").contains("neckway --help");
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void anUnknownCommandIsSaid() {
    assertThat(run("dance")).isEqualTo(2);
    assertThat(err.toString().strip())
        .isEqualTo("neckway: unknown command \"dance\"; 'neckway --help' lists what it takes");
  }

  @Test
  void aValueOfTheWrongKindIsSaidPlainly() {
    assertThat(run("perform", "--out", "a.wav", "--seed", "x")).isEqualTo(2);
    assertThat(run("review", "a.wav", "--channel", "middle")).isEqualTo(2);
    assertThat(run("review", "a.wav", "--first-beat", "two")).isEqualTo(2);
    assertThat(err.toString().lines())
        .containsExactly(
            "neckway: --seed x: give a whole number; 'neckway perform --help' lists what it takes",
            "neckway: --channel middle: give left, right, mix or auto; 'neckway review --help' lists"
                + " what it takes",
            "neckway: --first-beat two: give a number; 'neckway review --help' lists what it takes");
  }

  @Test
  void badInputIsItsOneLineAndStatus2() {
    assertThat(Complaints.whileRunning(new BadInput("a.json: tempo\n 0"), line(), null))
        .isEqualTo(2);
    assertThat(err.toString().lines()).containsExactly("neckway: a.json: tempo 0");
  }

  @Test
  void anythingElseIsAFaultAndStatus1() {
    assertThat(Complaints.whileRunning(new IllegalStateException("odd"), line(), null))
        .isEqualTo(1);
    assertThat(err.toString()).contains("fault of the program").contains("odd");
  }

  private CommandLine line() {
    return new CommandLine(new Nothing()).setErr(new PrintWriter(err, true));
  }

  @Command(name = "nothing")
  private static final class Nothing {}
}
