package neckway.player.voice;

import java.util.Random;
import neckway.neck.Pitch;
import neckway.player.plan.PlayedNote;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.player.surroundings.Biquad;

/** The sounds of pick, fingers and frets beside the string's own. */
final class FingerNoise {
  private final PlayerSettings settings;
  private final Random random;

  FingerNoise(PlayerSettings settings, Random random) {
    this.settings = settings;
    this.random = random;
  }

  /** A short burst as the pick leaves the string, and now and then a buzzing fret. */
  void attack(float[] out, PlayedNote note, double level) {
    Habits habits = settings.habits();
    int rate = settings.sampleRate();
    double loud = level * note.velocity() * (0.03 + 0.12 * habits.pick().hardness());
    double seconds = 0.0015 + 0.003 * random.nextDouble();
    Biquad band =
        Biquad.bandPass(Math.min(0.4 * rate, 1800 + 2500 * habits.pick().hardness()), 0.8, rate);
    int from = (int) note.frame();
    int to = (int) Math.min(out.length, note.frame() + (long) (8 * seconds * rate));
    for (int n = from; n < to; n++) {
      double envelope = Math.exp(-(n - from) / (seconds * rate));
      out[n] += (float) (loud * band.next(random.nextGaussian()) * envelope);
    }
    if (random.nextDouble() < habits.noises().buzzShare()) {
      buzz(out, note);
    }
  }

  private void buzz(float[] out, PlayedNote note) {
    int rate = settings.sampleRate();
    double period = rate / Pitch.hz(note.midi());
    double seconds = 0.05 + 0.1 * random.nextDouble();
    Biquad band =
        Biquad.bandPass(Math.min(0.4 * rate, 2200 + 1500 * random.nextDouble()), 1.5, rate);
    int to = (int) Math.min(out.length, note.frame() + (long) (3 * seconds * rate));
    double phase = 0;
    for (int n = (int) note.frame(); n < to; n++) {
      double kick = 0;
      phase += 1;
      if (phase >= period) {
        phase -= period;
        kick = (0.3 + 0.7 * random.nextDouble()) * 1.5;
      }
      double age = (n - note.frame()) / (seconds * rate);
      out[n] += (float) (note.velocity() * 0.35 * band.next(kick) * age * Math.exp(1 - 2 * age));
    }
  }

  /** A finger sliding along a wound string, between two frames. */
  void squeak(float[] out, PlayedNote note, long from, long to) {
    int rate = settings.sampleRate();
    boolean wound = note.place().string().number() >= settings.guitar().woundStrings();
    if (!wound || random.nextDouble() >= settings.habits().noises().squeakShare()) {
      return;
    }
    double startHz = 1500 + 1500 * random.nextDouble();
    double endHz = startHz * (0.7 + 0.9 * random.nextDouble());
    double loud = 0.05 + 0.1 * random.nextDouble();
    int first = (int) Math.max(0, Math.min(from, to - rate / 15));
    int last = (int) Math.min(out.length, to);
    Biquad band = Biquad.bandPass(startHz, 6, rate);
    for (int n = first; n < last; n++) {
      double part = (double) (n - first) / (last - first);
      if (n % 64 == 0) {
        band.centre(Math.min(0.4 * rate, startHz + part * (endHz - startHz)), 6, rate);
      }
      out[n] += (float) (loud * Math.sin(Math.PI * part) * band.next(random.nextGaussian()));
    }
  }
}
