package neckway.cli.text;

/** Which way round a player holds the guitar: on a left-handed one the nut is on the right. */
public enum Handed {
  RIGHT,
  LEFT
}
