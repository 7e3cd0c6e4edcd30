package neckway.cli.text;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import neckway.calls.Call;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.hand.ShiftSaid;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.review.Grid;
import neckway.words.Wording;

/** Tells a live run in the terminal: its page fills in, and complaints go to the error stream. */
public final class LiveText implements LiveRunListener {
  private final PlayableDrill drill;
  private final List<Call> calls;
  private final LiveSetup.Start start;
  private final PrintWriter show;
  private final PrintWriter err;
  private final boolean terminal;
  private LivePage page;
  private int called;
  private Optional<LiveResult> result = Optional.empty();

  /**
   * @param calls that are made in the run, in their order
   * @param terminal whether what is shown can be drawn over
   */
  public LiveText(
      LiveSetup setup, List<Call> calls, PrintWriter show, PrintWriter err, boolean terminal) {
    drill = setup.drill();
    this.calls = List.copyOf(calls);
    start = setup.start();
    this.show = show;
    this.err = err;
    this.terminal = terminal;
  }

  /** What came of the round that was last over. */
  public Optional<LiveResult> result() {
    return result;
  }

  @Override
  public void roundBegins(int round) {
    FirstUse.cautions(show);
    show.println(
        switch (start) {
          case CLICK -> Wording.of("terminal.listen.countIn", drill.pulse().countIn());
          case FIRST_NOTE -> Wording.of("terminal.listen.firstNote");
        });
    if (!calls.isEmpty()) {
      show.println(Wording.of("terminal.listen.calls"));
    }
    show.flush();
  }

  @Override
  public void begun(Grid grid) {
    page = new LivePage(show, drill, grid, terminal);
  }

  @Override
  public void beat(long beat) {
    while (page != null && called < calls.size() && calls.get(called).cue().beat() <= beat) {
      page.called(calls.get(called).spoken(drill.tuning()));
      called++;
    }
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

  @Override
  public void roundEnded(LiveResult ended) {
    page.end();
    result = Optional.of(ended);
  }
}
