package neckway.desk.play;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import neckway.desk.read.ClipOutput;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.follow.NoteVerdict;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.player.plan.Mistake;
import neckway.sound.Clip;
import org.junit.jupiter.api.Test;

/** The guest plays at the pace of a player, and the ear says what it slipped in. */
final class GuestPlayerTests {
  private static final PlayableDrill DRILL = fast(Drills.example());

  private static PlayableDrill fast(PlayableDrill drill) {
    return drill.drill().withPulse(new Pulse(160, 2, 4, 4)).playable();
  }

  private final AtomicInteger clips = new AtomicInteger();

  private final ClipOutput output =
      new ClipOutput() {
        @Override
        public void play(Clip clip, Ended ended) {
          clips.incrementAndGet();
        }

        @Override
        public void stop() {
          // nothing sounds here
        }

        @Override
        public long framesHeard() {
          return 0;
        }
      };

  /** Keeps the result and what was told on the way. */
  private static final class Told implements LiveRunListener {
    private final AtomicReference<LiveResult> result = new AtomicReference<>();
    private final AtomicInteger beats = new AtomicInteger();
    private final CountDownLatch over = new CountDownLatch(1);

    @Override
    public void decided(NoteVerdict verdict) {
      // the review has them all
    }

    @Override
    public void beat(long beat) {
      beats.incrementAndGet();
    }

    @Override
    public void roundEnded(LiveResult ended) {
      result.set(ended);
    }

    @Override
    public void over() {
      over.countDown();
    }
  }

  private static LiveSetup setup() {
    return new LiveSetup(
        DRILL,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        LiveSetup.Start.CLICK,
        () -> 0.1,
        LiveSetup.Rounds.ONE,
        Optional.empty());
  }

  @Test
  void itsTwoSlipsAreHeardAndNothingElse() throws InterruptedException {
    Told told = new Told();
    long begun = System.nanoTime();
    new GuestPlayer(output, () -> 0.1, () -> 5).start(setup(), told);

    assertThat(told.over.await(60, TimeUnit.SECONDS)).isTrue();
    double seconds = (System.nanoTime() - begun) / 1e9;
    LiveResult result = told.result.get();
    assertThat(result.review().summary().wrong()).isEqualTo(1);
    assertThat(result.review().summary().skipped()).isEqualTo(1);
    assertThat(result.review().summary().extra()).isZero();
    assertThat(result.take()).hasValueSatisfying(take -> assertThat(take).exists());
    assertThat(seconds).isGreaterThan(DRILL.route().steps().size() * DRILL.pulse().slotSeconds());
    assertThat(told.beats.get()).isGreaterThan(DRILL.pulse().countIn());
    assertThat(clips).hasValue(1);
  }

  @Test
  void stopsAtOnce() throws InterruptedException {
    Told told = new Told();
    new GuestPlayer(output, () -> 0.1, () -> 5).start(setup(), told).run();
    assertThat(told.over.await(20, TimeUnit.SECONDS)).isTrue();
    assertThat(told.result.get().review().notes()).isEmpty();
  }

  @Test
  void slipsLieWithinTheWayWhateverChanceSays() {
    for (int seed = 0; seed < 2_000; seed++) {
      int steps = 12 + seed % 80;
      List<Mistake> slips = GuestPlayer.slips(steps, new Random(seed));
      assertThat(slips)
          .hasSize(2)
          .allSatisfy(s -> assertThat(((Mistake.Slip) s).step()).isBetween(2, steps - 3));
    }
  }
}
