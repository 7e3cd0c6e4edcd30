package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import neckway.hear.RobustStatistics;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.review.Landings;
import neckway.review.LateLanding;
import neckway.words.Wording;

/**
 * Says which shifts landed late. A landing is measured from the note before it; where that note
 * came early the landing only seems late, and no figure is given of it.
 */
final class LateLandings {
  private static final int MOST_EACH = 3;

  /** Shifts of the same pair, way and string. */
  record Kind(Direction direction, int pair, GuitarString string) {}

  /**
   * A landing that was late.
   *
   * @param landing index of the step on which the hand landed
   */
  record Late(PlannedShift shift, int landing, double lateMs) {}

  /** A landing that only seemed late. */
  private record Seeming(PlannedShift shift, int landing) {}

  private final Played played;
  private final Map<Kind, List<Late>> late = new LinkedHashMap<>();
  private final Map<Kind, List<Seeming>> seeming = new LinkedHashMap<>();

  LateLandings(Played played) {
    this.played = played;
    Landings landings = new Landings(played.drill());
    for (LateLanding landing : LateLanding.all(played.drill(), played.review())) {
      PlannedShift planned = landing.shift().planned();
      GuitarString string = landing.shift().string().orElse(planned.string());
      Kind kind = new Kind(planned.direction(), planned.pair(), string);
      int step = landings.step(landing.shift());
      if (landing.seeming()) {
        seeming.computeIfAbsent(kind, k -> new ArrayList<>()).add(new Seeming(planned, step));
      } else {
        late.computeIfAbsent(kind, k -> new ArrayList<>())
            .add(new Late(planned, step, landing.lateMs()));
      }
    }
  }

  /** Those that were late themselves, by their kind. */
  Map<Kind, List<Late>> late() {
    return late;
  }

  List<Sentence> sentences() {
    List<Sentence> said = new ArrayList<>();
    late.forEach(
        (kind, each) ->
            said.add(Sentence.of(sentence(kind, each), each.stream().map(Late::landing).toList())));
    seeming.forEach(
        (kind, each) ->
            said.add(
                Sentence.of(
                    Wording.of(
                        "late.seeming",
                        shift(kind),
                        rounds(each.stream().map(Seeming::shift).toList())),
                    each.stream().map(Seeming::landing).toList())));
    return said;
  }

  private String sentence(Kind kind, List<Late> each) {
    if (each.size() <= MOST_EACH) {
      List<String> landed =
          each.stream()
              .map(l -> Wording.of("late.each", Phrases.ms(l.lateMs()), rounds(List.of(l.shift()))))
              .toList();
      return Wording.of("late.few", shift(kind), Wording.list(landed));
    }
    return Wording.of(
        "late.many",
        shift(kind),
        rounds(each.stream().map(Late::shift).toList()),
        Phrases.ms(middleMs(each)));
  }

  static double middleMs(List<Late> each) {
    return RobustStatistics.median(each.stream().map(Late::lateMs).toList());
  }

  /** "shift up on the third string". */
  static String shift(Kind kind) {
    return Phrases.shift(kind.direction(), kind.string());
  }

  private String rounds(List<PlannedShift> shifts) {
    return Phrases.inRounds(shifts.stream().map(PlannedShift::round).toList(), played.rounds());
  }
}
