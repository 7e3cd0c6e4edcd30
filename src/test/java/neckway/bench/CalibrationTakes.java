package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import neckway.bench.RecordedNotes.Recording;
import neckway.calibration.Calibrated;
import neckway.calibration.Calibration;
import neckway.calibration.Plucks;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;

/** Calibration takes of virtual and recorded guitars, and what is learnt from them. */
public final class CalibrationTakes {
  private CalibrationTakes() {}

  /** A guitar of a sort as chance has it, played by one of a condition's players. */
  public static PlayerSettings player(Guitar.Model model, long seed, Condition condition) {
    Guitar guitar = model.any(new Random(seed), 15);
    return PlayerSettings.random(seed, condition).withGuitar(guitar);
  }

  /** The sequence as that player plays it. */
  public static Performance played(
      PlayerSettings player, Tuning tuning, List<Integer> frets, long seed) {
    return new VirtualPlayer(player).calibration(tuning, frets, seed);
  }

  /** What is learnt from a take. */
  public static Calibrated learnt(
      float[] samples, double sampleRateHz, Tuning tuning, List<Integer> frets) {
    Plucks plucks = new Plucks(sampleRateHz);
    plucks.feed(samples, 0, samples.length);
    return new Calibration(tuning, frets).learn(plucks.finish());
  }

  /**
   * The sequence laid out of one recorded guitar's labelled notes, a second apart, each let ring
   * until the next.
   *
   * @param take which of a place's recordings, from 0
   */
  public static float[] recorded(List<Recording> notes, List<Integer> frets, int take) {
    int rate = (int) RecordedNotes.SAMPLE_RATE;
    List<Recording> order = new ArrayList<>();
    for (int string = 6; string >= 1; string--) {
      for (int fret : frets) {
        int number = string;
        List<Recording> those =
            notes.stream().filter(r -> r.string() == number && r.fret() == fret).toList();
        order.add(those.get(take % those.size()));
      }
    }
    float[] samples = new float[(order.size() + 2) * rate];
    float peak = 0;
    for (Recording r : order) {
      peak = Math.max(peak, r.earlyPeak());
    }
    for (int i = 0; i < order.size(); i++) {
      Recording r = order.get(i);
      int fade = rate / 200;
      int length = Math.min(rate, r.samples().length - r.onsetFrame());
      for (int k = 0; k < length; k++) {
        float weight = Math.min(1f, Math.min((k + 1) / 88f, (length - k) / (float) fade));
        samples[(i + 1) * rate + k] += 0.3f / peak * weight * r.samples()[r.onsetFrame() + k];
      }
    }
    return samples;
  }
}
