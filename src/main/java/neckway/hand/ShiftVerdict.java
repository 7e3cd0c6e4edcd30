package neckway.hand;

import java.util.Locale;

/** What became of a planned shift. */
public enum ShiftVerdict {
  /** Made where planned. */
  MADE,
  /** Made on another string. */
  MOVED,
  /** The hand stayed in its shape. */
  MISSED,
  /** The sound does not tell. */
  UNHEARD,
  /** The player had stopped before it. */
  UNPLAYED;

  /** The word for it in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
