package neckway.desk.play;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import neckway.desk.Texts;
import neckway.sound.InputWatch;

/** A sound check on the devices of this machine. A device that comes back is opened again. */
public final class DeviceCheck implements SoundCheck {
  private static final long REPORT_NANOS = 30_000_000;

  private final AtomicReference<InputWatch> now = new AtomicReference<>();

  @Override
  public void start(Optional<String> input, Consumer<Report> reports) {
    stop(() -> {});
    now.set(InputWatch.start(input, new Ear(reports), "sound check"));
  }

  @Override
  public void stop(Runnable then) {
    InputWatch old = now.getAndSet(null);
    if (old == null) {
      then.run();
    } else {
      old.stop(then);
    }
  }

  /** Watches the level of what comes in and reports it some thirty times a second. */
  private static final class Ear implements InputWatch.Taker {
    private final Consumer<Report> reports;
    private Optional<LevelWatch> watch = Optional.empty();
    private long reportedNanos;

    Ear(Consumer<Report> reports) {
      this.reports = reports;
    }

    @Override
    public void opened(double sampleRate) {
      watch = Optional.of(new LevelWatch(sampleRate));
      reportedNanos = System.nanoTime();
    }

    @Override
    public void sound(float[] samples, int length) {
      LevelWatch heard = watch.orElseThrow();
      heard.feed(samples, length);
      if (System.nanoTime() - reportedNanos > REPORT_NANOS) {
        reportedNanos = System.nanoTime();
        reports.accept(new Report(heard.meter(), line(heard)));
      }
    }

    @Override
    public void gone() {
      reports.accept(new Report(0, Texts.of("check.gone")));
    }

    @Override
    public void refused(String why) {
      reports.accept(new Report(0, why));
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
}
