package neckway.desk.open;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import neckway.drill.PlayableDrill;
import neckway.file.ReviewFile;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.log.RunLog;
import neckway.log.RunTransfer;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.PlannedShift;
import neckway.neck.Tuning;
import neckway.practice.PlanItem;
import neckway.practice.PlanMaker;
import neckway.practice.PlayedRound;
import neckway.practice.Reach;
import neckway.practice.RoundsOfRun;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.GuitarKnown;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.review.Summary;
import neckway.review.TakeFigures;
import neckway.review.Timing;

/** A log of a player who is made up, who plays by the plan and gets better at it. */
public final class InventedLog {
  /** The day on which the log ends. */
  public static final LocalDate TODAY = LocalDate.now();

  private static final int MINUTES = 20;
  private static final int RUNS_A_DAY = 6;
  private static final double FIRST_BEAT = 2;

  private final List<String> lines = new ArrayList<>();
  private final Random random = new Random(17);
  private final Map<String, Integer> played = new HashMap<>();
  private final Map<Key, List<PlayedRound>> rounds = new HashMap<>();

  private InventedLog() {}

  /** Writes so many runs into a log. */
  public static void write(Path folder, int runs) throws IOException {
    InventedLog made = new InventedLog();
    made.play(runs);
    Files.createDirectories(folder);
    Path file = Files.write(folder.resolve("made-up.jsonl"), made.lines);
    try (RunLog log = RunLog.open(folder, line -> {})) {
      new RunTransfer(log).take(List.of(file), new Strict());
    }
  }

  /** Takes nothing that is not as it should be. */
  private static final class Strict implements RunTransfer.Listener {
    @Override
    public void stored(String id) {
      // that all were is seen in what is shown of them
    }

    @Override
    public void unusable(String line) {
      throw new IllegalStateException(line);
    }

    @Override
    public void looked(long runs) {
      // it takes a moment only
    }
  }

  private String line(PlayableDrill drill, Review review, OffsetDateTime when) {
    ObjectNode line = JsonNodeFactory.instance.objectNode();
    line.put("id", "made-up-" + lines.size());
    line.put("when", when.toString());
    line.putNull("guitar");
    line.put("source", "live");
    line.set("review", ReviewFile.toJson(review, "", drill));
    return line.toString();
  }

  private void play(int runs) {
    int days = (runs + RUNS_A_DAY - 1) / RUNS_A_DAY;
    int left = runs;
    for (int day = 0; day < days; day++) {
      // the first key rests for the last weeks, so that some of it fades
      boolean second = day % 4 == 3 || day > 0.86 * days && days > 30;
      Key key = Key.parse(second && days > 6 ? "E minor" : "A minor");
      LocalDate date = TODAY.minusDays(days - day);
      List<PlanItem> items = plan(key, date);
      for (int run = 0; run < RUNS_A_DAY && left > 0; run++) {
        PlayableDrill drill = items.get(run % items.size()).drill().orElseThrow();
        OffsetDateTime when =
            OffsetDateTime.of(date, LocalTime.of(18, 0).plusMinutes(4 * run), ZoneOffset.UTC);
        Review review = review(drill);
        lines.add(line(drill, review, when));
        rounds
            .computeIfAbsent(key, k -> new ArrayList<>())
            .addAll(RoundsOfRun.of(drill, review, when));
        left--;
      }
    }
  }

  private List<PlanItem> plan(Key key, LocalDate date) {
    Neck neck = new Neck(key, Tuning.STANDARD, Neck.USUAL_FRETS);
    Reach reach = Reach.of(neck, rounds.getOrDefault(key, List.of()), Reach.USUAL_TARGET, date);
    return new PlanMaker(reach)
        .plan(MINUTES, Optional.empty()).items().stream()
            .filter(item -> item.drill().isPresent())
            .toList();
  }

  private Review review(PlayableDrill drill) {
    int times = played.merge(drill.key() + " " + drill.shapes(), 1, Integer::sum);
    double skill = Math.exp(-times / 7.0);
    return review(drill, 6 + 16 * skill, 15 + 160 * skill, 0.004 + 0.03 * skill, random);
  }

  /**
   * A review of a made-up run.
   *
   * @param spreadMs of the notes
   * @param lateMs of the landings, about
   * @param slips share of wrong notes
   */
  static Review review(
      PlayableDrill drill, double spreadMs, double lateMs, double slips, Random random) {
    double slot = drill.pulse().slotSeconds();
    int count = drill.route().steps().size();
    boolean[] wrong = new boolean[count];
    for (int i = 0; i < count; i++) {
      wrong[i] = random.nextDouble() < slips;
    }
    List<ReviewedNote> notes =
        IntStream.range(0, count)
            .mapToObj(s -> note(drill, s, wrong[s], spreadMs * random.nextGaussian()))
            .toList();
    List<ReviewedStep> steps =
        drill.route().steps().stream()
            .map(
                s ->
                    new ReviewedStep(
                        s,
                        FIRST_BEAT + s.index() * slot,
                        wrong[s.index()] ? StepVerdict.WRONG : StepVerdict.PLAYED))
            .toList();
    List<ReviewedShift> shifts =
        drill.route().shifts().stream()
            .map(planned -> shift(planned, lateMs * (0.4 + 0.5 * Math.abs(random.nextGaussian()))))
            .toList();
    int bad = (int) IntStream.range(0, count).filter(i -> wrong[i]).count();
    return new Review(
        new TakeFigures(FIRST_BEAT + count * slot, 48_000, -6, -70, OptionalDouble.empty()),
        GuitarKnown.LEARNT,
        Clock.MEASURED,
        new Grid(Grid.Source.GIVEN, drill.pulse().tempo(), FIRST_BEAT, slot),
        notes,
        1,
        0,
        steps,
        shifts,
        new Summary(
            count,
            count - bad,
            bad,
            0,
            0,
            0,
            OptionalDouble.of(0),
            OptionalDouble.of(spreadMs),
            shifts.size(),
            shifts.size(),
            List.of()));
  }

  private static ReviewedNote note(PlayableDrill drill, int step, boolean wrong, double offMs) {
    double time = FIRST_BEAT + step * drill.pulse().slotSeconds() + offMs / 1000;
    return new ReviewedNote(
        time,
        drill.route().steps().get(step).midi() + (wrong ? 1 : 0),
        0,
        wrong ? Verdict.WRONG : Verdict.RIGHT,
        OptionalInt.of(step),
        0,
        step,
        offMs,
        Timing.ON,
        time,
        List.of());
  }

  private static ReviewedShift shift(PlannedShift planned, double lateMs) {
    return new ReviewedShift(
        planned,
        ShiftVerdict.MADE,
        Optional.of(planned.string()),
        OptionalDouble.of(0.98),
        OptionalDouble.of(lateMs),
        OptionalDouble.empty());
  }
}
