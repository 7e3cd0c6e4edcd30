package neckway.desk.read;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import neckway.drill.PlayableDrill;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.review.Landings;
import neckway.review.LateLanding;
import neckway.review.Review;
import neckway.review.ReviewedShift;
import neckway.review.StepVerdict;

/**
 * The steps that a sentence of a review names, in the words of the review: a way and a place
 * ("coming down in round 2, second string, fret 7"), or a shift ("the shift up on the third
 * string"). A sentence that names none has none.
 */
final class SentenceSteps {
  private static final List<String> ORDINALS =
      List.of("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth");
  private static final String WAY =
      "(?<way>going up|at the top|coming down)(?: in round (?<round>\\d+))?";
  private static final String SPOT = "(?<string>\\w+) string, (?:fret (?<fret>\\d+)|open)";
  private static final List<Pattern> NOTES =
      List.of(
          Pattern.compile(WAY + ",(?: where the)? " + SPOT), Pattern.compile(SPOT + ",? " + WAY));
  private static final Pattern SHIFT = Pattern.compile("(?:shift|shifted|First: play) (up|down)");
  private static final Pattern BEFORE =
      Pattern.compile("before fret (?<fret>\\d+) on the (?<string>\\w+) string");
  private static final Pattern ON_STRING = Pattern.compile("on the (\\w+) string");
  private static final Pattern ROUNDS = Pattern.compile("in rounds? (\\d+(?:(?:, | and )\\d+)*)");
  private static final Pattern NUMBER = Pattern.compile("\\d+");

  private final PlayableDrill drill;
  private final Review review;
  private final Set<PlannedShift> late;
  private final int rounds;
  private final int half;

  SentenceSteps(ReadTake take) {
    drill = take.drill();
    review = take.review();
    late =
        LateLanding.of(drill, review).stream()
            .map(landing -> landing.shift().planned())
            .collect(Collectors.toSet());
    rounds = drill.route().rounds();
    half = (drill.route().steps().size() - 1) / (2 * rounds);
  }

  /** In the order of the sentence, each once. */
  List<Integer> of(String sentence) {
    Set<Integer> named = new LinkedHashSet<>();
    for (Pattern pattern : NOTES) {
      Matcher at = pattern.matcher(sentence);
      while (at.find()) {
        step(at).ifPresent(named::add);
      }
    }
    Matcher before = BEFORE.matcher(sentence);
    if (named.isEmpty() && before.find()) {
      return slipsAt(before.group("string"), Integer.parseInt(before.group("fret")));
    }
    return named.isEmpty() ? landings(sentence) : List.copyOf(named);
  }

  /** Slips at a place that is told to be worked on. */
  private List<Integer> slipsAt(String string, int fret) {
    return review.steps().stream()
        .filter(s -> s.verdict() == StepVerdict.WRONG || s.verdict() == StepVerdict.SKIPPED)
        .map(s -> s.step())
        .filter(step -> isAt(step.place(), string, fret))
        .map(step -> step.index())
        .toList();
  }

  private Optional<Integer> step(Matcher at) {
    int round = at.group("round") == null ? 0 : Integer.parseInt(at.group("round")) - 1;
    int fret = at.group("fret") == null ? 0 : Integer.parseInt(at.group("fret"));
    return IntStream.range(0, drill.route().steps().size())
        .filter(step -> round(step) == round && way(step).equals(at.group("way")))
        .filter(step -> isAt(drill.route().steps().get(step).place(), at.group("string"), fret))
        .boxed()
        .findFirst();
  }

  private static boolean isAt(Place place, String string, int fret) {
    return place.fret() == fret && place.string().number() == ORDINALS.indexOf(string) + 1;
  }

  /** As the review counts them: the bottom note between two rounds is the later one's. */
  private int round(int step) {
    return Math.min(rounds - 1, step / (2 * half));
  }

  private String way(int step) {
    int within = step - round(step) * 2 * half;
    return within < half ? "going up" : within == half ? "at the top" : "coming down";
  }

  /** Where the shifts landed, or should have, that a sentence tells of. */
  private List<Integer> landings(String sentence) {
    Optional<Direction> direction = direction(sentence);
    if (direction.isEmpty()) {
      return List.of();
    }
    Set<Integer> in = roundsNamed(sentence);
    Matcher on = ON_STRING.matcher(sentence);
    Optional<String> string = on.find() ? Optional.of(on.group(1)) : Optional.empty();
    List<ReviewedShift> named =
        review.shifts().stream()
            .filter(s -> s.verdict() != ShiftVerdict.UNPLAYED)
            .filter(s -> s.planned().direction() == direction.get())
            .filter(s -> in.isEmpty() || in.contains(s.planned().round()))
            .filter(s -> string.isEmpty() || string.get().equals(string(s)))
            .toList();
    List<ReviewedShift> amiss = named.stream().filter(this::isAmiss).toList();
    Landings landings = new Landings(drill);
    return (amiss.isEmpty() ? named : amiss).stream().map(landings::step).toList();
  }

  private static Optional<Direction> direction(String sentence) {
    Matcher shift = SHIFT.matcher(sentence);
    if (shift.find()) {
      return Optional.of(shift.group(1).equals("up") ? Direction.UP : Direction.DOWN);
    }
    if (sentence.contains("and never reached the")) {
      return Optional.of(Direction.UP);
    }
    return sentence.contains("and never came back to the")
        ? Optional.of(Direction.DOWN)
        : Optional.empty();
  }

  private static Set<Integer> roundsNamed(String sentence) {
    Set<Integer> rounds = new LinkedHashSet<>();
    Matcher named = ROUNDS.matcher(sentence);
    while (named.find()) {
      Matcher number = NUMBER.matcher(named.group(1));
      while (number.find()) {
        rounds.add(Integer.parseInt(number.group()) - 1);
      }
    }
    return rounds;
  }

  private static String string(ReviewedShift shift) {
    return ORDINALS.get(shift.string().orElse(shift.planned().string()).number() - 1);
  }

  private boolean isAmiss(ReviewedShift shift) {
    PlannedShift planned = shift.planned();
    return shift.verdict() == ShiftVerdict.MISSED
        || shift.verdict() == ShiftVerdict.MOVED
        || late.contains(planned);
  }
}
