package neckway.desk.play;

import java.util.List;
import java.util.stream.Collectors;
import neckway.desk.DrillWords;
import neckway.desk.Texts;
import neckway.desk.play.PlayingModel.State;
import neckway.drill.PlayableDrill;
import neckway.neck.JoinChoice;

/** What the view of a run says round its page. */
public final class PlayingWords {
  private static final double LOWEST_DBFS = -60;

  private PlayingWords() {}

  /** The drill in one line: its key and shapes, its joins, its notes. */
  public static String headline(PlayableDrill drill) {
    String joins =
        drill.isCalled() || drill.drill().up().isEmpty()
            ? ""
            : Texts.of("play.joins", strings(drill.drill().up()), strings(drill.drill().down()));
    return Texts.of(
        "play.headline",
        DrillWords.place(drill),
        joins,
        Texts.number(drill.pulse().notesPerBeat()));
  }

  private static String strings(List<JoinChoice> joins) {
    return joins.stream()
        .map(join -> Integer.toString(join.string()))
        .collect(Collectors.joining(", "));
  }

  /** What the button does now. */
  static String button(State state) {
    return switch (state) {
      case READY -> Texts.of("play.begin");
      case GUESSING -> Texts.of("play.show");
      case OPENING, COUNT_IN, PLAYING, REST -> Texts.of("play.stop");
    };
  }

  static String hint(State state, boolean guest) {
    return switch (state) {
      case READY -> Texts.of("play.hint.ready");
      case OPENING -> Texts.of("play.hint.opening");
      case COUNT_IN -> Texts.of("play.hint.countIn");
      case PLAYING -> Texts.of(guest ? "play.hint.guest" : "play.hint.playing");
      case REST -> Texts.of("play.hint.rest");
      case GUESSING -> "";
    };
  }

  /** A peak of 0 to 1 as a share of a meter that reads in decibels. */
  static double meter(double peak) {
    double dbfs = 20 * Math.log10(peak + 1e-9);
    return Math.max(0, Math.min(1, 1 - dbfs / LOWEST_DBFS));
  }
}
