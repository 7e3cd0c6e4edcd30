package neckway.string;

import neckway.hear.HeardNote;

/** Told what the sound of each note says of its string. */
public interface SoundListener {
  /**
   * The sound of a note has been heard out.
   *
   * @param note as the ear gave it
   * @param evidence how well it fits each string
   * @param now seconds of the take heard by then
   */
  void sounded(HeardNote note, StringEvidence evidence, double now);
}
