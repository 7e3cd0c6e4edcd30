package neckway.bench;

import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;
import neckway.bench.SampledNotes.Bank;
import neckway.drill.PlayableDrill;
import neckway.neck.Step;
import neckway.neck.Tuning;

/**
 * Runs rendered by the JDK's own synthesizer playing General MIDI guitars.
 *
 * <p>The synthesizer sounds a note {@value #DELAY_MS} ms after it was sent, always; that is added
 * to the truth. The notes of a soundfont begin with some quiet of their own, different from note to
 * note: there the truth is the note rendered by itself, its first sample over 5 % of the peak of
 * its first 30 ms.
 */
public final class JdkSynthTakes {
  /** From note-on to sound with the built-in bank, milliseconds, measured. */
  public static final double DELAY_MS = 6.89;

  /** Debian's package fluid-soundfont-gm. */
  static final File FLUID = new File("/usr/share/sounds/sf2/FluidR3_GM.sf2");

  /** General MIDI programs of guitars but for the two distorted ones and harmonics, from 0. */
  private static final int FIRST_PROGRAM = 24;

  private static final int PROGRAMS = 5;
  private static final Map<String, Double> DELAYS = new ConcurrentHashMap<>();

  private final Bank bank;
  private final boolean builtIn;

  private JdkSynthTakes(Bank bank, boolean builtIn) {
    this.bank = bank;
    this.builtIn = builtIn;
  }

  /** All banks that are there, the built-in one first. */
  public static List<JdkSynthTakes> banks()
      throws IOException, InvalidMidiDataException, ReflectiveOperationException {
    List<JdkSynthTakes> banks = new ArrayList<>();
    banks.add(new JdkSynthTakes(SampledNotes.builtIn(), true));
    SampledNotes.soundfont(FLUID).ifPresent(b -> banks.add(new JdkSynthTakes(b, false)));
    return banks;
  }

  public String name() {
    return bank.name();
  }

  /** A run in standard tuning. */
  public PlayedTake take(long seed) throws Exception {
    Random random = new Random(seed * 31 + 5);
    random.nextInt();
    int shapes = RandomDrills.MOSTLY_TWO[random.nextInt(RandomDrills.MOSTLY_TWO.length)];
    PlayableDrill drill = new RandomDrills(random).on(Tuning.STANDARD, shapes, 0, 21, 0.14, 0.5);
    int program = FIRST_PROGRAM + random.nextInt(PROGRAMS);
    double gap = drill.pulse().slotSeconds();
    double jitter = 0.002 + 0.01 * random.nextDouble();
    double first = 1 + random.nextDouble();
    List<Step> steps = drill.route().steps();
    double[] sent = new double[steps.size()];
    for (int i = 0; i < sent.length; i++) {
      sent[i] = first + i * gap + jitter * Math.max(-2, Math.min(2, random.nextGaussian()));
    }
    double seconds = sent[sent.length - 1] + 2;
    int[] velocities = random.ints(sent.length, 60, 120).toArray();
    float[] samples =
        SampledNotes.render(bank, program, seconds, r -> play(r, steps, sent, gap, velocities));
    List<TrueNote> notes = new ArrayList<>();
    for (Step step : steps) {
      notes.add(
          TrueNote.right(
              sent[step.index()] + delaySeconds(program, step.midi(), velocities[step.index()]),
              step,
              "velocity " + velocities[step.index()]));
    }
    String name = String.format("%s program %d seed %d gap %.2f", bank.name(), program, seed, gap);
    double beat = drill.pulse().beatSeconds();
    Take take =
        new Take(name, SampledNotes.RATE, samples, notes, 0, OptionalDouble.of(first), beat);
    return new PlayedTake(take, drill, first, Map.of());
  }

  private static void play(
      Receiver receiver, List<Step> steps, double[] sent, double gap, int[] velocities)
      throws InvalidMidiDataException {
    for (int i = 0; i < sent.length; i++) {
      int midi = steps.get(i).midi();
      double end = i + 1 < sent.length ? sent[i + 1] - 0.004 : sent[i] + gap;
      receiver.send(
          new ShortMessage(ShortMessage.NOTE_ON, 0, midi, velocities[i]), micros(sent[i]));
      receiver.send(new ShortMessage(ShortMessage.NOTE_OFF, 0, midi, 0), micros(end));
    }
  }

  private static long micros(double seconds) {
    return Math.round(seconds * 1e6);
  }

  private double delaySeconds(int program, int midi, int velocity) {
    if (builtIn) {
      return DELAY_MS / 1000;
    }
    return DELAYS.computeIfAbsent(
        bank.name() + program + " " + midi + " " + velocity,
        k -> measuredDelay(program, midi, velocity));
  }

  /** Seconds from note-on to sound of one note by itself. */
  double measuredDelay(int program, int midi, int velocity) {
    double at = 0.1;
    try {
      float[] alone =
          SampledNotes.render(
              bank,
              program,
              0.3,
              r -> r.send(new ShortMessage(ShortMessage.NOTE_ON, 0, midi, velocity), micros(at)));
      float peak = 0;
      int end = (int) ((at + 0.04) * SampledNotes.RATE);
      for (int i = 0; i < end; i++) {
        peak = Math.max(peak, Math.abs(alone[i]));
      }
      int onset = 0;
      while (Math.abs(alone[onset]) <= 0.05f * peak) {
        onset++;
      }
      return onset / SampledNotes.RATE - at;
    } catch (Exception e) {
      throw new IllegalStateException(bank.name() + " does not render", e);
    }
  }
}
