package neckway.player.voice;

import java.util.Random;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedNote.How;
import neckway.player.settings.Habits;

/** How far a note is off its own pitch as it sounds: sharp at the stroke, then perhaps vibrato. */
final class PitchContour {
  private static final double GLIDE_SECONDS = 0.05;
  private static final double STEADY_SECONDS = 0.18;
  private static final double GROWING_SECONDS = 0.2;

  private final double glideCents;
  private final boolean vibrato;
  private final double vibratoHz;
  private final double vibratoCents;

  PitchContour(PlayedNote first, Habits habits, Random random) {
    double hard = first.velocity() * first.velocity();
    glideCents = first.how() == How.PLUCK ? 8 * random.nextDouble() * hard : 0;
    vibrato = random.nextDouble() < habits.noises().vibratoShare();
    vibratoHz = 4.5 + 2 * random.nextDouble();
    vibratoCents = 8 + 22 * random.nextDouble();
  }

  /**
   * Cents off.
   *
   * @param sinceStroke seconds since the string was struck
   * @param sinceFret seconds since the finger is on its fret
   */
  double cents(double sinceStroke, double sinceFret) {
    double off = glideCents * Math.exp(-sinceStroke / GLIDE_SECONDS);
    double shaken = sinceFret - STEADY_SECONDS;
    if (vibrato && shaken > 0) {
      double grown = Math.min(1, shaken / GROWING_SECONDS);
      off += grown * vibratoCents * 0.5 * (1 - Math.cos(2 * Math.PI * vibratoHz * shaken));
    }
    return off;
  }
}
