package neckway.review.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import neckway.page.PagedTake;
import neckway.review.Review;
import neckway.review.words.Sentence.Part;
import neckway.words.EnglishWords;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every sentence of a review in German: whole, without English, and telling of the same notes. */
class GermanSentenceTests {
  private static List<Phrasebook.Example> examples(Tongue tongue) {
    return Wording.in(tongue, Phrasebook::examples);
  }

  @Test
  void eachTakeIsToldOfInBothLanguages() {
    List<Phrasebook.Example> german = examples(Tongue.GERMAN);
    assertThat(german.stream().map(Phrasebook.Example::when))
        .containsExactlyElementsOf(
            examples(Tongue.ENGLISH).stream().map(Phrasebook.Example::when).toList());
    assertThat(german)
        .extracting(Phrasebook.Example::sentence)
        .allMatch(s -> s.endsWith("."))
        .noneMatch(s -> s.contains("  ") || s.contains("..") || s.contains("null"))
        .noneMatch(s -> s.contains("{") || s.contains("}"))
        .allMatch(s -> !Character.isLowerCase(s.charAt(0)));
  }

  /** Rows of two sentences, the second one German. */
  @Test
  void examplesOfTheDocumentationAreWhatIsSaid() throws IOException {
    Map<String, String> german = new HashMap<>();
    for (MadeUp take : Phrasebook.takes()) {
      List<String> english = Words.of(take.drill(), take.review());
      List<String> other = Wording.in(Tongue.GERMAN, () -> Words.of(take.drill(), take.review()));
      for (int i = 0; i < english.size(); i++) {
        german.put(english.get(i), other.get(i));
      }
    }
    List<String> rows =
        Files.readAllLines(Path.of("docs/desk.md")).stream()
            .dropWhile(line -> !line.equals("| English | German |"))
            .skip(2)
            .takeWhile(line -> line.startsWith("|"))
            .toList();
    assertThat(rows).hasSize(10);
    for (String row : rows) {
      String[] cells = row.split(" ?\\| ?");
      assertThat(german).as(row).containsEntry(cells[1], cells[2]);
    }
  }

  /** What is said of slips that come again, of rounds, of evenness and of rushing. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "the same note wrong again|Zwei falsche Noten: Bund 8 auf der zweiten Saite, abwärts in den"
            + " Runden 1 und 3, klang wie Bund 10.",
        "no shift up in one round|Die Runden 1 und 3 waren ohne Fehler.",
        "a note struck twice|Alle 25 Noten waren richtig.",
        "an open string besides|Ein Ton, der nicht dorthin gehört: G3, wahrscheinlich die leere"
            + " dritte Saite, nach Bund 5 auf der vierten Saite, aufwärts.",
        "a hesitation|Du hast gezögert: vor Bund 5 auf der vierten Saite, aufwärts, 1,5 Sekunden"
            + " lang.",
        "rushing after the shifts up alone|Nach den Lagenwechseln aufwärts bist du geeilt, um etwa"
            + " 58 ms.",
        "time that is fairly even|Du hast ziemlich gleichmäßig gespielt: Vier von fünf Noten lagen"
            + " höchstens 36 ms neben deinem eigenen Puls.",
        "uneven time|Du hast ungleichmäßig gespielt: Vier von fünf Noten lagen bis zu 76 ms neben"
            + " deinem eigenen Puls.",
        "hesitations all over|Zuerst: Spiel mit 68 Schlägen pro Minute oder langsamer, damit keine"
            + " Note warten muss.",
        "the same landing late again|Zuerst: Spiel den Lagenwechsel aufwärts auf der dritten Saite"
            + " für sich, zwei Noten davor und die Landung, und lass die Hand losgehen, sobald die"
            + " letzte davon klingt."
      })
  void whatATeacherSaysInGerman(String when, String sentence) {
    assertThat(examples(Tongue.GERMAN)).contains(new Phrasebook.Example(when, sentence));
  }

  @Test
  void noEnglishIsLeft() {
    for (Phrasebook.Example example : examples(Tongue.GERMAN)) {
      assertThat(EnglishWords.in(example.sentence())).as(example.sentence()).isEmpty();
    }
    assertThat(examples(Tongue.ENGLISH))
        .extracting(Phrasebook.Example::sentence)
        .allMatch(sentence -> !EnglishWords.in(sentence).isEmpty());
  }

  /** Parts and notes are those of the English sentences. */
  @Test
  void sentencesAreForTheSameAndTellOfTheSameNotes() {
    for (MadeUp take : Phrasebook.takes()) {
      Review review = take.review();
      List<Sentence> english = Words.sentences(take.drill(), review);
      List<Sentence> german =
          Wording.in(Tongue.GERMAN, () -> Words.sentences(take.drill(), review));
      assertThat(german.stream().map(Sentence::part))
          .containsExactlyElementsOf(english.stream().map(Sentence::part).toList());
      assertThat(german.stream().map(Sentence::steps))
          .containsExactlyElementsOf(english.stream().map(Sentence::steps).toList());
    }
  }

  /** A review that was made in one language is read in the other. */
  @Test
  void whatWasSaidInAnotherLanguageStillLeadsToItsNotes() {
    PagedTake take = PagedTake.recorded("three-slips");
    List<Sentence> english = Words.said(take.drill(), take.review());
    assertThat(Wording.in(Tongue.GERMAN, () -> Words.said(take.drill(), take.review())))
        .isEqualTo(english);
    List<String> words = Wording.in(Tongue.GERMAN, () -> Words.of(take.drill(), take.review()));
    Review german = take.review().withWords(words);
    List<Sentence> said = Words.said(take.drill(), german);
    assertThat(said).extracting(Sentence::text).isEqualTo(words);
    assertThat(said.stream().map(Sentence::steps))
        .containsExactlyElementsOf(english.stream().map(Sentence::steps).toList());
    assertThat(said.get(said.size() - 1).part()).isEqualTo(Part.NEXT);
    assertThat(Words.advice(german)).contains(words.get(words.size() - 1));
    assertThat(Words.advice(take.review()).orElseThrow()).startsWith("First: ");
  }
}
