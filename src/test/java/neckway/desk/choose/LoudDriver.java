package neckway.desk.choose;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import neckway.Await;
import neckway.desk.DrillModel;
import neckway.desk.read.DeviceClipOutput;
import neckway.desk.read.ReadTake;
import neckway.desk.read.ReadingModel;
import neckway.drill.PlayableDrill;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;

/**
 * Plays everything that can be played back through the output of this machine, one after another,
 * without a window: {@code TAKE FIRST_BEAT_SECONDS}. It says "ready", then the name of each as it
 * begins and "stopped" as it was stopped, and waits for a line after each word.
 */
public final class LoudDriver {
  /** As loud as it gets, so that the measurement is far above the 16-bit steps of the output. */
  static final double VOLUME = 1;

  private static final double PATIENCE_SECONDS = 30;

  private final PlayableDrill drill = new DrillModel().drill();
  private final ExecutorService window = Executors.newSingleThreadExecutor();
  private final ExecutorService work = Executors.newSingleThreadExecutor();

  private LoudDriver() {}

  public static void main(String[] args) throws Exception {
    new LoudDriver().play(Path.of(args[0]), Double.parseDouble(args[1]));
    Runtime.getRuntime().halt(0);
  }

  private static void say(String name) throws Exception {
    System.out.println(name);
    System.in.read();
  }

  private void play(Path take, double firstBeatSeconds) throws Exception {
    HearModel hear = new HearModel(new SpeakerOutlet(Optional::empty), window, System.err::println);
    hear.gain(VOLUME);
    say("ready");
    in(() -> hear.toggle(drill));
    Await.within(PATIENCE_SECONDS, () -> hear.state().get() == HearModel.State.PLAYING);
    say("hear it");
    in(hear::stop);
    say("stopped");
    ReadingModel reading =
        new ReadingModel(new DeviceClipOutput(Optional::empty), () -> VOLUME, work, window);
    Review review = review(take, firstBeatSeconds);
    in(() -> reading.open(ReadTake.played(drill, review, Optional.of(take), OptionalInt.empty())));
    heard("the take", reading, ReadingModel::hear);
    heard("a loop", reading, ReadingModel::loopShift);
    heard("how it should sound", reading, ReadingModel::hearModel);
  }

  private void heard(String name, ReadingModel reading, Consumer<ReadingModel> way)
      throws Exception {
    in(() -> way.accept(reading));
    Await.within(PATIENCE_SECONDS, () -> reading.heardShare().orElse(0) > 0);
    say(name);
    in(reading::stop);
    CountDownLatch over = new CountDownLatch(1);
    work.execute(over::countDown);
    over.await(5, TimeUnit.SECONDS);
    say("stopped");
  }

  private void in(Runnable task) throws Exception {
    window.submit(task).get();
  }

  private Review review(Path take, double firstBeatSeconds) {
    try (TakeReader reader = TakeReader.open(take, Channel.AUTO)) {
      Run run =
          new Run(
              drill,
              Optional.empty(),
              reader.sampleRate(),
              OptionalDouble.of(firstBeatSeconds),
              Clock.MEASURED,
              verdict -> {});
      float[] block = new float[2048];
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        run.feed(block, 0, got);
      }
      return run.finish();
    }
  }
}
