package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import neckway.file.JsonFile;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Reports on takes whose slips are known: their mistakes lie beside them. */
final class ReportCommandTests {
  private static final String HOSTILE = "<script>alert('x')</script>\"' onload=\"x & y";

  @TempDir private Path folder;
  private final StringWriter err = new StringWriter();

  private int run(String... words) {
    err.getBuffer().setLength(0);
    return Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err), words);
  }

  private Path review(String take) {
    Path json = folder.resolve(take + ".json");
    String sound = "test-audio/" + take;
    assertThat(run("review", sound + ".wav", "--drill", sound + ".drill.json", "--json", "" + json))
        .isZero();
    return json;
  }

  private String report(Path review, String... more) throws IOException {
    Path html = folder.resolve("report.html");
    List<String> words = new ArrayList<>(List.of("report", "" + review, "--out", "" + html));
    words.addAll(List.of(more));
    assertThat(run(words.toArray(String[]::new))).as(err.toString()).isZero();
    return Files.readString(html);
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  /** Well-formed XML, which HTML as browsers read it need not be. */
  private static Document parsed(String html) {
    try {
      String xml = html.substring(html.indexOf("<html"));
      return DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .parse(new InputSource(new StringReader(xml)));
    } catch (Exception e) {
      throw new AssertionError("not well-formed", e);
    }
  }

  private static List<Element> all(Document document, String name) {
    NodeList found = document.getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }

  @Test
  void itNeedsNothingElse() throws IOException {
    String html = report(review("three-slips"), "--take", "test-audio/three-slips.wav");
    Document document = parsed(html);
    assertThat(all(document, "*"))
        .allSatisfy(
            element -> {
              assertThat(element.getTagName())
                  .isNotIn("script", "link", "iframe", "object", "embed", "img", "a", "base");
              for (int i = 0; i < element.getAttributes().getLength(); i++) {
                String name = element.getAttributes().item(i).getNodeName();
                String value = element.getAttributes().item(i).getNodeValue();
                assertThat(name).doesNotStartWith("on");
                if (name.equals("src") || name.equals("href")) {
                  assertThat(value).startsWith("data:audio/wav;base64,");
                }
              }
            });
    String seen = html.replaceAll("base64,[A-Za-z0-9+/=]*", "");
    assertThat(seen).doesNotContain("://", "url(", "@import");
  }

  @Test
  void whatToDoNextComesFirstAndEachSlipCanBeHeard() throws IOException {
    String html = report(review("three-slips"), "--take", "test-audio/three-slips.wav");
    Document document = parsed(html);
    assertThat(all(document, "h2").stream().map(Element::getTextContent))
        .containsExactly(
            "What to do next",
            "What happened",
            "The notes",
            "On the neck",
            "The shifts",
            "Your time",
            "Listen");
    assertThat(all(document, "h2").get(0).getParentNode().getTextContent())
        .contains("fret 7 on the fourth string");
    List<String> moments =
        all(document, "li").stream()
            .filter(li -> li.getElementsByTagName("audio").getLength() == 2)
            .map(Element::getTextContent)
            .toList();
    assertThat(moments).hasSize(3);
    assertThat(moments.get(0)).contains("Fourth string, fret 7", "sounded like fret 4");
    assertThat(moments.get(1)).contains("First string, fret 8: left out");
    assertThat(moments.get(2)).contains("Third string, fret 5: struck twice");
    assertThat(html.length()).isLessThan(2_000_000);
  }

  @Test
  void withoutTheRecordingItIsSmallAndSaysTheSame() throws IOException {
    String html = report(review("three-slips"));
    assertThat(all(parsed(html), "audio")).isEmpty();
    assertThat(html).contains("left out", "struck twice").hasSizeLessThan(100_000);
  }

  @Test
  void whatIsNotCertainIsMarkedAndWhatTheSoundDoesNotTellIsNot() throws IOException {
    Path review = review("three-slips");
    assertThat(report(review)).contains("the sound does not tell").doesNotContain("lease listen");
    ObjectNode json = (ObjectNode) JsonFile.read(review);
    ObjectNode up = (ObjectNode) json.path("shifts").path(0);
    up.put("verdict", "made").put("string", 4).put("p", 0.92);
    ObjectNode down = (ObjectNode) json.path("shifts").path(1);
    down.put("verdict", "made").put("string", 2).put("p", 0.99);
    JsonFile.write(review, json);
    String html = report(review);
    assertThat(html).containsOnlyOnce("Please listen.").containsOnlyOnce("please listen<");
    assertThat(parsed(html).getDocumentElement().getTextContent())
        .contains("planned on the fourth string, is not certain: I am 92 % sure of it.");
  }

  @Test
  void nothingIsCalledASlipWhereItIsNotThisDrill() throws IOException {
    Path json = folder.resolve("misfit.json");
    String drill = "test-audio/missed-shift.drill.json";
    assertThat(run("review", "test-audio/three-slips.wav", "--drill", drill, "--json", "" + json))
        .isZero();
    assertThat(report(json))
        .contains("This sounds like")
        .doesNotContain("left out", "wrong,", "<h2>Moments");
  }

  @Test
  void hostileNamesAreText() throws IOException {
    Path review = review("three-slips");
    ObjectNode json = (ObjectNode) JsonFile.read(review);
    ((ObjectNode) json.path("take")).put("file", HOSTILE + ".wav");
    ((ObjectNode) json.path("drill")).put("title", HOSTILE);
    JsonFile.write(review, json);
    ObjectNode said = json.objectNode();
    said.put("format", "neckway-remarks/1").put("overall", HOSTILE + "\u0000\u0001");
    said.putArray("moments").addObject().put("time", 4.0).put("text", HOSTILE);
    Path remarks = folder.resolve("remarks.json");
    JsonFile.write(remarks, said);
    Document document = parsed(report(review, "--remarks", "" + remarks));
    assertThat(all(document, "script")).isEmpty();
    assertThat(document.getDocumentElement().getTextContent())
        .contains("Your run: " + HOSTILE, "Recording: " + HOSTILE + ".wav", "teacher: " + HOSTILE);
  }

  @Test
  void namesAreLeftOutWhereThatIsAsked() throws IOException {
    Path review = review("three-slips");
    ObjectNode json = (ObjectNode) JsonFile.read(review);
    ((ObjectNode) json.path("take")).put("file", "quirin-monday.wav");
    ((ObjectNode) json.path("drill")).put("title", "For Quirin");
    JsonFile.write(review, json);
    assertThat(report(review)).contains("quirin-monday.wav", "For Quirin");
    assertThat(report(review, "--no-name"))
        .doesNotContainIgnoringCase("quirin")
        .contains("from the minor to the major shape");
  }

  @Test
  void theTeacherIsPrintedAndOverrules() throws IOException {
    Path remarks =
        write(
            "remarks.json",
            """
            {"format": "neckway-remarks/1", "overall": "Keep the wrist loose.",
             "moments": [{"time": 8.0, "text": "An even tone here."}],
             "verdicts": [{"note": 5, "verdict": "right"}]}
            """);
    String html = report(review("three-slips"), "--remarks", "" + remarks);
    Document document = parsed(html);
    assertThat(all(document, "section").get(0).getTextContent()).contains("Keep the wrist loose.");
    assertThat(html)
        .contains("At 8.0 s", "An even tone here.", "Your teacher says: right.", ">7T<")
        .doesNotContain(">7x<");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[]|holds no JSON object",
        "{\"overall\": \"good\"}|format: is missing",
        "{\"format\": \"neckway-drill/1\"}|remarks have",
        "{\"format\": \"neckway-remarks/1\", \"overall\": 3}|overall: 3 should be text",
        "{\"format\": \"neckway-remarks/1\", \"moments\": [{\"text\": \"a\"}]}|moments[0].time",
        "{\"format\": \"neckway-remarks/1\", \"moments\": [{\"time\": 1}]}|moments[0].text",
        "{\"format\": \"neckway-remarks/1\", \"verdicts\": [{\"note\": 999}]}|verdicts[0].note",
        "{\"format\": \"neckway-remarks/1\", \"verdicts\": [{\"note\": 1, \"verdict\": \"fine\"}]}"
            + "|should be right, wrong, repeat or extra",
      })
  void badRemarksAreToldInOneLine(String text, String told) throws IOException {
    Path remarks = write("bad.json", text);
    Path html = folder.resolve("bad.html");
    assertThat(
            run("report", "" + review("clean-run"), "--remarks", "" + remarks, "--out", "" + html))
        .isEqualTo(2);
    assertThat(err.toString().strip().lines())
        .singleElement()
        .asString()
        .contains("bad.json", told);
    assertThat(html).doesNotExist();
  }

  @Test
  void otherFilesAreNotReplaced() throws IOException {
    Path review = review("clean-run");
    Path notes = write("notes.html", "<html><body>my own</body></html>");
    assertThat(run("report", "" + review, "--out", "" + notes)).isEqualTo(2);
    assertThat(err.toString()).contains("is no report");
    assertThat(run("report", "" + review, "--out", "" + folder.resolve("a.rtf"))).isEqualTo(2);
    assertThat(err.toString()).contains("name a file that ends in .html or .pdf");
    assertThat(run("report", "" + review, "--out", "" + notes, "--overwrite")).isZero();
    assertThat(run("report", "" + review, "--out", "" + notes)).as("its own").isZero();
  }

  @Test
  void anotherRecordingIsNotTakenForTheReviewedOne() {
    Path html = folder.resolve("other.html");
    Path review = review("three-slips");
    assertThat(
            run("report", "" + review, "--take", "test-audio/moved-shift.wav", "--out", "" + html))
        .isEqualTo(2);
    assertThat(err.toString()).contains("name the recording of this review");
    assertThat(html).doesNotExist();
  }

  private PDDocument paper(Path review, String... more) throws IOException {
    Path pdf = folder.resolve("report.pdf");
    List<String> words = new ArrayList<>(List.of("report", "" + review, "--out", "" + pdf));
    words.addAll(List.of(more));
    assertThat(run(words.toArray(String[]::new))).as(err.toString()).isZero();
    return Loader.loadPDF(pdf.toFile());
  }

  private static String flat(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @Test
  void onPaperItSaysTheSameOnTwoPagesWithItsFontInIt() throws IOException {
    Path review = review("three-slips");
    Path remarks =
        write(
            "remarks.json",
            "{\"format\": \"neckway-remarks/1\", \"overall\": \"Keep the wrist loose.\"}");
    try (PDDocument pdf = paper(review, "--remarks", "" + remarks)) {
      assertThat(pdf.getNumberOfPages()).isLessThanOrEqualTo(2);
      String text = flat(new PDFTextStripper().getText(pdf));
      Document page = parsed(report(review, "--remarks", "" + remarks));
      for (String part : List.of("h1", "h2", "p", "li", "td")) {
        assertThat(all(page, part))
            .isNotEmpty()
            .allSatisfy(e -> assertThat(text).contains(flat(e.getTextContent()).strip()));
      }
      assertThat(text.indexOf("Keep the wrist loose.")).isLessThan(text.indexOf("What happened"));
      for (PDPage sheet : pdf.getPages()) {
        for (COSName name : sheet.getResources().getFontNames()) {
          assertThat(sheet.getResources().getFont(name).isEmbedded()).isTrue();
        }
      }
    }
  }

  /** Letter (ANSI Y14.1) is 792 points high and A4 (ISO 216) 842: both have room for it. */
  @Test
  void onPaperNothingLiesWhereLetterHasNoRoom() throws IOException {
    try (PDDocument pdf = paper(review("missed-shift"))) {
      for (int page = 0; page < pdf.getNumberOfPages(); page++) {
        BufferedImage seen = new PDFRenderer(pdf).renderImage(page);
        assertThat(seen.getHeight()).isBetween(841, 842);
        for (int x = 0; x < seen.getWidth(); x++) {
          for (int y = 0; y < (842 - 792) / 2 + 18; y++) {
            assertThat(seen.getRGB(x, y) & 0xffffff).isEqualTo(0xffffff);
            assertThat(seen.getRGB(x, seen.getHeight() - 1 - y) & 0xffffff).isEqualTo(0xffffff);
          }
        }
      }
    }
  }

  @Test
  void onPaperNamesAreLeftOutAndLongRemarksGoOn() throws IOException {
    Path review = review("three-slips");
    ObjectNode json = (ObjectNode) JsonFile.read(review);
    ((ObjectNode) json.path("take")).put("file", "quirin-monday.wav");
    ((ObjectNode) json.path("drill")).put("title", "For Quirin");
    JsonFile.write(review, json);
    try (PDDocument pdf = paper(review, "--no-name")) {
      assertThat(new PDFTextStripper().getText(pdf)).doesNotContainIgnoringCase("quirin");
      assertThat(pdf.getDocumentInformation().getTitle()).doesNotContainIgnoringCase("quirin");
    }
    ObjectNode said = json.objectNode();
    said.put("format", "neckway-remarks/1").put("overall", "Slow down. ".repeat(900) + "Last.");
    said.putArray("moments").addObject().put("time", 4.0).put("text", "w".repeat(500));
    Path remarks = folder.resolve("remarks.json");
    JsonFile.write(remarks, said);
    try (PDDocument pdf = paper(review, "--remarks", "" + remarks)) {
      assertThat(flat(new PDFTextStripper().getText(pdf))).contains("Slow down. Last.", "wwww");
    }
  }

  @Test
  void aFolderGetsAReportForEach() throws IOException {
    Path takes = Files.createDirectory(folder.resolve("takes"));
    Files.copy(Path.of("test-audio/three-slips.wav"), takes.resolve("monday.wav"));
    Path into = folder.resolve("class");
    String drill = "test-audio/three-slips.drill.json";
    assertThat(run("review", "" + takes, "--drill", drill, "--into", "" + into)).isZero();
    Document document = parsed(Files.readString(into.resolve("monday.html")));
    assertThat(document.getDocumentElement().getTextContent()).contains("monday.wav");
    assertThat(all(document, "audio")).hasSize(6);
  }

  @Test
  void aFoldersReportsFollowTheRemarksBesideThem() throws IOException {
    Path takes = Files.createDirectory(folder.resolve("takes"));
    Files.copy(Path.of("test-audio/three-slips.wav"), takes.resolve("monday.wav"));
    Path into = folder.resolve("class");
    String[] words = {
      "review", "" + takes, "--drill", "test-audio/three-slips.drill.json", "--into", "" + into
    };
    assertThat(run(words)).isZero();
    Path html = into.resolve("monday.html");
    String first = Files.readString(html);
    FileTime firstTime = FileTime.fromMillis(1_000_000);
    Files.setLastModifiedTime(html, firstTime);
    assertThat(run(words)).isZero();
    assertThat(Files.getLastModifiedTime(html)).as("left as it is").isEqualTo(firstTime);

    Path remarks = into.resolve("monday.remarks.json");
    String said = "{\"format\": \"neckway-remarks/1\", \"overall\": \"%s\"}";
    Files.writeString(remarks, said.formatted("Keep the wrist loose."));
    assertThat(run(words)).isZero();
    assertThat(Files.readString(html)).contains("Keep the wrist loose.");
    Files.writeString(remarks, said.formatted("Breathe."));
    assertThat(run(words)).isZero();
    assertThat(Files.readString(html)).contains("Breathe.").doesNotContain("wrist");

    Files.writeString(remarks, "{");
    assertThat(run(words)).isZero();
    assertThat(err.toString().strip().lines())
        .singleElement()
        .asString()
        .contains("monday.remarks");
    assertThat(Files.readString(into.resolve("table.csv"))).contains("monday.wav,monday,ok,");

    Files.delete(remarks);
    Files.delete(html);
    assertThat(run(words)).isZero();
    assertThat(Files.readString(html)).isEqualTo(first);
  }

  @Test
  void aLongRunWithoutASlipHasNoBarsToShow() throws IOException {
    Path wav = folder.resolve("long.wav");
    Path json = folder.resolve("long.json");
    String[] drill = {"--key", "G major", "--shapes", "major,dorian", "--rounds", "9"};
    assertThat(run(words("perform", drill, "--seed", "1", "--out", "" + wav))).isZero();
    assertThat(run(words("review", drill, "" + wav, "--json", "" + json))).isZero();
    Document page = parsed(report(json));
    assertThat(page.getDocumentElement().getTextContent())
        .contains("Each note played was right, so none of the 28 bars is shown.")
        .contains("None was heard to be made elsewhere")
        .doesNotContain("Figures are frets", "Below are");
  }

  private static String[] words(String command, String[] drill, String... more) {
    List<String> words = new ArrayList<>(List.of(command));
    words.addAll(List.of(drill));
    words.addAll(List.of(more));
    return words.toArray(String[]::new);
  }
}
