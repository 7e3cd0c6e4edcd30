package neckway.desk.live;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Collectors;
import javafx.animation.AnimationTimer;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import neckway.desk.app.Coach;
import neckway.desk.page.PageView;
import neckway.desk.play.Engine;
import neckway.desk.play.PlayingModel.State;
import neckway.follow.NoteVerdict;
import neckway.hand.ShiftSaid;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.review.Grid;

/**
 * Counts in the window while it listens: times from frame to frame, what the device gave against
 * what the wall clock says it should have given, and how many frames a verdict waits until the page
 * has it painted. A verdict that falls into a frame already begun counts as of the next one, so the
 * wait is an upper bound; what the screen itself needs to show a finished frame is not in it.
 */
final class WindowCounters extends AnimationTimer {
  private static final int RATE = 48_000;
  private static final int MOST_FRAMES = 100_000;

  private record Decision(long nanos, long frame) {}

  private final int[] intervalMicros = new int[MOST_FRAMES];
  private final StringBuilder waits = new StringBuilder();
  private final Queue<Decision> decided = new ConcurrentLinkedQueue<>();
  private final Queue<Decision> waiting = new ArrayDeque<>();
  private Coach coach;
  private Scene scene;
  private PageView page;
  private int intervals;
  private long before;
  private long frameBegan;
  private volatile long frame;

  // written by the run's own thread, read when it is over
  private volatile long verdicts;
  private volatile long receivedFrames;
  private volatile long expectedFrames;
  private volatile long overflows;
  private volatile long lostFrames;

  /** Begins to count in a window. */
  void watch(Coach watched, Scene shown) {
    coach = watched;
    scene = shown;
    scene.addPostLayoutPulseListener(this::painted);
    start();
  }

  /** An engine whose runs are counted. */
  Engine counting(Engine engine) {
    return (setup, listener) -> engine.start(setup, new Counting(listener));
  }

  private boolean listening() {
    State state = coach.playing().state().get();
    return state == State.PLAYING || state == State.COUNT_IN;
  }

  @Override
  public void handle(long now) {
    frameBegan = System.nanoTime();
    frame++;
    if (!listening()) {
      before = 0;
      return;
    }
    if (before != 0 && intervals < MOST_FRAMES) {
      intervalMicros[intervals++] = (int) ((now - before) / 1000);
    }
    before = now;
  }

  private void painted() {
    if (!listening()) {
      decided.clear();
      waiting.clear();
      page = null;
      return;
    }
    if (page == null || page.getScene() == null) {
      page = find(scene.getRoot());
    }
    while (!decided.isEmpty() && decided.peek().nanos < frameBegan) {
      waiting.add(decided.poll());
    }
    if (page == null || page.paintedVersion() != coach.playing().page().get().version()) {
      return;
    }
    long now = System.nanoTime();
    for (Decision each = waiting.poll(); each != null; each = waiting.poll()) {
      waits.append(waits.isEmpty() ? "" : ",").append(frame - each.frame);
      waits.append(':').append((now - each.nanos) / 1000);
    }
  }

  private static PageView find(Node node) {
    if (node instanceof PageView view) {
      return view;
    }
    if (node instanceof Parent parent) {
      for (Node child : parent.getChildrenUnmodifiable()) {
        PageView found = find(child);
        if (found != null) {
          return found;
        }
      }
    }
    return null;
  }

  /** What was counted since this was last asked: {@code name=value} with tabs between. */
  String counts() {
    String said =
        String.join(
            "\t",
            "verdicts=" + verdicts,
            "received=" + receivedFrames,
            "expected=" + expectedFrames,
            "overflows=" + overflows,
            "lost=" + lostFrames,
            "waits=" + waits,
            "intervals="
                + Arrays.stream(intervalMicros, 0, intervals)
                    .mapToObj(Integer::toString)
                    .collect(Collectors.joining(",")));
    intervals = 0;
    waits.setLength(0);
    verdicts = 0;
    receivedFrames = 0;
    expectedFrames = 0;
    overflows = 0;
    lostFrames = 0;
    return said;
  }

  /** Counts one run and passes all on. */
  private final class Counting implements LiveRunListener {
    private final LiveRunListener next;
    private boolean any;
    private long firstNanos;
    private double firstSeconds;
    private long decisions;

    Counting(LiveRunListener next) {
      this.next = next;
    }

    @Override
    public void roundBegins(int round) {
      next.roundBegins(round);
    }

    @Override
    public void begun(Grid grid) {
      next.begun(grid);
    }

    @Override
    public void beat(long beat) {
      next.beat(beat);
    }

    @Override
    public void sound(double seconds, float peak) {
      long now = System.nanoTime();
      if (!any) {
        any = true;
        firstNanos = now;
        firstSeconds = seconds;
      }
      receivedFrames = Math.round((seconds - firstSeconds) * RATE);
      expectedFrames = Math.round((now - firstNanos) / 1e9 * RATE);
      next.sound(seconds, peak);
    }

    @Override
    public void decided(NoteVerdict verdict) {
      verdicts = ++decisions;
      next.decided(verdict);
      decided.add(new Decision(System.nanoTime(), frame));
    }

    @Override
    public void unnamed(int attempt, int step) {
      next.unnamed(attempt, step);
    }

    @Override
    public void shifted(int attempt, ShiftSaid said) {
      next.shifted(attempt, said);
    }

    @Override
    public void complaint(String line) {
      next.complaint(line);
    }

    @Override
    public void roundEnded(LiveResult result) {
      overflows = result.overflows();
      lostFrames = result.lostFrames();
      next.roundEnded(result);
    }

    @Override
    public void over() {
      next.over();
    }
  }
}
