package neckway.page;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import neckway.bench.CalibrationTakes;
import neckway.calibration.Calibration;
import neckway.calibration.Plucks;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.DrillFile;
import neckway.file.JsonFile;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.follow.NoteVerdict;
import neckway.hand.ShiftSaid;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.JoinChoice;
import neckway.neck.PlannedShift;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Behaviours;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.Review;
import neckway.run.Run;
import neckway.run.RunListener;
import neckway.string.GuitarProfile;

/**
 * A take reviewed, and the page that was filled in while it was played.
 *
 * @param live the page that was filled in, to be given the review
 * @param asPlayed what stood on it when the last note was over
 */
public record PagedTake(
    String name, PlayableDrill drill, Review review, PageModel live, List<PageStep> asPlayed) {
  private static final Path AUDIO = Path.of("test-audio");
  private static final List<String> SHAPES =
      List.of("major,dorian", "major", "major,dorian,phrygian");

  private static final PlayerSettings PLAYER =
      PlayerSettings.plain().withFirstBeat(0.4).withTailSeconds(0.6);

  private static final int BLOCK = 2048;

  /** Sorts of takes, one after the other by seed. */
  private static final int KINDS = 6;

  private static Optional<GuitarProfile> learntGuitar = Optional.empty();

  /** A take of those in {@code test-audio}, with its first beat given. */
  public static PagedTake recorded(String name) {
    return recorded(name, Optional.empty());
  }

  /** The same where the guitar of {@code calibration} plays, once that was learnt. */
  public static PagedTake recordedOnItsGuitar(String name) {
    try (TakeReader reader = TakeReader.open(AUDIO.resolve("calibration.wav"), Channel.AUTO)) {
      Plucks plucks = new Plucks(reader.sampleRate());
      float[] block = new float[BLOCK];
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        plucks.feed(block, 0, got);
      }
      Calibration calibration = new Calibration(Tuning.STANDARD, Calibration.USUAL_FRETS);
      return recorded(name, Optional.of(calibration.learn(plucks.finish()).profile()));
    }
  }

  private static PagedTake recorded(String name, Optional<GuitarProfile> guitar) {
    PlayableDrill drill = DrillFile.read(AUDIO.resolve(name + ".drill.json"));
    double firstBeat =
        JsonFile.read(AUDIO.resolve(name + ".truth.json")).at("/grid/firstBeat").asDouble();
    try (TakeReader reader = TakeReader.open(AUDIO.resolve(name + ".wav"), Channel.AUTO)) {
      Consumer<Run> sound =
          run -> {
            float[] block = new float[BLOCK];
            for (int got = reader.read(block); got > 0; got = reader.read(block)) {
              run.feed(block, 0, got);
            }
          };
      return of(name, drill, guitar, reader.sampleRate(), firstBeat, sound);
    }
  }

  /** The page read from the review alone. */
  public PageModel read() {
    PageModel page = new PageModel(drill);
    page.review(review);
    return page;
  }

  /** A drill with mistakes, played on the plain guitar. */
  public static Performance performance(PlayableDrill drill, List<Mistake> mistakes, int seed) {
    return new VirtualPlayer(PLAYER).play(drill.route(), drill.pulse(), mistakes, seed);
  }

  /**
   * A take of {@link #performance} and its page.
   *
   * @param known whether the guitar was learnt before
   */
  public static PagedTake of(String name, PlayableDrill drill, Performance take, boolean known) {
    return of(
        name,
        drill,
        known ? Optional.of(plainGuitar()) : Optional.empty(),
        take.sampleRate(),
        take.firstBeat(),
        run -> run.feed(take.samples(), 0, take.samples().length));
  }

  /** What is learnt of the guitar that all these takes are played on. */
  private static synchronized GuitarProfile plainGuitar() {
    if (learntGuitar.isEmpty()) {
      Performance calibration =
          new VirtualPlayer(PlayerSettings.plain())
              .calibration(Tuning.STANDARD, Calibration.USUAL_FRETS, 59);
      learntGuitar =
          Optional.of(
              CalibrationTakes.learnt(
                      calibration.samples(),
                      calibration.sampleRate(),
                      Tuning.STANDARD,
                      Calibration.USUAL_FRETS)
                  .profile());
    }
    return learntGuitar.get();
  }

  /**
   * Takes of the virtual player at two notes a beat, 170 to 200 beats a minute: slips of every
   * sort, shifts late, elsewhere and not made, breaks with a fresh start, early ends, two rounds.
   */
  public static List<PagedTake> performed(int count) {
    List<PagedTake> takes = new ArrayList<>();
    for (int seed = 0; seed < count; seed++) {
      takes.add(ofSeed(seed));
    }
    return takes;
  }

  private static PagedTake ofSeed(int seed) {
    Random chance = new Random(seed * 7919L + 3);
    int kind = seed % KINDS;
    boolean moved = kind == 3;
    PlayableDrill drill = drill(moved ? 0 : chance.nextInt(SHAPES.size()), seed, chance);
    int steps = drill.route().steps().size();
    List<Mistake> mistakes = new ArrayList<>();
    Behaviour behaviour = Behaviour.whole();
    switch (kind) {
      case 0, 1 -> mistakes.addAll(slips(steps, chance));
      case 2 -> late(drill, chance, mistakes);
      case 3 ->
          mistakes.add(
              new Mistake.ShiftElsewhere(
                  0, Direction.UP, OptionalInt.of(0), Optional.of(new GuitarString(2))));
      case 4 -> {
        mistakes.add(slip(Mistake.Kind.WRONG, 4));
        behaviour = seed % 4 == 0 ? Behaviours.again(12, 4) : Behaviours.stop(steps - 6);
      }
      default -> {
        if (!drill.route().shifts().isEmpty()) {
          mistakes.add(
              new Mistake.ShiftElsewhere(0, Direction.UP, OptionalInt.of(0), Optional.empty()));
        }
        mistakes.add(slip(Mistake.Kind.EXTRA, 3));
      }
    }
    Performance take =
        new VirtualPlayer(PLAYER.withBehaviour(behaviour))
            .play(drill.route(), drill.pulse(), mistakes, seed);
    return of("seed " + seed + " " + mistakes, drill, take, moved);
  }

  private static PlayableDrill drill(int shapes, int seed, Random chance) {
    List<JoinChoice> up = List.of(JoinChoice.on(4), JoinChoice.on(2));
    List<JoinChoice> down = List.of(JoinChoice.on(2), JoinChoice.on(5));
    int pairs = SHAPES.get(shapes).split(",").length - 1;
    return Drills.of(
            "G major",
            SHAPES.get(shapes),
            OptionalInt.of(3),
            up.subList(0, pairs),
            down.subList(0, pairs),
            seed % 10 == 1 ? 2 : 1)
        .drill()
        .withPulse(new Pulse(170 + chance.nextInt(31), 2, 4, 4))
        .playable();
  }

  private static List<Mistake> slips(int steps, Random chance) {
    List<Mistake> slips = new ArrayList<>();
    Mistake.Kind[] kinds = Mistake.Kind.values();
    int step = 1 + chance.nextInt(3);
    while (step < steps - 2) {
      slips.add(slip(kinds[chance.nextInt(kinds.length)], step));
      step += 4 + chance.nextInt(4);
    }
    return slips;
  }

  private static Mistake slip(Mistake.Kind kind, int step) {
    return new Mistake.Slip(kind, step, OptionalInt.empty());
  }

  private static void late(PlayableDrill drill, Random chance, List<Mistake> mistakes) {
    for (PlannedShift shift : drill.route().shifts()) {
      if (shift.round() == 0) {
        mistakes.add(new Mistake.Late(shift.landingStep(), 50 + chance.nextInt(400)));
      }
    }
    mistakes.add(new Mistake.Late(3, 60 + chance.nextInt(900)));
  }

  private static PagedTake of(
      String name,
      PlayableDrill drill,
      Optional<GuitarProfile> guitar,
      int sampleRate,
      double firstBeat,
      Consumer<Run> sound) {
    PageModel live = new PageModel(drill);
    Pulse pulse = drill.pulse();
    live.begun(new Grid(Grid.Source.GIVEN, pulse.tempo(), firstBeat, pulse.slotSeconds()));
    RunListener filling =
        new RunListener() {
          @Override
          public void decided(NoteVerdict verdict) {
            live.decided(verdict);
          }

          @Override
          public void unnamed(int attempt, int step) {
            live.unnamed(attempt, step);
          }

          @Override
          public void shifted(int attempt, ShiftSaid said) {
            live.shifted(attempt, said);
          }
        };
    OptionalDouble given = OptionalDouble.of(firstBeat);
    Run run = new Run(drill, guitar, sampleRate, given, Clock.MEASURED, filling);
    sound.accept(run);
    Review review = run.finish();
    List<PageStep> asPlayed = IntStream.range(0, live.steps()).mapToObj(live::at).toList();
    return new PagedTake(name, drill, review, live, asPlayed);
  }
}
