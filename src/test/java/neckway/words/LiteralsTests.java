package neckway.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a person can read stands in a bundle, where each language has it, and not in the code. */
class LiteralsTests {
  private static final Path CODE = Path.of("src/main/java/neckway");

  private static final Pattern COMMENT = Pattern.compile("(?s:/\\*.*?\\*/)|(?m:^\\s*//.*$)");
  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");

  /** Two words of small letters: a name, a format or a style has no such. */
  private static final Pattern WORDS = Pattern.compile("[a-z]{2,} [a-z]");

  /** A fault of the program or the name of a thread, which are for those who mend it. */
  private static final Pattern FAULT =
      Pattern.compile(
          "new (IllegalArgument|IllegalState|UnsupportedOperation|UncheckedIO|IO)Exception|AssertionError|new Thread\\(");

  /** Files in which words are no sentences to a person, and what they are. */
  private static final Map<String, String> NO_SENTENCES =
      Map.ofEntries(
          Map.entry("file/OutputFiles.java", "how a report is known"),
          Map.entry("file/TruthWords.java", "sentences of a file that is read by programs"),
          Map.entry("file/WriteFault.java", "what systems call a full disk"),
          Map.entry("neck/TuningWords.java", "names of tunings, which are typed"),
          Map.entry("desk/choose/TuningField.java", "names of tunings, which are typed"),
          Map.entry("desk/ClickModel.java", "a name in the settings"),
          Map.entry("desk/VolumeModel.java", "a name in the settings"),
          Map.entry("desk/play/LostTakes.java", "a part of a file's name"),
          Map.entry("desk/open/TakesFolder.java", "a part of a file's name"),
          Map.entry("desk/app/Faults.java", "a fault that is sent to those who mend it"),
          Map.entry("desk/play/DeviceCheck.java", "the name of a thread"),
          Map.entry("desk/sound/MachineDevices.java", "the name of a thread"),
          Map.entry("sound/Lines.java", "the name of a thread"),
          Map.entry("cli/Complaints.java", "what picocli says, to be said anew"),
          Map.entry("cli/Papers.java", "the manual page, which is English"),
          Map.entry("cli/StandardOutput.java", "what systems call a reader that has left"),
          Map.entry("log/RunLog.java", "SQL"),
          Map.entry("log/Database.java", "a version that no database has, which is not shown"),
          Map.entry("folder/FolderReports.java", "a comment in HTML"),
          Map.entry("report/NeckPicture.java", "names of styles"),
          Map.entry("report/TabPicture.java", "names of styles"),
          Map.entry("report/Report.java", "how a report is known, and a policy of HTML"));

  @Test
  void noSentenceStandsInTheCode() throws IOException {
    List<String> found = new ArrayList<>();
    int files = 0;
    try (Stream<Path> sources = Files.walk(CODE)) {
      for (Path source : sources.filter(file -> file.toString().endsWith(".java")).toList()) {
        files++;
        String name = CODE.relativize(source).toString().replace('\\', '/');
        if (!NO_SENTENCES.containsKey(name)) {
          sentences(Files.readString(source)).forEach(words -> found.add(name + ": " + words));
        }
      }
    }
    assertThat(files).isGreaterThan(500);
    assertThat(found).isEmpty();
  }

  /** No file is let off without need. */
  @Test
  void eachFileThatIsLetOffHasWords() throws IOException {
    for (String name : NO_SENTENCES.keySet()) {
      assertThat(sentences(Files.readString(CODE.resolve(name)))).as(name).isNotEmpty();
    }
  }

  @Test
  void aSentenceIsFoundAndAFaultIsNot() {
    String code =
        """
        /** Says "it is over". */
        void end() {
          if (left < 0) {
            throw new IllegalStateException("it is over: " + left);
          }
          // "what is this"
          say("Take " + "next" + " one of them", "a{b}", "left out");
        }
        """;
    assertThat(sentences(code)).containsExactly(" one of them", "left out");
  }

  private static List<String> sentences(String code) {
    String bare = COMMENT.matcher(code).replaceAll("");
    List<String> sentences = new ArrayList<>();
    Matcher literal = LITERAL.matcher(bare);
    while (literal.find()) {
      int statement = bare.lastIndexOf(';', literal.start());
      boolean fault = FAULT.matcher(bare.substring(statement + 1, literal.start())).find();
      if (!fault && WORDS.matcher(literal.group(1)).find()) {
        sentences.add(literal.group(1));
      }
    }
    return sentences;
  }
}
