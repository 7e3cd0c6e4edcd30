package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import neckway.bench.RecordedNotes.Recording;
import neckway.drill.PlayableDrill;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.plan.PlayedShift;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import neckway.player.surroundings.Amp;
import neckway.player.surroundings.Surroundings;
import neckway.string.GuitarProfile;

/**
 * Runs over two or three shapes whose first shift is made, moved to the next string, moved farther
 * or missed, equally often, on a guitar that was learnt from its calibration sequence.
 */
final class ShiftTakes {
  /** What is done with the first shift. */
  enum Deed {
    MADE,
    NEXT,
    FAR,
    MISSED,
    /** The first shift is made and one down is not. */
    STAYED_ABOVE;

    /** What is done with the first shift in the take of a seed. */
    static Deed ofFirst(long seed) {
      return values()[(int) (seed % 4)];
    }
  }

  /**
   * A take.
   *
   * @param played the take and its drill
   * @param deed what was done with the first shift
   * @param shifts what became of each
   * @param guitar the guitar as learnt
   */
  record ShiftTake(
      PlayedTake played, Deed deed, List<PlayedShift> shifts, Optional<GuitarProfile> guitar) {}

  private static final List<Integer> FRETS = List.of(0, 3, 7, 12);
  private static final List<Integer> RECORDED_FRETS = List.of(1, 3, 7, 12);

  private static final List<Mistake.Kind> SLIPS =
      List.of(Mistake.Kind.WRONG, Mistake.Kind.SKIP, Mistake.Kind.REPEAT);
  private static final Slips NO_SLIPS = (drill, random) -> List.of();

  private ShiftTakes() {}

  /** A run of the virtual player through an amp. */
  static ShiftTake virtual(long seed, Amp.Voicing amp, Guitar.Model model) {
    return virtual(seed, amp, model, PlayerSettings.random(seed, Condition.CLEAN));
  }

  /** The same, every shift slid, half of them struck anew on landing. */
  static ShiftTake slid(long seed, Amp.Voicing amp, Guitar.Model model) {
    PlayerSettings settings = PlayerSettings.random(seed, Condition.CLEAN);
    return virtual(seed, amp, model, settings.withHabits(settings.habits().withLegato(0, 1, 0.5)));
  }

  /**
   * The same, with a wrong note, a note left out or one struck twice on the step before each shift
   * lands or the one before that.
   */
  static ShiftTake slipped(long seed, Amp.Voicing amp, Guitar.Model model) {
    PlayerSettings settings = PlayerSettings.random(seed, Condition.CLEAN);
    return virtual(seed, amp, model, settings, Deed.ofFirst(seed), ShiftTakes::slipsBeforeShifts);
  }

  /**
   * The same, all shifts up made as planned, one down not made: the hand stays above, mostly to the
   * end of the round.
   */
  static ShiftTake stayedAbove(long seed, Amp.Voicing amp, Guitar.Model model) {
    PlayerSettings settings = PlayerSettings.random(seed, Condition.CLEAN);
    return virtual(seed, amp, model, settings, Deed.STAYED_ABOVE, NO_SLIPS);
  }

  /** The same before a microphone: a room, hum 35 to 55 dB and hiss 40 to 60 dB under the notes. */
  static ShiftTake microphone(long seed, Guitar.Model model) {
    Random random = new Random(seed * 41 + 3);
    PlayerSettings settings = PlayerSettings.random(seed, Condition.CLEAN);
    Surroundings a = settings.surroundings();
    Surroundings room =
        new Surroundings(
            Amp.Voicing.NONE,
            0.05 + 0.2 * random.nextDouble(),
            0.2 + 0.4 * random.nextDouble(),
            OptionalDouble.of(40 + 20 * random.nextDouble()),
            OptionalDouble.of(35 + 20 * random.nextDouble()),
            random.nextBoolean() ? 50 : 60,
            OptionalDouble.empty(),
            a.clickSound(),
            a.levelDbfs(),
            0,
            false);
    settings = settings.withGuitar(model.any(random, 15)).withSurroundings(room);
    return play(seed, settings, "microphone " + model, Deed.ofFirst(seed), random, NO_SLIPS);
  }

  private static List<Mistake> slipsBeforeShifts(PlayableDrill drill, Random random) {
    List<Mistake> slips = new ArrayList<>();
    for (PlannedShift shift : drill.route().shifts()) {
      Mistake.Kind kind = SLIPS.get(random.nextInt(SLIPS.size()));
      int step = Math.max(0, shift.landingStep() - 1 - random.nextInt(2));
      slips.add(new Mistake.Slip(kind, step, OptionalInt.empty()));
    }
    return slips;
  }

  /** Slips made besides what is done with the first shift. */
  private interface Slips {
    List<Mistake> of(PlayableDrill drill, Random random);
  }

  private static ShiftTake virtual(
      long seed, Amp.Voicing amp, Guitar.Model model, PlayerSettings player) {
    return virtual(seed, amp, model, player, Deed.ofFirst(seed), NO_SLIPS);
  }

  private static ShiftTake virtual(
      long seed,
      Amp.Voicing amp,
      Guitar.Model model,
      PlayerSettings player,
      Deed deed,
      Slips slips) {
    Random random = new Random(seed * 31 + 5);
    PlayerSettings settings = player;
    settings =
        settings.withGuitar(model.any(random, 15)).withSurroundings(with(settings, amp, random));
    return play(seed, settings, amp + " " + model, deed, random, slips);
  }

  /** Plays on a guitar that is learnt first, in the same surroundings. */
  private static ShiftTake play(
      long seed, PlayerSettings settings, String name, Deed deed, Random random, Slips slips) {
    Performance learnt = new VirtualPlayer(settings).calibration(Tuning.STANDARD, FRETS, seed + 77);
    Optional<GuitarProfile> guitar = learn(learnt.samples(), learnt.sampleRate(), FRETS);
    return play(seed, settings, name, deed, guitar, 0, random, slips);
  }

  private static Surroundings with(PlayerSettings s, Amp.Voicing amp, Random random) {
    Surroundings a = s.surroundings();
    return new Surroundings(
        amp,
        amp == Amp.Voicing.NONE ? 0 : 0.15 * random.nextDouble(),
        0.3,
        a.hissUnderDb(),
        a.humUnderDb(),
        a.humHz(),
        a.clickUnderDb(),
        a.clickSound(),
        a.levelDbfs(),
        0,
        false);
  }

  private static ShiftTake play(
      long seed,
      PlayerSettings settings,
      String name,
      Deed deed,
      Optional<GuitarProfile> guitar,
      int lowestFret,
      Random random,
      Slips slips) {
    while (true) {
      int shapes = random.nextInt(4) == 0 ? 3 : 2;
      PlayableDrill drill =
          new RandomDrills(random).on(Tuning.STANDARD, shapes, lowestFret, 21, 0.2, 0.5);
      try {
        List<Mistake> mistakes = new ArrayList<>(mistakes(drill, deed, random));
        mistakes.addAll(slips.of(drill, random));
        Performance p =
            new VirtualPlayer(settings.withBehaviour(Behaviour.whole()))
                .play(drill.route(), drill.pulse(), mistakes, seed);
        PlayedTake take = VirtualTakes.of(seed, name + " " + deed, settings, drill, p);
        if (p.notes().stream().allMatch(n -> n.place().fret() >= lowestFret)) {
          return new ShiftTake(take, deed, p.shifts(), guitar);
        }
      } catch (BadInput doesNotFit) {
        // that string is out of reach of this run: draw again
      }
    }
  }

  /**
   * Where a pickup sits, and what its coil lets through.
   *
   * @param share of the string between bridge and pickup
   * @param topHz two poles there
   */
  record Pickup(double share, double topHz) {
    /** In front of the neck, a humbucker: common practice, no source. */
    static final Pickup NECK = new Pickup(0.25, 2_500);

    /**
     * A recording as that pickup would have it: the wave, less itself come back from the bridge
     * (the same time later at every fret), through the coil.
     */
    private Recording of(Recording r) {
      double openHz = 440 * Math.pow(2, (r.midi() - r.fret() - 69) / 12.0);
      int later = (int) Math.round(share / openHz * RecordedNotes.SAMPLE_RATE);
      double keep = Math.exp(-2 * Math.PI * topHz / RecordedNotes.SAMPLE_RATE);
      float[] out = new float[r.samples().length];
      double first = 0;
      double second = 0;
      for (int i = 0; i < out.length; i++) {
        double wave = r.samples()[i] - (i < later ? 0 : r.samples()[i - later]);
        first = keep * first + (1 - keep) * wave;
        second = keep * second + (1 - keep) * first;
        out[i] = (float) second;
      }
      float peak = 0;
      for (int i = r.onsetFrame(); i < r.onsetFrame() + 0.03 * RecordedNotes.SAMPLE_RATE; i++) {
        peak = Math.max(peak, Math.abs(out[i]));
      }
      return new Recording(
          r.file(),
          r.midi(),
          r.string(),
          r.fret(),
          r.onsetFrame(),
          r.measuredOnsetFrame(),
          peak,
          out);
    }
  }

  /** The same played by single notes of the recorded solid body; learnt from other ones. */
  static ShiftTake stitched(RecordedNotes recorded, long seed) {
    return stitched(recorded.of("solidbody"), seed);
  }

  /** The same by a pickup elsewhere. */
  static ShiftTake stitched(RecordedNotes recorded, Pickup pickup, long seed) {
    return stitched(recorded.of("solidbody").stream().map(pickup::of).toList(), seed);
  }

  private static ShiftTake stitched(List<Recording> all, long seed) {
    Random random = new Random(seed * 37 + 11);
    PlayerSettings settings = PlayerSettings.plain();
    settings =
        settings.withHabits(
            settings.habits().withTiming(0, 2 + 8 * random.nextDouble(), 4 * random.nextDouble()));
    float[] calibration = CalibrationTakes.recorded(all, RECORDED_FRETS, 0);
    Optional<GuitarProfile> learnt = learn(calibration, RecordedNotes.SAMPLE_RATE, RECORDED_FRETS);
    while (true) {
      ShiftTake plan =
          play(seed, settings, "stitched", Deed.ofFirst(seed), learnt, 1, random, NO_SLIPS);
      Optional<Take> take = stitch(plan.played().take(), all, random);
      if (take.isPresent()) {
        return new ShiftTake(
            plan.played().withTake(take.get()), plan.deed(), plan.shifts(), plan.guitar());
      }
    }
  }

  private static Optional<Take> stitch(Take plan, List<Recording> all, Random random) {
    float[] mix = new float[plan.samples().length];
    List<TrueNote> notes = plan.notes();
    double rate = plan.sampleRate();
    List<TrueNote> truth = new ArrayList<>();
    for (int i = 0; i < notes.size(); i++) {
      TrueNote n = notes.get(i);
      List<Recording> fit =
          all.stream()
              .filter(r -> r.string() == n.string() && r.fret() == n.fret())
              .filter(r -> !r.file().endsWith("-1.flac"))
              .toList();
      if (fit.isEmpty()) {
        return Optional.empty();
      }
      Recording r = fit.get(random.nextInt(fit.size()));
      double next = i + 1 < notes.size() ? notes.get(i + 1).time() : n.time() + 1.5;
      boolean sameString = i + 1 < notes.size() && notes.get(i + 1).string() == n.string();
      double stop = next + (sameString ? 0 : 0.03 * random.nextDouble());
      double gain = 0.2 / r.earlyPeak() * Math.pow(10, (4 * random.nextDouble() - 2) / 20);
      StitchedTakes.lay(mix, r, 0, n.time(), stop, 0.01, gain);
      truth.add(n);
    }
    return Optional.of(
        new Take(plan.name(), rate, mix, truth, 0, plan.firstBeat(), plan.beatSeconds()));
  }

  private static List<Mistake> mistakes(PlayableDrill drill, Deed deed, Random random) {
    PlannedShift first = drill.route().shifts().get(0);
    int planned = first.string().number();
    List<Integer> strings = new ArrayList<>();
    for (int s = 1; s <= drill.neck().tuning().count(); s++) {
      int off = Math.abs(s - planned);
      if (deed == Deed.NEXT && off == 1 || deed == Deed.FAR && off > 1) {
        strings.add(s);
      }
    }
    Optional<GuitarString> to =
        strings.isEmpty()
            ? Optional.empty()
            : Optional.of(new GuitarString(strings.get(random.nextInt(strings.size()))));
    if (deed == Deed.STAYED_ABOVE) {
      int pairs = drill.route().shapes().size() - 1;
      return List.of(
          new Mistake.ShiftElsewhere(
              0, Direction.DOWN, OptionalInt.of(random.nextInt(pairs)), Optional.empty()));
    }
    return deed == Deed.MADE
        ? List.of()
        : List.of(new Mistake.ShiftElsewhere(0, Direction.UP, OptionalInt.of(0), to));
  }

  private static Optional<GuitarProfile> learn(float[] samples, double rate, List<Integer> frets) {
    try {
      return Optional.of(CalibrationTakes.learnt(samples, rate, Tuning.STANDARD, frets).profile());
    } catch (BadInput cannotBeLearnt) {
      return Optional.empty();
    }
  }
}
