package neckway.cli.text;

import java.io.PrintWriter;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.hand.ShiftSaid;
import neckway.live.LiveListener;
import neckway.review.Grid;

/** Tells a live run in the terminal: its page fills in, and complaints go to the error stream. */
public final class LiveText implements LiveListener {
  private final PlayableDrill drill;
  private final PrintWriter show;
  private final PrintWriter err;
  private final boolean terminal;
  private LivePage page;

  public LiveText(PlayableDrill drill, PrintWriter show, PrintWriter err, boolean terminal) {
    this.drill = drill;
    this.show = show;
    this.err = err;
    this.terminal = terminal;
  }

  @Override
  public void begun(Grid grid) {
    page = new LivePage(show, drill, grid, terminal);
  }

  @Override
  public void decided(NoteVerdict verdict) {
    page.decided(verdict);
  }

  @Override
  public void unnamed(int attempt, int step) {
    page.unnamed(attempt, step);
  }

  @Override
  public void shifted(int attempt, ShiftSaid said) {
    page.shifted(attempt, said);
  }

  @Override
  public void complaint(String line) {
    err.println("neckway: " + line);
  }

  /** Ends the page's last line. */
  public void end() {
    page.end();
  }
}
