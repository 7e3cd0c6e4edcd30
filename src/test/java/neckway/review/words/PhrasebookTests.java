package neckway.review.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The list of all sentences is whole, and reads as one would say it. */
class PhrasebookTests {
  private static final int MOST_WORDS_IN_A_CLAUSE = 30;
  private static final List<String> SENTENCES =
      Phrasebook.examples().stream().map(Phrasebook.Example::sentence).toList();

  @ParameterizedTest
  @ValueSource(
      strings = {
        "I heard no notes",
        "What I heard does not fit",
        "You began .*",
        "You played on without a pause",
        "This sounds like the Dorian shape into the Phrygian one from fret",
        "You played at 96 beats a minute, and the drill is at 80",
        "You played at 160 .*; at 80 that is four notes a beat",
        "You played three notes a beat where the drill has two",
        "You played at 60 beats a minute, and the click was at 80",
        "You did not keep to the click",
        "First: listen to a bar of the click .* or set it to 96",
        "First: listen to a bar of the click .* or set it to 72",
        "The notes do not sound like the guitar of this profile",
        "The first try stopped",
        "All 25 notes were right",
        "Up to where you stopped",
        "You stopped before the end: the last note",
        "The hand stayed",
        "In round 2 the hand stayed",
        "In every round the hand",
        "Coming down in round 1 the hand",
        "You shifted up",
        "Three more shifts",
        "Both shifts were made",
        "One shift was made where planned",
        "One note wrong",
        "One note left out",
        "One note struck twice",
        "One note that does not belong",
        "One note I heard",
        "You came in",
        "You hesitated",
        "The shift up on the third string landed \\d+ ms late\\.",
        "The shift up .* late in every round, mostly by",
        "The note before the shift",
        "Your time was even",
        "Your time was fairly even",
        "Your time was uneven",
        "The other notes were even",
        "Rounds? .* had no slip",
        "After the shifts you rushed, by some",
        "After the shifts you dragged, by some",
        "After the shifts up you rushed, by some",
        "After the shifts up you dragged, by some",
        "On the whole you were \\d+ ms ahead",
        "On the whole you were \\d+ ms behind",
        "Whether you were ahead",
        "The guitar is 30 cents flat",
        "The sound does not tell on which string you",
        "The sound does not tell on which string two",
        "On which string you shifted",
        "First: start a few notes before .* play (up|down) to it slowly",
        "First: start a few notes before .* stop on it",
        "First: start .* without a stop",
        "First: start .* to the end",
        "First: put the finger down",
        "First: start .* slowly, until it is right three times running",
        "First: hold fret .* with the first finger, and set",
        "First: the stretch from first to fourth finger missed in two places",
        "First: the shift .* landed short; slide",
        "First: the shift .* landed too far; slide",
        "First: let the hand move up a fret",
        "First: let the hand move down a fret",
        "First: set the finger down",
        "First: start .* is the same fret of the third string",
        "First: play the notes from .* alone",
        "First: leave the finger lightly",
        "First: lift the finger straight up",
        "First: count a bar aloud",
        "First: play up to the",
        "First: play down to the",
        "First: play the shift .* three notes",
        "First: play the shift .* in time",
        "First: play the shift .* let the hand leave",
        "First: play slowly through",
        "First: play the run slowly",
        "First: lay the unused fingers",
        "First: play slowly and lift",
        "First: play it at 68 beats a minute",
        "First: count aloud through the shift",
        "First: stop on the landing and think",
        "First: play at 68 beats a minute until",
        "First: tap your foot .* start with your foot",
        "First: tap your foot .* before your foot is down",
        "Next: join",
        "Next: the same a little faster",
        "Next: make the shift up",
      })
  void hasASentenceOfEachKind(String begin) {
    assertThat(SENTENCES).anyMatch(s -> Pattern.compile("^" + begin).matcher(s).find());
  }

  @Test
  void sentencesAreWholeAndShortEnough() {
    assertThat(SENTENCES)
        .allMatch(s -> s.endsWith("."))
        .noneMatch(s -> s.contains("  ") || s.contains("..") || s.contains("null"))
        .allMatch(s -> !Character.isLowerCase(s.charAt(0)))
        .allMatch(
            s ->
                Pattern.compile("[;:]")
                    .splitAsStream(s)
                    .allMatch(clause -> clause.split(" ").length <= MOST_WORDS_IN_A_CLAUSE));
  }

  @Test
  void nobodyIsPraisedOrScored() {
    Pattern scored =
        Pattern.compile(
            "\\b(great|good|well done|perfect|excellent|points?|score|streak|stray)\\b",
            Pattern.CASE_INSENSITIVE);
    assertThat(SENTENCES).noneMatch(s -> scored.matcher(s).find());
  }

  @Test
  void pageOfTheDocumentationIsWhatIsSaid() throws Exception {
    assertThat(Files.readString(Path.of("docs/sentences.md"))).isEqualTo(PrintedPhrasebook.page());
  }
}
