package neckway.review.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import neckway.follow.Verdict;
import neckway.report.Clips;
import neckway.report.Report;
import neckway.review.Remarks;
import neckway.words.EnglishWords;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** A whole report in German, of each take that the phrasebook makes up. */
class GermanReportTests {
  private static final String LETTERS = "ÄÖÜäöüß „so“ – 1,5";

  private static String html(MadeUp take, Remarks remarks) {
    return Wording.in(
        Tongue.GERMAN,
        () ->
            Report.html(
                take.drill(),
                take.review(),
                remarks,
                Optional.of("7.wav"),
                Report.Names.TOLD,
                Clips.NONE));
  }

  /** Each text between two tags of the page's body. */
  private static List<String> texts(String html) {
    String body = html.substring(html.indexOf("<body"));
    return List.of(body.split("<[^>]*>")).stream().filter(text -> !text.isBlank()).toList();
  }

  private static void isGerman(String html) {
    assertThat(html).contains("<html lang=\"de\"");
    for (String text : texts(html)) {
      // sharps and string names stand alone in the pictures
      if (text.strip().length() > 3) {
        assertThat(EnglishWords.in(text)).as(text).isEmpty();
      }
      assertThat(text).doesNotContain("{");
    }
  }

  @Test
  void everyTextOfThePageIsGerman() {
    for (MadeUp take : Phrasebook.takes()) {
      isGerman(html(take, Remarks.NONE));
    }
  }

  @Test
  void whatATeacherSaysStandsInGermanWordsToo() {
    for (MadeUp take : Phrasebook.takes()) {
      List<Remarks.Overruled> overruled =
          take.review().notes().isEmpty()
              ? List.of()
              : List.of(new Remarks.Overruled(0, Verdict.WRONG));
      isGerman(
          html(
              take,
              new Remarks(
                  Optional.of("Ruhig."), List.of(new Remarks.Moment(3, "Gut.")), overruled)));
    }
  }

  /** The font on paper has a letter for each that German needs; one it lacks would be a "?". */
  @Test
  void paperHasTheLettersOfGerman() throws IOException {
    MadeUp take = Phrasebook.takes().get(1);
    byte[] pdf =
        Wording.in(
            Tongue.GERMAN,
            () ->
                Report.pdf(
                    take.drill(),
                    take.review(),
                    new Remarks(Optional.of(LETTERS), List.of(), List.of()),
                    Optional.empty(),
                    Report.Names.TOLD));
    try (PDDocument paper = Loader.loadPDF(pdf)) {
      assertThat(paper.getDocumentCatalog().getLanguage()).isEqualTo("de");
      assertThat(new PDFTextStripper().getText(paper)).contains(LETTERS, "Als Nächstes: ");
    }
  }
}
