package neckway.sound;

import java.nio.file.Path;
import neckway.file.sound.WholeSound;

/** How far a backing that leaks into the virtual microphone lies under the take played into it. */
public final class LeakLevel {
  /** The backing's level with the volume full, as root mean square: about its -23 LKFS. */
  private static final double FULL_DB = -23;

  private static final double UNDER_GUITAR_DB = 20;

  private LeakLevel() {}

  /** The backing's volume in percent with which it lies 20 dB under a take. */
  public static double percent(Path take) {
    float[] samples = WholeSound.read(take, 2).samples();
    double power = 0;
    for (float sample : samples) {
      power += sample * sample / samples.length;
    }
    double db = 10 * Math.log10(power) - UNDER_GUITAR_DB - FULL_DB;
    return Math.min(100, 100 * Math.pow(10, db / 20));
  }
}
