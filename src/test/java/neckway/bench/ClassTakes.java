package neckway.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.JsonFile;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedShift;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Behaviours;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;

/**
 * A class of invented students: a folder of recordings as phones bring them, a list of them, and
 * the drills that the list names. Each student is a virtual player of their own.
 */
final class ClassTakes {
  /** What is particular about a recording. */
  enum Family {
    /** The run alone. */
    ALONE,
    /** A sentence before it, after it, or both. */
    TALK,
    /** Two or three tries in a row. */
    TRIES,
    /** The list names no drill. */
    UNNAMED,
    /** The list names one drill, and another one of the list was played. */
    OTHER_DRILL,
    /** A shift missed, or made on another string. */
    SHIFTS
  }

  /** How a file is broken. */
  enum Broken {
    TRUNCATED,
    RANDOM_BYTES,
    EMPTY
  }

  /**
   * A recording that is whole.
   *
   * @param file its name in the folder
   * @param named the drill that the list names
   * @param played the notes of all tries; drill, first beat and mistakes are of the one that stands
   * @param shifts of the try that stands
   * @param tries how many there are
   */
  record Recorded(
      String file,
      Family family,
      Optional<PlayableDrill> named,
      PlayedTake played,
      List<PlayedShift> shifts,
      int tries) {}

  /** So many drills are on the list. */
  private static final int DRILLS = 4;

  /** Students of a family follow one another, so that each has every codec. */
  private static final int IN_A_ROW = 4;

  private static final int MOST_DRAWS = 200;
  private static final int MOST_SLIPS = 3;
  private static final double FADE_SECONDS = 0.1;
  private static final int BROKEN_BYTES = 60_000;
  static final String LIST = "list.csv";

  private final Path folder;
  private final long seed;
  private final TalkTakes phones;
  private final List<PlayableDrill> drills = new ArrayList<>();

  /**
   * @param folder where the recordings go
   * @param seed of the class
   */
  ClassTakes(Path folder, long seed) {
    this.folder = folder;
    this.seed = seed;
    this.phones = new TalkTakes(folder);
    drawDrills(new Random(seed * 31 + 5));
  }

  /** Two or three shapes each, no two of the same shapes in the same place. */
  private void drawDrills(Random random) {
    Set<List<Integer>> pitches = new HashSet<>();
    while (drills.size() < DRILLS) {
      PlayableDrill drill = new RandomDrills(random).ordinary();
      boolean shifts = !drill.route().shifts().isEmpty();
      if (shifts && pitches.add(drill.route().steps().stream().map(s -> s.midi()).toList())) {
        drills.add(drill);
      }
    }
  }

  /** Makes all recordings, three broken ones among them, the drills and the list. */
  List<Recorded> make(int takes) throws Exception {
    Files.createDirectories(folder.resolve("drills"));
    for (int i = 0; i < DRILLS; i++) {
      JsonFile.write(folder.resolve(drillFile(i)), DrillFile.toJson(drills.get(i)));
    }
    int whole = takes - Broken.values().length;
    List<Integer> numbers = java.util.stream.IntStream.range(0, whole).boxed().toList();
    List<Recorded> all = Batch.map("students", numbers, this::recorded);
    List<String> lines = new ArrayList<>(List.of("file,drill,name"));
    for (Recorded each : all) {
      String drill = each.named().map(d -> drillFile(drills.indexOf(d))).orElse("");
      lines.add(each.file() + "," + drill + "," + each.file().replaceFirst("\\..*", ""));
    }
    for (Broken how : Broken.values()) {
      lines.add(broken(how, folder.resolve(all.get(0).file())) + "," + drillFile(0) + "," + how);
    }
    Files.write(folder.resolve(LIST), lines);
    return all;
  }

  private static String drillFile(int index) {
    return "drills/drill-" + (index + 1) + ".drill.json";
  }

  private String broken(Broken how, Path whole) throws IOException {
    String name = "broken-" + how.name().toLowerCase(Locale.ROOT).replace('_', '-') + ".m4a";
    byte[] bytes = Files.readAllBytes(whole);
    byte[] left =
        switch (how) {
          case TRUNCATED -> Arrays.copyOf(bytes, bytes.length / 2);
          case RANDOM_BYTES -> {
            byte[] drawn = new byte[BROKEN_BYTES];
            new Random(seed).nextBytes(drawn);
            yield drawn;
          }
          case EMPTY -> new byte[0];
        };
    Files.write(folder.resolve(name), left);
    return name;
  }

  private Recorded recorded(int number) throws IOException, InterruptedException {
    Random random = new Random((seed + number) * 1_299_709 + 17);
    for (int draws = 0; draws < MOST_DRAWS; draws++) {
      try {
        return recorded(number, random);
      } catch (BadInput doesNotFit) {
        // a shift cannot be made on the string drawn: draw again
      }
    }
    throw new IllegalStateException("student " + number + ", seed " + seed);
  }

  private Recorded recorded(int number, Random random) throws IOException, InterruptedException {
    Family family = Family.values()[number / IN_A_ROW % Family.values().length];
    long own = seed + number;
    PlayableDrill drill = drills.get(random.nextInt(DRILLS));
    Optional<PlayableDrill> named =
        switch (family) {
          case UNNAMED -> Optional.empty();
          case OTHER_DRILL ->
              Optional.of(
                  drills.get((drills.indexOf(drill) + 1 + random.nextInt(DRILLS - 1)) % DRILLS));
          default -> Optional.of(drill);
        };
    Condition condition = random.nextInt(3) == 0 ? Condition.DIRTY : Condition.CLEAN;
    PlayerSettings settings = OrdinaryDraw.settings(own, condition);
    String chain = TalkTakes.chain(own, random);
    List<Performance> tries = new ArrayList<>();
    int count = family == Family.TRIES ? 2 + random.nextInt(2) : 1;
    for (int i = 0; i < count; i++) {
      boolean last = i == count - 1;
      int end = drill.route().steps().size() - 1;
      boolean whole = last || random.nextBoolean();
      Behaviour behaviour =
          whole
              ? Behaviours.withMistakes(
                  family == Family.SHIFTS ? 0 : random.nextInt(MOST_SLIPS + 1))
              : Behaviours.stop(6 + random.nextInt(end - 10));
      List<Mistake> mistakes = family == Family.SHIFTS ? List.of(shift(drill, random)) : List.of();
      tries.add(
          new VirtualPlayer(settings.withBehaviour(behaviour))
              .play(drill.route(), drill.pulse(), mistakes, own * 10 + i));
    }
    return put(number, family, named, drill, settings, chain, tries, random);
  }

  private static Mistake shift(PlayableDrill drill, Random random) {
    Direction way = random.nextBoolean() ? Direction.UP : Direction.DOWN;
    boolean missed = random.nextBoolean();
    return SaidTakes.shift(
        drill,
        random,
        way,
        missed ? Optional.empty() : Optional.of(new GuitarString(1 + random.nextInt(6))));
  }

  private Recorded put(
      int number,
      Family family,
      Optional<PlayableDrill> named,
      PlayableDrill drill,
      PlayerSettings settings,
      String chain,
      List<Performance> tries,
      Random random)
      throws IOException, InterruptedException {
    long own = seed + number;
    double rate = tries.get(0).sampleRate();
    double level = TalkTakes.rms(tries.get(0).samples());
    double speechDb = -8 + 12 * random.nextDouble();
    int around = family == Family.TALK ? 1 + random.nextInt(3) : 0;
    List<float[]> parts = new ArrayList<>();
    int at = 0;
    if ((around & 1) != 0) {
      parts.add(phones.sentence(true, own, speechDb, level, rate, random));
      at += parts.get(0).length;
    }
    List<PlayedTake> played = new ArrayList<>();
    for (int i = 0; i < tries.size(); i++) {
      Performance each = tries.get(i);
      int lead = (int) (rate * (each.notes().get(0).time() - 0.3 - 0.7 * random.nextDouble()));
      float[] samples = each.samples();
      float[] sound = Arrays.copyOfRange(samples, Math.max(0, lead), samples.length);
      PlayedTake take = VirtualTakes.of(own, "student " + number, settings, drill, each);
      played.add(TalkTakes.later(take, (at - Math.max(0, lead)) / rate));
      parts.add(faded(sound, rate));
      at += sound.length;
    }
    if ((around & 2) != 0) {
      parts.add(phones.sentence(false, own, speechDb, level, rate, random));
    }
    String name = String.format(Locale.ROOT, "student-%02d", number + 1);
    Path file = phones.recorded(TalkTakes.joined(parts), (int) rate, chain, name);
    int standing = standing(tries);
    PlayedTake stands = played.get(standing);
    List<TrueNote> notes = played.stream().flatMap(p -> p.take().notes().stream()).toList();
    Take take = stands.take();
    PlayedTake all =
        stands.withTake(
            new Take(
                name + " " + family + " " + chain + " " + take.name(),
                rate,
                new float[0],
                notes,
                take.tuningCents(),
                take.firstBeat(),
                take.beatSeconds()));
    return new Recorded(
        file.getFileName().toString(),
        family,
        named,
        all,
        tries.get(standing).shifts(),
        tries.size());
  }

  /** A string that still rings is not cut off with a click. */
  private static float[] faded(float[] sound, double rate) {
    int frames = (int) (FADE_SECONDS * rate);
    for (int i = 0; i < frames; i++) {
      sound[i] *= (float) i / frames;
      sound[sound.length - 1 - i] *= (float) i / frames;
    }
    return sound;
  }

  /** The one that got furthest; of equals the one with fewer slips, then the later. */
  private static int standing(List<Performance> tries) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < tries.size(); i++) {
      order.add(i);
    }
    return order.stream()
        .max(
            Comparator.comparingInt((Integer i) -> reached(tries.get(i)))
                .thenComparingInt(i -> -slips(tries.get(i)))
                .thenComparingInt(i -> i))
        .orElseThrow();
  }

  private static int reached(Performance played) {
    return played.notes().stream().flatMapToInt(n -> n.step().stream()).max().orElse(-1);
  }

  private static int slips(Performance played) {
    long wrong = played.notes().stream().filter(n -> n.kind() != PlayedNote.Kind.RIGHT).count();
    return (int) wrong + played.skipped().size();
  }

  /** One student's take of three minutes as a phone writes it: the drill again and again. */
  Path threeMinutes(Path into) throws IOException, InterruptedException {
    PlayableDrill once = drills.get(0).once();
    int steps = once.route().steps().size() - 1;
    int rounds = (int) Math.ceil(180 / (steps * once.pulse().slotSeconds()));
    PlayableDrill drill = once.drill().withRounds(rounds).playable();
    Performance played =
        new VirtualPlayer(OrdinaryDraw.settings(seed, Condition.CLEAN))
            .play(drill.route(), drill.pulse(), List.of(), seed);
    JsonFile.write(into.resolve("long.drill.json"), DrillFile.toJson(drill));
    return new TalkTakes(into).recorded(played.samples(), played.sampleRate(), "aac;", "long");
  }
}
