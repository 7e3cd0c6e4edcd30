package neckway.neck;

/**
 * Something that a person gave cannot be used. The message is one line for that person: what it is,
 * where it stands (file, field or option) and how to mend it. The command line prints it as it is
 * and ends with status 2.
 */
public final class BadInput extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * @param message one line: what, where, how to mend
   */
  public BadInput(String message) {
    super(oneLine(message));
  }

  /**
   * @param message one line: what, where, how to mend
   * @param cause what went wrong underneath
   */
  public BadInput(String message, Throwable cause) {
    super(oneLine(message), cause);
  }

  /** The same complaint with the place in front, such as a file's name. */
  public BadInput in(String where) {
    return new BadInput(where + ": " + getMessage(), this);
  }

  private static String oneLine(String message) {
    return message.replaceAll("\\s*\\R\\s*", " ").strip();
  }
}
