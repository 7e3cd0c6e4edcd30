package neckway.bench;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import neckway.band.Backing;
import neckway.band.ChordRow;
import neckway.band.Feel;
import neckway.drill.Pulse;
import neckway.hear.beside.AtRate;
import neckway.player.settings.PlayerSettings.Condition;
import neckway.player.surroundings.Biquad;
import neckway.sound.BackingTrack;
import neckway.sound.ClickTrack;
import neckway.sound.Together;
import neckway.sound.Turned;

/**
 * Takes as a live run hears them while a band plays: what the engine would play out, from the
 * silence before the count-in on, and what of it comes to the microphone through a small
 * loudspeaker and a room.
 */
final class LiveBackingTakes {
  private static final double LEAD_SECONDS = 1.5;

  /** As loud as they are where nothing else is asked. */
  private static final double BAND_GAIN = 0.2;

  private static final List<String> ROWS =
      List.of("I vi IV V", "twelve-bar", "two-five-one", "dorian", "I V vi IV");

  private LiveBackingTakes() {}

  /**
   * A take and what is played out.
   *
   * @param alone without the band; it begins with the lead and the count-in
   * @param played what is played out, on the take's frames
   * @param leak of it as it comes to the microphone, its root mean square as the guitar's
   */
  record Live(PlayedTake alone, float[] played, float[] leak) {
    /** What the microphone hears, rounded as its line does. */
    float[] heard(double gain) {
      float[] heard = alone.take().samples().clone();
      for (int i = 0; i < heard.length; i++) {
        heard[i] = Math.round(32768 * (heard[i] + (float) gain * leak[i])) / 32768f;
      }
      return heard;
    }

    PlayedTake with(float[] samples) {
      return LiveBackingTakes.with(alone, samples, 0);
    }
  }

  private static PlayedTake with(PlayedTake played, float[] samples, double later) {
    Take t = played.take();
    List<TrueNote> notes =
        t.notes().stream()
            .map(
                n ->
                    new TrueNote(
                        n.time() + later,
                        n.midi(),
                        n.string(),
                        n.fret(),
                        n.kind(),
                        n.step(),
                        n.note()))
            .toList();
    Take other =
        new Take(
            t.name(),
            t.sampleRate(),
            samples,
            notes,
            t.tuningCents(),
            OptionalDouble.of(played.firstBeat() + later),
            t.beatSeconds());
    return new PlayedTake(other, played.drill(), played.firstBeat() + later, played.mistakes());
  }

  /**
   * One drawn by a seed.
   *
   * @param drift by which share the output's clock is faster than the input's
   */
  static Live of(long seed, double roomSeconds, double drift) {
    Random random = new Random(99_000 + seed);
    PlayedTake bare = VirtualTakes.take(Population.ORDINARY, seed, Condition.CLEAN);
    double rate = bare.take().sampleRate();
    Pulse pulse = bare.drill().pulse();
    double before = LEAD_SECONDS + pulse.countIn() * pulse.beatSeconds();
    int more = Math.max(0, (int) Math.ceil((before - bare.firstBeat()) * rate));
    PlayedTake alone = with(bare, longer(bare.take().samples(), more, random), more / rate);
    Sound sound = sound(alone, 1, roomSeconds, drift, random);
    return new Live(alone, sound.played(), sound.leak());
  }

  /**
   * What is played out and what of it comes to the microphone.
   *
   * @param leak its root mean square as the guitar's
   */
  private record Sound(float[] played, float[] leak) {
    Sound part(int from, int to) {
      return new Sound(Arrays.copyOfRange(played, from, to), Arrays.copyOfRange(leak, from, to));
    }
  }

  private static Sound sound(
      PlayedTake alone, int rounds, double roomSeconds, double drift, Random random) {
    double rate = alone.take().sampleRate();
    int length = rounds * alone.take().samples().length;
    double start = alone.firstBeat() * rate;
    double latency = 0.01 * random.nextDouble() * rate;
    float[] played = new float[length];
    band(alone, start - latency, rate, random).fill(0, played);
    float[] leak = new float[length];
    float[] late = AtRate.of(played, 1 + drift, 1);
    System.arraycopy(late, 0, leak, (int) latency, Math.min(late.length, length - (int) latency));
    Biquad.highPass(120, 0.7, rate).run(leak);
    Biquad.lowPass(9000, 0.7, rate).run(leak);
    leak = BackingTakes.convolve(leak, BackingTakes.impulse(rate, roomSeconds, random));
    double loud = rms(alone.take().samples(), alone) / rms(leak, alone);
    for (int i = 0; i < length; i++) {
      leak[i] *= (float) loud;
    }
    return new Sound(played, leak);
  }

  /** What the player does in the rest between two rounds. */
  enum Rest {
    SILENT,
    /** Plays on, but for the count-in. */
    PLAYS,
    /** Plays on, in the count-in too. */
    PLAYS_IN_COUNT_IN
  }

  /**
   * Two rounds on one band: the same take twice. It goes on in the rest between them.
   *
   * @param second its take begins where the first one's ends
   */
  record Rounds(Live first, Live second) {}

  /** Two rounds drawn by a seed. */
  static Rounds two(long seed, double roomSeconds, double drift, Rest rest) {
    Random random = new Random(99_000 + seed);
    PlayedTake bare = VirtualTakes.take(Population.ORDINARY, seed, Condition.CLEAN);
    double rate = bare.take().sampleRate();
    Pulse pulse = bare.drill().pulse();
    double before = LEAD_SECONDS + pulse.countIn() * pulse.beatSeconds();
    int more = Math.max(0, (int) Math.ceil((before - bare.firstBeat()) * rate));
    PlayedTake alone = with(bare, longer(bare.take().samples(), more, random), more / rate);
    int length = alone.take().samples().length;
    Sound sound = sound(alone, 2, roomSeconds, drift, random);
    Sound first = sound.part(0, length);
    Sound second = sound.part(length, 2 * length);
    float[] again = alone.take().samples().clone();
    double until =
        switch (rest) {
          case SILENT -> 0;
          case PLAYS -> alone.firstBeat() - pulse.countIn() * pulse.beatSeconds();
          case PLAYS_IN_COUNT_IN -> alone.firstBeat() - 0.5 * pulse.beatSeconds();
        };
    int from = (int) (alone.firstBeat() * rate);
    for (int i = 0; i < until * rate; i++) {
      // dies away, as where a hand is laid on the strings
      double left = until - i / rate;
      again[i] += (float) (Math.min(1, left / 0.1) * alone.take().samples()[from + i]);
    }
    return new Rounds(
        new Live(alone, first.played(), first.leak()),
        new Live(with(alone, again, 0), second.played(), second.leak()));
  }

  /** The take's own quiet is not known; noise as quiet as its first tenth of a second is put. */
  private static float[] longer(float[] samples, int more, Random random) {
    double power = 0;
    int first = Math.min(4_000, samples.length);
    for (int i = 0; i < first; i++) {
      power += samples[i] * samples[i] / first;
    }
    float[] longer = new float[samples.length + more];
    for (int i = 0; i < more; i++) {
      longer[i] = (float) (Math.sqrt(power) * random.nextGaussian());
    }
    System.arraycopy(samples, 0, longer, more, samples.length);
    return longer;
  }

  private static Together band(PlayedTake take, double startFrame, double rate, Random random) {
    Pulse pulse = take.drill().pulse();
    ChordRow row =
        ChordRow.parse(
            take.drill().key().minor() ? "i VI VII i" : ROWS.get(random.nextInt(ROWS.size())),
            take.drill().key());
    Feel feel = Feel.values()[random.nextInt(Feel.values().length)];
    int bars = row.bars().size();
    Backing backing = Backing.goingRound(row, feel, pulse, bars);
    float[] sound = AtRate.of(backing.samples(), backing.sampleRate(), rate);
    double beat = pulse.beatSeconds() * rate;
    BackingTrack track =
        BackingTrack.round(
            sound, startFrame, bars * pulse.beatsPerBar() * beat, pulse.countIn() * beat);
    ClickTrack clicks =
        new ClickTrack(
            (int) rate,
            startFrame - pulse.countIn() * beat,
            beat,
            pulse.beatsPerBar(),
            pulse.countIn(),
            pulse.countIn(),
            ClickTrack.USUAL_GAIN);
    return new Together(clicks, new Turned(track, () -> BAND_GAIN));
  }

  /** From the first note to the last. */
  private static double rms(float[] x, PlayedTake take) {
    List<TrueNote> notes = take.take().notes();
    double rate = take.take().sampleRate();
    int from = (int) (notes.get(0).time() * rate);
    int to = Math.min(x.length, (int) (notes.get(notes.size() - 1).time() * rate));
    double sum = 0;
    for (float v : Arrays.copyOfRange(x, from, to)) {
      sum += v * v;
    }
    return Math.sqrt(sum / (to - from));
  }
}
