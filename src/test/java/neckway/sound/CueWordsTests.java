package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import neckway.drill.Cue;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whispered calls. */
class CueWordsTests {
  private static final int RATE = 48_000;
  private static final double GAIN = 0.5;

  private static double peak(float[] sound, double fromSeconds, double toSeconds) {
    double peak = 0;
    for (int i = (int) (fromSeconds * RATE); i < (int) (toSeconds * RATE); i++) {
      peak = Math.max(peak, Math.abs(sound[i]));
    }
    return peak;
  }

  @ParameterizedTest
  @CsvSource({
    "UP, 4, E2 A2 D3 G3 B3 E4, up note-d, up on D",
    "DOWN, 6, E2 A2 D3 G3 B3 E4, down note-e string-6, 'down on E, string 6'",
    "UP, 5, D#2 G#2 C#3 F#3 A#3 D#4, up note-g sharp, up on G#",
  })
  void sayTheWayAndTheString(
      Cue.Move move, int string, String tuning, String spoken, String shown) {
    Cue cue = new Cue(0, move, Optional.of(new GuitarString(string)));
    assertThat(String.join(" ", cue.spoken(Tuning.parse(tuning)))).isEqualTo(spoken);
    assertThat(cue.words(Tuning.parse(tuning))).isEqualTo(shown);
  }

  @Test
  void eachWordThatCanBeSaidIsThereAndShort() {
    for (String word :
        ("up down stay sharp flat note-a note-b note-c note-d note-e note-f note-g string-1"
                + " string-2 string-3 string-4 string-5 string-6 string-7 string-8")
            .split(" ")) {
      float[] sound = new float[RATE];
      new CueWords(RATE, List.of(new CueWords.At(0, List.of(word))), GAIN).fill(0, sound);
      assertThat(peak(sound, 0, 0.5)).as(word).isBetween(0.7 * GAIN, GAIN);
      assertThat(peak(sound, 0.5, 1)).as(word).isZero();
    }
  }

  @Test
  void callsSoundAfterTheirBeatsWhateverTheBlocks() {
    List<CueWords.At> calls =
        List.of(
            new CueWords.At(RATE, List.of("up", "note-d")),
            new CueWords.At(3.0 * RATE, List.of("stay")));
    float[] whole = new float[4 * RATE];
    new CueWords(RATE, calls, GAIN).fill(0, whole);
    assertThat(peak(whole, 0, 1.03)).isZero();
    assertThat(peak(whole, 1.03, 1.6)).isPositive();
    assertThat(peak(whole, 1.7, 3.03)).isZero();
    assertThat(peak(whole, 3.03, 3.5)).isPositive();
    CueWords blocks = new CueWords(RATE, calls, GAIN);
    float[] block = new float[480];
    for (int from = 0; from < whole.length; from += block.length) {
      blocks.fill(from, block);
      for (int i = 0; i < block.length; i++) {
        assertThat(block[i]).isEqualTo(whole[from + i]);
      }
    }
  }
}
