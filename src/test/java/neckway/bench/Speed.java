package neckway.bench;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import neckway.hear.Ear;
import neckway.hear.HeardNote;
import neckway.hear.NoteListener;
import neckway.player.settings.PlayerSettings.Condition;

/**
 * How fast takes are reviewed, and what the hearing loop allocates.
 *
 * @param timesRealTime seconds of sound per second of one core, once warm
 * @param aubioTimesRealTime the same for aubio, its start counted; 0 where it is not there
 * @param bytesPerHop what the ear allocates in a hop of 256 frames in which no note is given
 */
record Speed(double timesRealTime, double aubioTimesRealTime, double bytesPerHop) {
  static final int HOP_FRAMES = 256;
  private static final int TAKES = 10;
  private static final int WARM_ROUNDS = 3;
  private static final int MEASURED_ROUNDS = 5;

  static Speed measure() throws Exception {
    List<PlayedTake> takes = new ArrayList<>();
    double seconds = 0;
    for (int i = 0; i < TAKES; i++) {
      takes.add(VirtualTakes.take(VirtualTakes.FIRST_HELD_OUT_SEED + i, Condition.CLEAN));
      seconds += takes.get(i).take().seconds();
    }
    double cpu = 0;
    for (int round = 0; round <= WARM_ROUNDS; round++) {
      cpu = 0;
      for (PlayedTake take : takes) {
        cpu += FollowRun.of(take, true).cpuSeconds();
      }
    }
    double aubio = 0;
    if (Aubio.isThere()) {
      double spent = 0;
      for (PlayedTake take : takes) {
        spent += Aubio.listen(take.take()).seconds();
      }
      aubio = seconds / spent;
    }
    return new Speed(seconds / cpu, aubio, bytesPerHop(takes.get(0).take()));
  }

  /**
   * Bytes that this thread allocates in hops in which no note is given, once warm; per hop. The
   * take is heard several times over and the least of the rounds is the figure: what the loop
   * allocates, it allocates in every round, what the virtual machine does on the way (compiling,
   * going back to the interpreter), in one.
   */
  static double bytesPerHop(Take take) {
    CountingListener listener = new CountingListener();
    Ear ear = new Ear(take.sampleRate());
    ear.expectClicks(take.beatSeconds(), 4);
    double least = Double.POSITIVE_INFINITY;
    for (int round = 0; round <= MEASURED_ROUNDS && least > 0; round++) {
      double bytes = bytesPerHop(take, ear, listener);
      if (round > 0) {
        least = Math.min(least, bytes);
      }
    }
    return least;
  }

  private static double bytesPerHop(Take take, Ear ear, CountingListener listener) {
    ThreadMXBean bean = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    long bytes = 0;
    long hops = 0;
    for (int i = 0; i + HOP_FRAMES <= take.samples().length; i += HOP_FRAMES) {
      int notes = listener.notes;
      long before = bean.getThreadAllocatedBytes(thread);
      ear.process(take.samples(), i, HOP_FRAMES, listener);
      long after = bean.getThreadAllocatedBytes(thread);
      if (listener.notes == notes) {
        bytes += after - before;
        hops++;
      }
    }
    return (double) bytes / hops;
  }

  private static final class CountingListener implements NoteListener {
    int notes;

    @Override
    public void heard(HeardNote note) {
      notes++;
    }

    @Override
    public void listenedUntil(double seconds) {}
  }
}
