package neckway.cli.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import neckway.neck.Direction;
import neckway.neck.PlacedShape;
import neckway.neck.Shape;
import neckway.practice.Exercise;
import neckway.practice.Progress;
import neckway.practice.Reach;
import neckway.practice.State;

/** What is open of a key, in text: the shapes along the neck, the joins between them. */
public final class ReachText {
  private static final int NAME = 12;
  private static final String INDENT = " ".repeat(10);

  private ReachText() {}

  /** Where nothing was ever logged. */
  public static List<String> nothing(int width) {
    return Wrapped.lines(
        "No run is kept yet, so no key has a state. Begin with one shape that you know, such as"
            + " 'neckway listen --key Am --shapes minor --tempo 60': each run is kept as it ends.",
        width);
  }

  /** One key, in lines no wider than so many columns. */
  public static List<String> of(Reach reach, int width) {
    List<String> lines = new ArrayList<>();
    lines.addAll(
        Wrapped.lines(
            String.format(
                Locale.ROOT,
                "%s on %s, towards %.0f beats a minute of two notes",
                reach.key(),
                reach.today(),
                reach.target()),
            width));
    lines.addAll(Wrapped.lines("o open, ~ fading, . working, - new", width));
    lines.add("");
    List<PlacedShape> along = new ArrayList<>(reach.map().shapes());
    along.sort(Comparator.comparingInt(PlacedShape::start));
    for (PlacedShape placed : along) {
      lines.addAll(shape(reach, placed, width));
      lines.addAll(joins(reach, placed.shape(), Direction.UP, width));
      lines.addAll(joins(reach, placed.shape(), Direction.DOWN, width));
    }
    return lines;
  }

  private static List<String> shape(Reach reach, PlacedShape placed, int width) {
    Progress progress = reach.shape(placed.shape());
    String name = Wrapped.padded(placed.shape().spoken(), NAME);
    return Wrapped.lines(
        sign(progress.state()) + " " + name + " from fret " + placed.start() + said(progress),
        width);
  }

  private static List<String> joins(Reach reach, Shape lower, Direction direction, int width) {
    Map<Integer, Progress> best = new TreeMap<>((a, b) -> b - a);
    for (Progress progress : reach.joins(lower, direction)) {
      if (progress.exercise() instanceof Exercise.OfJoin join) {
        best.merge(join.string(), progress, (a, b) -> b.rounds() > a.rounds() ? b : a);
      }
    }
    if (best.isEmpty()) {
      return List.of();
    }
    StringBuilder line = new StringBuilder(direction == Direction.UP ? "    up   " : "    down ");
    best.forEach((string, p) -> line.append(' ').append(string).append(sign(p.state())));
    List<String> lines = new ArrayList<>(List.of(line.toString()));
    best.forEach(
        (string, p) -> {
          if (p.state() != State.NEW) {
            Wrapped.lines("string " + string + said(p), width - INDENT.length())
                .forEach(text -> lines.add(INDENT + text));
          }
        });
    return lines;
  }

  private static String said(Progress progress) {
    if (progress.rounds() == 0) {
      return "";
    }
    StringBuilder said = new StringBuilder(": ");
    said.append(progress.cleanRounds()).append(" of ").append(progress.rounds());
    said.append(progress.rounds() == 1 ? " round clean" : " rounds clean");
    progress
        .bestCleanTempo()
        .ifPresent(tempo -> said.append(String.format(Locale.ROOT, ", best at %.0f", tempo)));
    progress.lastDay().ifPresent(day -> said.append(", last on ").append(day));
    progress
        .lateMsMedian()
        .ifPresent(ms -> said.append(String.format(Locale.ROOT, ", landing %+.0f ms", ms)));
    return said.toString();
  }

  private static String sign(State state) {
    return switch (state) {
      case NEW -> "-";
      case WORKING -> ".";
      case OPEN -> "o";
      case FADING -> "~";
    };
  }
}
