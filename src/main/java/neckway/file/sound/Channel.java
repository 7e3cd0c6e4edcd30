package neckway.file.sound;

/** Which channel of a recording the guitar is on. */
public enum Channel {
  /** The first channel; of a mono recording the only one. */
  LEFT,
  /** The second channel; of a mono recording the only one. */
  RIGHT,
  /** The mean of all channels. */
  MIX,
  /**
   * The mean of the channels that carry sound: one that is silent or much weaker than the strongest
   * is left out, so that it does not halve the level.
   */
  AUTO
}
