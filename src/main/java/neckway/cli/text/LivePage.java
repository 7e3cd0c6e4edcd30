package neckway.cli.text;

import java.io.PrintWriter;
import java.util.stream.Stream;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hand.ShiftSaid;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Step;
import neckway.page.PageModel;
import neckway.page.PageStep;
import neckway.page.PlayedPlace.Known;
import neckway.review.Grid;
import neckway.review.HeardAs;
import neckway.review.words.Phrases;
import neckway.run.RunListener;
import neckway.words.Wording;

/**
 * The page filling in as it is played. On a terminal the line of tab being played is drawn in its
 * place, faint where nothing was heard yet; elsewhere each bar is a line of words.
 */
final class LivePage implements RunListener {
  private static final int CELL = 4;
  private static final String BESIDE = "   ";

  private static final String UP = "\u001b[%dA\r";
  private static final String CLEAR = "\u001b[K";
  private static final String FAINT = "\u001b[2m";
  private static final String PLAIN = "\u001b[0m";

  private final PrintWriter out;
  private final PlayableDrill drill;
  private final boolean terminal;
  private final PageModel page;
  private final Tab tab;
  private final boolean noteBelow;
  private int drawnLine = -1;
  private int barSaid = -1;
  private String calling = "";

  /** As wide as the terminal. */
  LivePage(PrintWriter out, PlayableDrill drill, Grid grid, boolean terminal) {
    this(out, drill, grid, terminal, TerminalWidth.columns());
  }

  /**
   * @param width columns there are, 40 or more
   */
  LivePage(PrintWriter out, PlayableDrill drill, Grid grid, boolean terminal, int width) {
    this.out = out;
    this.drill = drill;
    this.terminal = terminal;
    page = new PageModel(drill);
    page.begun(grid);
    tab = new Tab(drill, CELL, width, Tab.Bars.ONE);
    noteBelow = tab.longestLine() + BESIDE.length() + longestNote() > width;
  }

  /** Columns of the longest thing that is said beside the page: "down on string 4, not 3". */
  private static int longestNote() {
    return Stream.of(Direction.values())
        .flatMap(
            way ->
                Stream.of(
                    Wording.of(Phrases.towards("terminal.live.moved", way), 4, 3),
                    Wording.of(Phrases.towards("terminal.live.missed", way))))
        .mapToInt(String::length)
        .max()
        .orElseThrow();
  }

  @Override
  public void decided(NoteVerdict verdict) {
    if (verdict.attempt() != page.attempt()) {
      again();
    }
    int ahead = page.here().map(here -> here.index() + 1).orElse(0);
    page.decided(verdict);
    for (int passed = ahead; passed < here(); passed++) {
      tell(passed, marked(page.at(passed)));
    }
    int step = verdict.step().orElse(here());
    String stray = HeardAs.note(drill, verdict.note().midi());
    tell(step, words(verdict, page.at(step), stray));
    draw(step, verdict.verdict() == Verdict.EXTRA ? Wording.of("terminal.live.stray", stray) : "");
    out.flush();
  }

  private static String words(NoteVerdict verdict, PageStep step, String stray) {
    return switch (verdict.verdict()) {
      case RIGHT -> marked(step) + " " + step.timeLabel();
      case WRONG -> marked(step) + "(" + heard(step.heard().orElseThrow()) + ")";
      case REPEAT -> marked(step);
      case EXTRA -> "+" + stray;
    };
  }

  private static String heard(HeardAs heard) {
    return heard.fret().isPresent()
        ? Wording.of("terminal.live.fret", heard.label())
        : heard.label();
  }

  /** String and fret where it was played, with the marks of the page, or where it was not. */
  private static String marked(PageStep step) {
    String place = step.played().place().toString();
    return step.played().known() == Known.NOT_AS_PLANNED
        ? Wording.of("terminal.live.not", place) + (step.twice() ? "\"" : "")
        : step.marked(place);
  }

  /** The step reached last, or the first one. */
  private int here() {
    return page.here().map(Step::index).orElse(0);
  }

  @Override
  public void unnamed(int inAttempt, int step) {
    long before = page.version();
    page.unnamed(inAttempt, step);
    if (page.version() != before) {
      tell(step, marked(page.at(step)));
    }
  }

  @Override
  public void shifted(int inAttempt, ShiftSaid said) {
    page.shifted(inAttempt, said);
    String words = words(said);
    if (inAttempt == page.attempt() && !words.isEmpty()) {
      tell(here(), "[" + words + "]");
      draw(here(), words);
      out.flush();
    }
  }

  private static String words(ShiftSaid said) {
    Direction way = said.planned().direction();
    GuitarString planned = said.planned().string();
    return switch (said.verdict()) {
      case MADE -> Wording.of(Phrases.towards("terminal.live.made", way), planned);
      case MOVED ->
          Wording.of(
              Phrases.towards("terminal.live.moved", way), said.string().orElseThrow(), planned);
      case MISSED -> Wording.of(Phrases.towards("terminal.live.missed", way));
      case UNHEARD, UNPLAYED -> "";
    };
  }

  /** A switch is called; it stays in sight beside the page until the next one. */
  void called(String words) {
    calling = words;
    if (terminal) {
      draw(here(), "");
    } else {
      tell(here(), Wording.of("terminal.live.call", words));
    }
    out.flush();
  }

  /** Ends the page's last line. */
  void end() {
    if (barSaid >= 0) {
      out.println();
      barSaid = -1;
    }
    out.flush();
  }

  private void again() {
    end();
    drawnLine = -1;
    out.println(Wording.of("terminal.live.again"));
  }

  private void tell(int step, String words) {
    if (terminal) {
      return;
    }
    if (step / tab.bar() != barSaid) {
      end();
      barSaid = step / tab.bar();
      out.print(Wording.of("terminal.live.bar", barSaid + 1));
    }
    out.print("  " + words);
  }

  private void draw(int step, String note) {
    if (!terminal) {
      return;
    }
    int line = tab.lineOf(step);
    int rows = drill.tuning().count() + (noteBelow ? 2 : 1);
    if (line == drawnLine) {
      out.printf(UP, rows);
    } else if (drawnLine >= 0) {
      out.printf(UP, rows);
      rows(tab.lines().get(drawnLine), "");
      out.println();
    }
    drawnLine = line;
    rows(tab.lines().get(line), note.isEmpty() ? calling : note);
  }

  private void rows(Tab.Line line, String note) {
    for (GuitarString string : tab.highestFirst()) {
      row(tab.row(string, line, s -> drawn(page.at(s), string)));
    }
    String times = tab.row("ms", line, s -> page.at(s).timeLabel());
    if (noteBelow) {
      row(times);
      row(BESIDE + note);
    } else {
      row(times + BESIDE + note);
    }
  }

  /** Clears first: at the right edge of a terminal there is nothing left to clear. */
  private void row(String text) {
    out.println(CLEAR + text);
  }

  /** What is still to come, or planned and not played there, is faint rather than marked. */
  private static Tab.Cell drawn(PageStep step, GuitarString string) {
    String sign = Tab.sign(step, string);
    boolean faint = sign.startsWith(".") || sign.startsWith(":");
    return faint ? new Tab.Cell(FAINT, sign.substring(1), PLAIN) : Tab.Cell.of(sign);
  }
}
