package neckway.desk.choose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import neckway.Await;
import neckway.desk.DrillModel;
import neckway.desk.RouteSound;
import neckway.desk.choose.HearModel.State;
import neckway.neck.BadInput;
import neckway.neck.Place;
import neckway.neck.Step;
import neckway.sound.PlayedSound;
import org.junit.jupiter.api.Test;

class HearModelTests {
  private static final int RATE = 44_100;

  private final DrillModel drill = new DrillModel();
  private final List<String> said = Collections.synchronizedList(new ArrayList<>());

  /** A loudspeaker that plays a hundred times too fast and keeps what it played. */
  private static final class FastSpeaker implements HearModel.Outlet {
    private final CountDownLatch closed = new CountDownLatch(1);
    private final float speed;
    private volatile float peak;

    FastSpeaker(float speed) {
      this.speed = speed;
    }

    @Override
    public HearModel.Playing play(PlayedSound sound, int sampleRate) {
      float[] block = new float[(int) (sampleRate * 0.015 * speed)];
      return new HearModel.Playing() {
        private long heard;

        @Override
        public long framesHeard() {
          sound.fill(heard, block);
          for (float sample : block) {
            peak = Math.max(peak, Math.abs(sample));
          }
          heard += block.length / 3;
          return heard;
        }

        @Override
        public boolean gone() {
          return false;
        }

        @Override
        public void close() {
          closed.countDown();
        }
      };
    }
  }

  @Test
  void aRouteIsPlayedToItsEndQuietlyAndEveryPlaceIsShownInTurn() throws Exception {
    FastSpeaker speaker = new FastSpeaker(6);
    HearModel hear = new HearModel(speaker, Runnable::run, said::add);
    Set<Place> shown = Collections.synchronizedSet(new LinkedHashSet<>());
    hear.place().addListener((o, before, now) -> now.ifPresent(shown::add));
    hear.gain(0.2);
    hear.toggle(drill.drill());
    assertThat(hear.state().get()).isNotEqualTo(State.SILENT);
    assertThat(speaker.closed.await(30, TimeUnit.SECONDS)).isTrue();
    Await.until("it is silent again", 30, () -> hear.state().get() == State.SILENT);
    assertThat(hear.place().get()).isEmpty();
    assertThat(said).isEmpty();
    assertThat(shown).isSubsetOf(drill.route().steps().stream().map(Step::place).toList());
    assertThat(shown).hasSizeGreaterThan(10);
    assertThat(speaker.peak).isBetween(0.03f, 0.2f);
  }

  @Test
  void itStopsWhenAsked() throws Exception {
    FastSpeaker speaker = new FastSpeaker(0.1f);
    HearModel hear = new HearModel(speaker, Runnable::run, said::add);
    hear.toggle(drill.drill());
    Await.until("it plays", 30, () -> hear.state().get() == State.PLAYING);
    hear.toggle(drill.drill());
    assertThat(hear.state().get()).isEqualTo(State.SILENT);
    assertThat(speaker.closed.await(5, TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void withNoDeviceItSaysSo() throws Exception {
    HearModel hear =
        new HearModel(
            (sound, rate) -> {
              throw new BadInput("no sound output found; plug one in");
            },
            Runnable::run,
            said::add);
    hear.toggle(drill.drill());
    Await.until("it is silent again", 30, () -> hear.state().get() == State.SILENT);
    assertThat(said).containsExactly("no sound output found; plug one in");
  }

  /** The steps are due where the formats page says: first beat + step x 60 / tempo / notes. */
  @Test
  void clicksAndNotesStandOnTheBeatAtAnyTempo() {
    for (double tempo : new double[] {40, 80, 132.5}) {
      drill.tempo(tempo);
      RouteSound sound = RouteSound.of(drill.route(), drill.drill().pulse(), RATE);
      float[] all = sound.samples();
      double beat = 60 / tempo;
      double firstBeat = 0.2 + 4 * beat;
      assertThat(rise(all, 0.1)).as("first click").isEqualTo(0.2, within(0.003));
      assertThat(rise(all, firstBeat - 0.02)).as("first note").isEqualTo(firstBeat, within(0.012));
      assertThat(sound.stepAt(Math.round((firstBeat + beat * 3.01) * RATE))).isEqualTo(6);
      assertThat(sound.stepAt(Math.round((firstBeat - 0.01) * RATE))).isNegative();
      for (float sample : all) {
        assertThat(Math.abs(sample)).isLessThanOrEqualTo(1);
      }
    }
  }

  /** Seconds at which the sound first rises after a moment. */
  private static double rise(float[] samples, double fromSeconds) {
    int at = (int) (fromSeconds * RATE);
    while (Math.abs(samples[at]) < 0.05) {
      at++;
    }
    return (double) at / RATE;
  }
}
