package neckway.band;

import java.util.List;

/**
 * A chord.
 *
 * @param root pitch class, 0 for C to 11 for B
 * @param quality what is built on it
 */
public record Chord(int root, Quality quality) {
  /** What a chord is built of, semitones above its root (handbooks of harmony, from memory). */
  public enum Quality {
    /** Root, major third, fifth. */
    MAJOR("", 0, 4, 7),
    /** Root, minor third, fifth. */
    MINOR("m", 0, 3, 7),
    /** Root, minor third, diminished fifth. */
    DIMINISHED("dim", 0, 3, 6),
    /** Root, major third, augmented fifth. */
    AUGMENTED("aug", 0, 4, 8),
    /** A major chord with a minor seventh. */
    DOMINANT_SEVENTH("7", 0, 4, 7, 10),
    /** A major chord with a major seventh. */
    MAJOR_SEVENTH("maj7", 0, 4, 7, 11),
    /** A minor chord with a minor seventh. */
    MINOR_SEVENTH("m7", 0, 3, 7, 10),
    /** A diminished chord with a minor seventh. */
    HALF_DIMINISHED("m7b5", 0, 3, 6, 10),
    /** A major chord with a sixth. */
    SIXTH("6", 0, 4, 7, 9),
    /** A minor chord with a sixth. */
    MINOR_SIXTH("m6", 0, 3, 7, 9),
    /** The fourth in place of the third. */
    SUSPENDED_FOURTH("sus4", 0, 5, 7),
    /** The second in place of the third. */
    SUSPENDED_SECOND("sus2", 0, 2, 7),
    /** Root and fifth alone. */
    FIFTH("5", 0, 7);

    private final String sign;
    private final List<Integer> above;

    Quality(String sign, Integer... above) {
      this.sign = sign;
      this.above = List.of(above);
    }

    /** As chord sheets write it after the root. */
    public String sign() {
      return sign;
    }

    /** Semitones of each note above the root, the root first. */
    public List<Integer> above() {
      return above;
    }
  }

  public Chord {
    if (root < 0 || root > 11) {
      throw new IllegalArgumentException("pitch class " + root);
    }
  }

  /** Pitch classes of its notes, the root first. */
  public List<Integer> pitchClasses() {
    return quality.above().stream().map(above -> (root + above) % 12).toList();
  }

  /** The perfect fifth above the root, or what stands for it. */
  int fifthAbove() {
    return quality.above().contains(7) ? 7 : quality.above().contains(6) ? 6 : 8;
  }
}
