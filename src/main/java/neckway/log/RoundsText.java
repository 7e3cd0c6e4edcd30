package neckway.log;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import neckway.neck.Direction;
import neckway.neck.Shape;
import neckway.practice.Exercise;
import neckway.practice.PlayedRound;

/**
 * The rounds of a run as one short text: each as what was exercised, whether it was clean, the
 * tempo, and how late the landing was, with spaces between and bars between rounds. Thousands of
 * runs are read in a moment so.
 */
final class RoundsText {
  private static final String NOT_KNOWN = "-";
  private static final int FIELDS = 4;

  /** Each exercise once, however many rounds there are of it. */
  private final Map<String, Exercise> known = new HashMap<>();

  static String of(List<PlayedRound> rounds) {
    return rounds.stream().map(RoundsText::of).collect(Collectors.joining("|"));
  }

  private static String of(PlayedRound round) {
    String late =
        round.lateMs().isPresent() ? Double.toString(round.lateMs().getAsDouble()) : NOT_KNOWN;
    return word(round.exercise())
        + " "
        + (round.clean() ? 1 : 0)
        + " "
        + round.tempo()
        + " "
        + late;
  }

  private static String word(Exercise exercise) {
    if (exercise instanceof Exercise.OfJoin join) {
      return (join.direction() == Direction.UP ? "U" : "D")
          + join.lower().ordinal()
          + join.upper().ordinal()
          + join.finger()
          + join.string();
    }
    return "S" + ((Exercise.OfShape) exercise).shape().ordinal();
  }

  /** The rounds of a text; what is damaged in it is left out. */
  List<PlayedRound> read(String text, Instant when, LocalDate day) {
    List<PlayedRound> rounds = new ArrayList<>();
    if (text.isEmpty()) {
      return rounds;
    }
    for (String each : text.split("\\|")) {
      String[] fields = each.split(" ");
      try {
        if (fields.length == FIELDS) {
          rounds.add(
              new PlayedRound(
                  known.computeIfAbsent(fields[0], RoundsText::exercise),
                  when,
                  day,
                  fields[1].equals("1"),
                  Double.parseDouble(fields[2]),
                  fields[3].equals(NOT_KNOWN)
                      ? OptionalDouble.empty()
                      : OptionalDouble.of(Double.parseDouble(fields[3]))));
        }
      } catch (NumberFormatException | IndexOutOfBoundsException damaged) {
        // one round less, and the others stay
      }
    }
    return rounds;
  }

  private static Exercise exercise(String word) {
    Shape[] shapes = Shape.values();
    Shape lower = shapes[word.charAt(1) - '0'];
    if (word.charAt(0) == 'S') {
      return new Exercise.OfShape(lower);
    }
    return new Exercise.OfJoin(
        lower,
        shapes[word.charAt(2) - '0'],
        word.charAt(0) == 'U' ? Direction.UP : Direction.DOWN,
        Integer.parseInt(word.substring(4)),
        word.charAt(3) - '0');
  }
}
