package neckway.review;

import java.util.Locale;

/** What became of a step. */
public enum StepVerdict {
  PLAYED,
  /** Another pitch was played in its place. */
  WRONG,
  SKIPPED,
  /** The player had stopped before it. */
  UNPLAYED;

  /** The word for it in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
