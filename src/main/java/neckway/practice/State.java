package neckway.practice;

import java.util.Locale;

/** How far an exercise is. */
public enum State {
  /** Never played. */
  NEW,
  /** Played, and not yet clean often enough on days enough. */
  WORKING,
  /** Clean at tempo, on two days or more. */
  OPEN,
  /** Was open; unplayed for too long, or no longer clean. */
  FADING;

  /** The word for it in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
