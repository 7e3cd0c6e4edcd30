package neckway.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.util.List;
import neckway.neck.BadInput;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;

/** What is said where German is spoken. */
public final class GermanSaid {
  private GermanSaid() {}

  /** The one line of bad input, which must be German. */
  public static String complaint(ThrowingCallable doing) {
    Throwable thrown = Wording.in(Tongue.GERMAN, () -> catchThrowable(doing));
    assertThat(thrown).isInstanceOf(BadInput.class);
    isGerman(thrown.getMessage());
    return thrown.getMessage();
  }

  /** Has no English word in it, and no place for a value left empty. */
  public static void isGerman(String sentence) {
    assertThat(EnglishWords.in(sentence)).as(sentence).isEmpty();
    assertThat(" " + sentence + " ").doesNotContain(" is ", " are ", " not ", "{0}", "{1}", "{2}");
  }

  /** As {@link #isGerman(String)}, each. */
  public static void isGerman(List<String> sentences) {
    sentences.forEach(GermanSaid::isGerman);
  }
}
