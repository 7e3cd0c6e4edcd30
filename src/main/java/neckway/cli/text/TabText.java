package neckway.cli.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Neck;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.words.Wording;

/**
 * A round of a route as tab: the way up, then the way down, with the fingers under the notes. A way
 * that is too long for the terminal is broken into systems of about the same length. Shapes that
 * are only passed through are named under it.
 */
public final class TabText {
  private static final int WIDE = 4;
  private static final int NARROW = 3;
  private static final String END = "-|";

  private final Neck neck;
  private final Route route;
  private final int width;
  private final Map<Integer, PlannedShift> landings = new HashMap<>();

  private TabText(Neck neck, Route route, int width) {
    this.neck = neck;
    this.route = route;
    this.width = width;
    route.shifts().forEach(shift -> landings.put(shift.landingStep(), shift));
  }

  /**
   * The lines of the tab, with what it shows above it.
   *
   * @param width columns there are, 40 or more
   */
  public static List<String> of(Neck neck, Route route, int width) {
    return new TabText(neck, route, width).lines();
  }

  private List<String> lines() {
    int top = 0;
    List<Step> round = route.steps().subList(0, route.stepsPerRound());
    for (Step step : round) {
      top = step.midi() > round.get(top).midi() ? step.index() : top;
    }
    List<String> lines = new ArrayList<>();
    lines.addAll(Wrapped.lines(Wording.of("terminal.tab.up", said(Direction.UP)), width));
    lines.addAll(systems(round.subList(0, top + 1)));
    lines.add("");
    lines.addAll(Wrapped.lines(Wording.of("terminal.tab.down", said(Direction.DOWN)), width));
    lines.addAll(systems(round.subList(top + 1, round.size())));
    List<String> passedThrough = passedThrough();
    if (!passedThrough.isEmpty()) {
      lines.add("");
      passedThrough.forEach(sentence -> lines.addAll(Wrapped.lines(sentence, width)));
    }
    return lines;
  }

  private List<String> passedThrough() {
    Optional<String> up = passedThrough(Direction.UP);
    Optional<String> down = passedThrough(Direction.DOWN);
    if (up.isPresent() && up.equals(down)) {
      return List.of(Wording.of("terminal.through.both", up.get()));
    }
    List<String> sentences = new ArrayList<>();
    up.ifPresent(words -> sentences.add(Wording.of("terminal.through.up", words)));
    down.ifPresent(words -> sentences.add(Wording.of("terminal.through.down", words)));
    return sentences;
  }

  /** The shapes that are played on one string only, and the mend where there is one. */
  private Optional<String> passedThrough(Direction direction) {
    List<Integer> played = route.stringsPlayed(direction);
    List<String> names = new ArrayList<>();
    Set<String> strings = new LinkedHashSet<>();
    int count = neck.tuning().count();
    int string = count;
    for (int stand = 0; stand < played.size(); stand++) {
      if (played.get(stand) == 1) {
        names.add(route.shapes().get(stand).spoken());
        strings.add(Integer.toString(string));
      }
      string -= played.get(stand) - 1;
    }
    if (names.isEmpty()) {
      return Optional.empty();
    }
    int shapes = played.size();
    String mend =
        shapes < count
            ? Wording.counted("terminal.through.otherStrings", names.size())
            : Wording.of("terminal.through.tooFew", count, shapes);
    String on = Wording.list(List.copyOf(strings));
    return Optional.of(
        names.size() == 1
            ? Wording.of("terminal.through.shape", names.get(0), on, mend)
            : Wording.counted(
                "terminal.through.shapes", strings.size(), Wording.list(names), on, mend));
  }

  private String said(Direction direction) {
    List<String> said = new ArrayList<>();
    for (PlannedShift shift : route.shifts()) {
      if (shift.round() == 0 && shift.direction() == direction) {
        int to = direction == Direction.UP ? shift.pair() + 1 : shift.pair();
        said.add(
            Wording.of(
                "terminal.tab.to",
                route.shapes().get(to).spoken(),
                shift.string(),
                shift.finger()));
      }
    }
    return said.isEmpty() ? "" : ", " + String.join("; ", said);
  }

  /** As many lines of tab as the terminal's width asks for; the notes are shared out evenly. */
  private List<String> systems(List<Step> steps) {
    int cell = notesThatFit(WIDE) >= steps.size() ? WIDE : NARROW;
    int systems = (steps.size() + notesThatFit(cell) - 1) / notesThatFit(cell);
    List<String> lines = new ArrayList<>();
    for (int system = 0; system < systems; system++) {
      if (system > 0) {
        lines.add("");
      }
      int from = steps.size() * system / systems;
      int to = steps.size() * (system + 1) / systems;
      lines.addAll(system(steps.subList(from, to), cell));
    }
    return lines;
  }

  private int notesThatFit(int cell) {
    return (width - margin() - END.length()) / cell;
  }

  private int margin() {
    int names =
        neck.tuning().lowToHigh().stream().mapToInt(p -> p.note().length()).max().orElseThrow();
    return Math.max(names, fingers().length()) + 2;
  }

  private static String fingers() {
    return Wording.of("terminal.tab.fingers");
  }

  private List<String> system(List<Step> steps, int cell) {
    List<String> lines = new ArrayList<>();
    List<GuitarString> strings = neck.tuning().strings();
    int first = margin();
    for (int row = strings.size() - 1; row >= 0; row--) {
      String name = neck.tuning().lowToHigh().get(row).note();
      StringBuilder line = new StringBuilder(Wrapped.padded(name, first - 1)).append('|');
      for (Step step : steps) {
        boolean here = step.place().string().equals(strings.get(row));
        line.append(here ? fret(step, cell) : "-".repeat(cell));
      }
      lines.add(line.append(END).toString());
    }
    StringBuilder fingers = new StringBuilder(Wrapped.padded(fingers(), first));
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
