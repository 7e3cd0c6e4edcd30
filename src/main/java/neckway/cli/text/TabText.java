package neckway.cli.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Neck;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Step;

/** A round of a route as tab: the way up, then the way down, with the fingers under the notes. */
public final class TabText {
  private static final int WIDE = 4;
  private static final int NARROW = 3;

  private final Neck neck;
  private final Route route;
  private final Map<Integer, PlannedShift> landings = new HashMap<>();

  private TabText(Neck neck, Route route) {
    this.neck = neck;
    this.route = route;
    route.shifts().forEach(shift -> landings.put(shift.landingStep(), shift));
  }

  /** The lines of the tab, with what it shows above it. */
  public static List<String> of(Neck neck, Route route) {
    return new TabText(neck, route).lines();
  }

  private List<String> lines() {
    int top = 0;
    List<Step> round = route.steps().subList(0, route.stepsPerRound());
    for (Step step : round) {
      top = step.midi() > round.get(top).midi() ? step.index() : top;
    }
    List<String> lines = new ArrayList<>();
    lines.addAll(Wrapped.lines("Up" + said(Direction.UP) + ":", Wrapped.COLUMNS));
    lines.addAll(part(round.subList(0, top + 1)));
    lines.add("");
    lines.addAll(Wrapped.lines("Down" + said(Direction.DOWN) + ":", Wrapped.COLUMNS));
    lines.addAll(part(round.subList(top + 1, round.size())));
    return lines;
  }

  private String said(Direction direction) {
    StringBuilder said = new StringBuilder();
    for (PlannedShift shift : route.shifts()) {
      if (shift.round() == 0 && shift.direction() == direction) {
        int to = direction == Direction.UP ? shift.pair() + 1 : shift.pair();
        said.append(said.isEmpty() ? ", to " : "; to ")
            .append(route.shapes().get(to).spoken())
            .append(" on string ")
            .append(shift.string())
            .append(" by finger ")
            .append(shift.finger());
      }
    }
    return said.toString();
  }

  private List<String> part(List<Step> steps) {
    List<String> lines = new ArrayList<>();
    List<GuitarString> strings = neck.tuning().strings();
    int names =
        neck.tuning().lowToHigh().stream().mapToInt(p -> p.note().length()).max().orElseThrow();
    int first = Math.max(names, "finger".length()) + 2;
    int cell = first + WIDE * steps.size() + 2 <= Wrapped.COLUMNS ? WIDE : NARROW;
    for (int row = strings.size() - 1; row >= 0; row--) {
      String name = neck.tuning().lowToHigh().get(row).note();
      StringBuilder line = new StringBuilder(Wrapped.padded(name, first - 1)).append('|');
      for (Step step : steps) {
        boolean here = step.place().string().equals(strings.get(row));
        line.append(here ? fret(step, cell) : "-".repeat(cell));
      }
      lines.add(line.append("-|").toString());
    }
    StringBuilder fingers = new StringBuilder(Wrapped.padded("finger", first));
    for (Step step : steps) {
      fingers.append(" ".repeat(cell - 1)).append(step.finger());
    }
    lines.add(fingers.toString());
    return lines;
  }

  /** A fret number, with the sign of a slide before it where one finger slides there. */
  private String fret(Step step, int cell) {
    String number = Integer.toString(step.place().fret());
    PlannedShift landing = landings.get(step.index());
    if (landing != null) {
      Step before = route.steps().get(step.index() - 1);
      boolean slid =
          before.place().string().equals(step.place().string()) && before.finger() == step.finger();
      if (slid) {
        number = (landing.direction() == Direction.UP ? "/" : "\\") + number;
      }
    }
    return "-".repeat(cell - number.length()) + number;
  }
}
