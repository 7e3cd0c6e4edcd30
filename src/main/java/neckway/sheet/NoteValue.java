package neckway.sheet;

/**
 * How one of so many equal notes in a quarter note is written.
 *
 * @param type MusicXML's name of the value
 * @param beams how many beams it has
 * @param actual notes that stand in the place of the normal ones
 * @param normal notes of that value in a quarter note
 */
record NoteValue(String type, int beams, int actual, int normal) {
  private static final String[] TYPES = {"quarter", "eighth", "16th", "32nd"};

  /**
   * The value of one of so many notes: the longest of which no more fit in than are played, as
   * triplets are eighths and quintuplets sixteenths.
   *
   * @param notesPerBeat 1 to 8
   */
  static NoteValue of(int notesPerBeat) {
    int beams = Integer.SIZE - 1 - Integer.numberOfLeadingZeros(notesPerBeat);
    return new NoteValue(TYPES[beams], beams, notesPerBeat, 1 << beams);
  }

  boolean isTuplet() {
    return actual != normal;
  }
}
