package neckway.page;

import java.util.Optional;
import neckway.neck.Place;

/**
 * Where the note of a step was played.
 *
 * @param known how much of that is known
 * @param place where it stands on the page: where it was played, or else where it was planned
 */
public record PlayedPlace(Known known, Place place) {
  /** What is known of where a note was played. */
  public enum Known {
    /** Nothing speaks against the plan. */
    AS_PLANNED,
    /** Somewhere else, and where. */
    ELSEWHERE,
    /** Somewhere else, but not where. */
    NOT_AS_PLANNED
  }

  /** Where nothing speaks against the plan. */
  static PlayedPlace asPlanned(Place planned) {
    return new PlayedPlace(Known.AS_PLANNED, planned);
  }

  /** Where the place is known. */
  static PlayedPlace at(Place heard, Place planned) {
    return new PlayedPlace(heard.equals(planned) ? Known.AS_PLANNED : Known.ELSEWHERE, heard);
  }

  /** Where the plan was not followed, and more is not known. */
  static PlayedPlace notAt(Place planned) {
    return new PlayedPlace(Known.NOT_AS_PLANNED, planned);
  }

  /** The place, where it is known not to be the planned one. */
  public Optional<Place> elsewhere() {
    return known == Known.ELSEWHERE ? Optional.of(place) : Optional.empty();
  }
}
