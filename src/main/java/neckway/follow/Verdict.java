package neckway.follow;

import java.util.Locale;

/** What a heard note was. */
public enum Verdict {
  /** The step that was due. */
  RIGHT,
  /** Another pitch in place of a step. */
  WRONG,
  /** A step struck again. */
  REPEAT,
  /** Belongs to no step. */
  EXTRA;

  /** Whether the note stands in the place of a step. */
  public boolean inPlace() {
    return switch (this) {
      case RIGHT, WRONG -> true;
      case REPEAT, EXTRA -> false;
    };
  }

  /** The word for it in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
