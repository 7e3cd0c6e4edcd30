package neckway.desk;

import java.util.concurrent.CountDownLatch;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;

/** Waits for the window to be drawn; not for the window's own thread. */
public final class Frames {
  /** In the first, what was asked for is laid out; canvases are painted in the next. */
  private static final int ENOUGH = 3;

  private Frames() {}

  /** Waits until what was asked for by now has been laid out and painted. */
  public static void drawn() throws InterruptedException {
    CountDownLatch frames = new CountDownLatch(ENOUGH);
    AnimationTimer timer =
        new AnimationTimer() {
          @Override
          public void handle(long nanos) {
            frames.countDown();
          }
        };
    Platform.runLater(timer::start);
    frames.await();
    Platform.runLater(timer::stop);
  }
}
