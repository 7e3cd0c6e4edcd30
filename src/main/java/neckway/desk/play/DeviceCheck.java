package neckway.desk.play;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import neckway.desk.Texts;
import neckway.live.LiveSession;
import neckway.neck.BadInput;
import neckway.sound.Capture;
import neckway.sound.Devices;

/** A sound check on the devices of this machine. A device that comes back is opened again. */
public final class DeviceCheck implements SoundCheck {
  private static final int BLOCK = 512;
  private static final long AGAIN_MILLIS = 1_000;
  private static final long REPORT_NANOS = 30_000_000;

  /** One stretch of listening. */
  private static final class Stretch {
    private final Thread thread;
    private volatile boolean running = true;

    Stretch(Runnable work) {
      thread = new Thread(work, "sound check");
      thread.setDaemon(true);
    }
  }

  private final AtomicReference<Stretch> now = new AtomicReference<>();

  @Override
  public void start(Optional<String> input, Consumer<Report> reports) {
    stop(() -> {});
    AtomicReference<Stretch> mine = new AtomicReference<>();
    Stretch stretch = new Stretch(() -> listen(mine.get(), input, reports));
    mine.set(stretch);
    now.set(stretch);
    stretch.thread.start();
  }

  @Override
  public void stop(Runnable then) {
    Stretch old = now.getAndSet(null);
    if (old == null) {
      then.run();
      return;
    }
    old.running = false;
    Thread after =
        new Thread(
            () -> {
              try {
                old.thread.join(6_000);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
              then.run();
            },
            "after sound check");
    after.setDaemon(true);
    after.start();
  }

  private void listen(Stretch stretch, Optional<String> input, Consumer<Report> reports) {
    while (stretch.running) {
      try (Capture in = new Capture(Devices.openInput(input))) {
        in.start();
        listen(stretch, in, reports);
      } catch (BadInput e) {
        reports.accept(new Report(0, e.getMessage()));
      }
      for (long waited = 0; stretch.running && waited < AGAIN_MILLIS; waited += 50) {
        sleep();
      }
    }
  }

  private static void listen(Stretch stretch, Capture in, Consumer<Report> reports) {
    LevelWatch watch = new LevelWatch(in.sampleRate());
    float[] block = new float[BLOCK];
    long reported = System.nanoTime();
    while (stretch.running) {
      int got = in.read(block);
      if (got > 0) {
        watch.feed(block, got);
      } else if (in.gone()) {
        reports.accept(new Report(0, Texts.of("check.gone")));
        return;
      } else {
        LiveSession.pause();
      }
      if (System.nanoTime() - reported > REPORT_NANOS) {
        reported = System.nanoTime();
        reports.accept(new Report(watch.meter(), line(watch)));
      }
    }
  }

  /** A finding in one line for the player. */
  static String line(LevelWatch watch) {
    return switch (watch.finding()) {
      case NOTHING_YET, GOOD -> "";
      case TOO_QUIET -> Texts.of("check.quiet", Math.round(watch.loudestDbfs()));
      case CLIPPING -> Texts.of("check.clipping");
      case FLAT -> Texts.of("check.flat", Math.round(-watch.centsOff()));
      case SHARP -> Texts.of("check.sharp", Math.round(watch.centsOff()));
    };
  }

  private static void sleep() {
    try {
      Thread.sleep(50);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
