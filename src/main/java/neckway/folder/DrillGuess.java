package neckway.folder;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import neckway.drill.PlayableDrill;
import neckway.recording.RecordingReviewer.Reviewed;
import neckway.review.Summary;
import neckway.review.words.OtherwisePlayed;

/**
 * Which drill a recording is held against: the one named for it; another one that is known, where
 * it fits far better; where none is named, the one that fits best. What was not named is a guess,
 * and the sentences say so.
 *
 * @param asked the drill named, or all that it may be
 * @param others more that are known, where one is named
 */
record DrillGuess(List<PlayableDrill> asked, List<PlayableDrill> others) {
  /** With this share of it right a take is of the drill that is named, whatever else would fit. */
  private static final double FITS_SHARE = 0.75;

  /** Another one has such a share right. */
  private static final double OTHER_FITS_SHARE = 0.8;

  /** And so much more than the one named. */
  private static final double BETTER_SHARE = 0.25;

  /**
   * What was heard of a recording.
   *
   * @param reviewed against the drill that it is held against
   * @param guessed whether that was not named
   * @param othersTried whether the others were asked at all
   */
  record Heard(Reviewed reviewed, boolean guessed, boolean othersTried) {}

  /** A recording against all that it may be of. */
  List<PlayableDrill> all() {
    List<PlayableDrill> all = new ArrayList<>(asked);
    all.addAll(others);
    return all;
  }

  /**
   * Hears a recording against the drills, as many of them as need be.
   *
   * @param hear reviews it against one; empty where that was stopped
   * @return empty where it was stopped
   */
  Optional<Heard> hear(Function<PlayableDrill, Optional<Reviewed>> hear) {
    Optional<Reviewed> first = best(asked, hear);
    if (first.isEmpty()) {
      return Optional.empty();
    }
    Reviewed heard = first.get();
    if (asked.size() > 1) {
      List<String> words = OtherwisePlayed.noneNamed(heard.drill(), heard.review());
      return Optional.of(new Heard(heard.saying(words), true, false));
    }
    if (others.isEmpty() || share(heard) >= FITS_SHARE) {
      return Optional.of(new Heard(heard, false, false));
    }
    return best(others, hear).map(other -> better(heard, other));
  }

  private Heard better(Reviewed named, Reviewed other) {
    if (share(other) < Math.max(OTHER_FITS_SHARE, share(named) + BETTER_SHARE)) {
      return new Heard(named, false, true);
    }
    List<String> words = OtherwisePlayed.otherOfList(asked.get(0), other.drill(), other.review());
    return new Heard(other.saying(words), true, true);
  }

  private static Optional<Reviewed> best(
      List<PlayableDrill> drills, Function<PlayableDrill, Optional<Reviewed>> hear) {
    Optional<Reviewed> best = Optional.empty();
    for (PlayableDrill drill : drills) {
      Optional<Reviewed> heard = hear.apply(drill);
      if (heard.isEmpty()) {
        return heard;
      }
      if (best.isEmpty() || fit(heard.get()) > fit(best.get())) {
        best = heard;
      }
    }
    return best;
  }

  /** Right notes, less those that do not belong and those that are missing. */
  private static int fit(Reviewed heard) {
    Summary said = heard.review().summary();
    return said.right() - said.wrong() - said.extra() - said.skipped();
  }

  /** Right notes, of all that were played or left out. */
  private static double share(Reviewed heard) {
    Summary said = heard.review().summary();
    return said.right() / (double) Math.max(1, said.notes() + said.skipped());
  }
}
