package neckway.neck;

import java.util.List;
import java.util.function.Function;
import neckway.words.Wording;

/** Things of which one may be chosen, as a sentence names them: "3 or 8 or 15". */
final class Either {
  private Either() {}

  /**
   * @param things at least one
   * @param name of each
   */
  static <T> String of(List<T> things, Function<T, String> name) {
    return things.stream()
        .map(name)
        .reduce((so, next) -> Wording.of("music.either", so, next))
        .orElseThrow();
  }
}
