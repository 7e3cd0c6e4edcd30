package neckway.player;

import java.util.Optional;
import java.util.Random;
import neckway.drill.Pulse;
import neckway.player.plan.Plan;
import neckway.player.settings.PlayerSettings;
import neckway.player.surroundings.Amp;
import neckway.player.surroundings.Biquad;
import neckway.player.surroundings.ClickLeak;
import neckway.player.surroundings.Levels;
import neckway.player.surroundings.Room;
import neckway.player.surroundings.Surroundings;

/** Puts amp, room, noise, click and level round the strings' own sound. */
final class Surrounder {
  private final PlayerSettings settings;
  private final Random random;

  Surrounder(PlayerSettings settings, Random random) {
    this.settings = settings;
    this.random = random;
  }

  /** Works in place; without a pulse nothing clicks. */
  void run(float[] samples, Optional<Pulse> pulse, Plan plan) {
    Surroundings around = settings.surroundings();
    int rate = settings.sampleRate();
    new Amp(around.amp(), rate).run(samples);
    new Room(around.roomWet(), around.roomSeconds(), rate, random).run(samples);
    double peak = Levels.gain(around.levelDbfs());
    Levels.toPeak(samples, peak);
    if (pulse.isPresent() && around.clickUnderDb().isPresent()) {
      double clickPeak = peak * Levels.gain(-around.clickUnderDb().getAsDouble());
      double until = plan.lengthSeconds() - settings.tailSeconds();
      new ClickLeak(around.clickSound(), rate, random)
          .run(samples, pulse.get(), plan.firstBeat(), until, clickPeak);
    }
    around.humUnderDb().ifPresent(db -> hum(samples, peak * Levels.gain(-db), around.humHz()));
    around.hissUnderDb().ifPresent(db -> hiss(samples, peak * Levels.gain(-db)));
    if (around.phone()) {
      Biquad.highPass(280, 0.7, rate).run(samples);
      Biquad.lowPass(3500, 0.8, rate).run(samples);
      Biquad.lowPass(3800, 0.6, rate).run(samples);
      Levels.toPeak(samples, peak);
    }
    for (int n = 0; n < samples.length; n++) {
      double x = samples[n] + around.dcOffset();
      samples[n] = (float) Math.max(-1, Math.min(1, x));
    }
  }

  private void hiss(float[] samples, double rms) {
    for (int n = 0; n < samples.length; n++) {
      samples[n] += (float) (rms * random.nextGaussian());
    }
  }

  private void hum(float[] samples, double rms, double hz) {
    double[] parts = new double[8];
    double power = 0;
    for (int k = 0; k < parts.length; k++) {
      parts[k] = (0.3 + random.nextDouble()) / (1 + 0.7 * k);
      power += parts[k] * parts[k] / 2;
    }
    double off = hz * (1 + 0.001 * random.nextGaussian());
    for (int k = 0; k < parts.length; k++) {
      double angle = 2 * Math.PI * off * (k + 1) / settings.sampleRate();
      double phase = 2 * Math.PI * random.nextDouble();
      double re = Math.cos(phase) * parts[k] * rms / Math.sqrt(power);
      double im = Math.sin(phase) * parts[k] * rms / Math.sqrt(power);
      double c = Math.cos(angle);
      double s = Math.sin(angle);
      for (int n = 0; n < samples.length; n++) {
        samples[n] += (float) im;
        double next = c * re - s * im;
        im = s * re + c * im;
        re = next;
      }
    }
  }
}
