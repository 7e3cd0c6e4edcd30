package neckway.desk.read;

/** What comes after reading, one key each. */
public interface ReadingActions {
  /** The same drill at once. */
  void again();

  /** The same drill, slower, at once. */
  void slower();

  /** The same drill, faster, at once. */
  void faster();

  /** The next cleanest join for the shift in close-up; the player begins when ready. */
  void anotherJoin();
}
