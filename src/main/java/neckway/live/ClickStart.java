package neckway.live;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import neckway.hear.beside.LiveRemover;
import neckway.review.Clock;
import neckway.sound.ClickClock;
import neckway.sound.ClickTrack;
import neckway.sound.OffsetWatch;
import neckway.sound.Playback;
import neckway.sound.PlayedTape;
import neckway.words.Wording;

/** A start to the click: its frames in the output are known, and are found on the input's count. */
final class ClickStart implements RoundStart {
  /** The devices' positions mean nothing before this, seconds after the first sample. */
  private static final double SETTLE_SECONDS = 0.7;

  /** The first beat's own click is not waited for, but that the count-in's last one is over. */
  private static final double PAST_FIRST_BEAT_SECONDS = 0.02;

  /** The click may wander this much against the input before it is said. */
  private static final double DRIFT_SECONDS = 0.020;

  private final Playback out;
  private final OffsetWatch positions;
  private final ClickTrack track;
  private final int countIn;
  private final OptionalDouble extraSeconds;
  private final Optional<PlayedTape> tape;
  private final long underrunsBefore;

  private double offsetFrames;
  private OptionalDouble heardExtraSeconds = OptionalDouble.empty();
  private OptionalDouble reportedAtBegin = OptionalDouble.empty();
  private OptionalLong beat = OptionalLong.empty();

  /**
   * @param out plays the track and runs
   * @param positions of the devices
   * @param track begins with this round's count-in
   * @param countIn clicks before the first beat's
   * @param extraSeconds the devices' measured round trip, if it was measured
   * @param tape what is played out, where that is to be taken out of the take
   */
  ClickStart(
      Playback out,
      OffsetWatch positions,
      ClickTrack track,
      int countIn,
      OptionalDouble extraSeconds,
      Optional<PlayedTape> tape) {
    this.out = out;
    this.positions = positions;
    this.track = track;
    this.countIn = countIn;
    this.extraSeconds = extraSeconds;
    this.tape = tape;
    underrunsBefore = out.underruns();
  }

  /** Take frame less output frame, as it is known so far. */
  double offsetFrames() {
    return offsetFrames;
  }

  /**
   * How much later the click comes back than the devices say, by the clicks of this round where it
   * heard them, else as it was measured before.
   */
  OptionalDouble extraSeconds() {
    return heardExtraSeconds.isPresent() ? heardExtraSeconds : extraSeconds;
  }

  private boolean settled(LiveTake take) {
    return take.firstFrame() + take.frames() >= SETTLE_SECONDS * take.sampleRate();
  }

  private double reported(LiveTake take) {
    return positions.offsetFrames().orElse(0) - take.firstFrame();
  }

  @Override
  public Optional<FirstBeat> find(LiveTake take) {
    if (!settled(take)) {
      return Optional.empty();
    }
    positions.start();
    double reported = reported(take);
    offsetFrames = reported;
    double due = track.clickFrame(countIn) + reported;
    return take.frames() > due + PAST_FIRST_BEAT_SECONDS * take.sampleRate()
        ? Optional.of(byClock(take, reported))
        : Optional.empty();
  }

  @Override
  public FirstBeat atEnd(LiveTake take) {
    return byClock(take, reported(take));
  }

  private FirstBeat byClock(LiveTake take, double reported) {
    reportedAtBegin = OptionalDouble.of(reported);
    double rate = take.sampleRate();
    ClickClock clock =
        ClickClock.of(take.kept(), take.length(), rate, track, countIn, reported, extraSeconds);
    offsetFrames = clock.offsetFrames();
    if (clock.source() == ClickClock.Source.HEARD) {
      heardExtraSeconds = OptionalDouble.of((offsetFrames - reported) / rate);
    }
    Clock told =
        switch (clock.source()) {
          case HEARD, STORED -> Clock.MEASURED;
          case UNMEASURED -> Clock.UNMEASURED;
        };
    double seconds = (track.clickFrame(countIn) + offsetFrames) / rate;
    return new FirstBeat(seconds, told, Optional.of(clock.source()));
  }

  @Override
  public void heard(LiveTake take, LiveRunListener listener) {
    if (!settled(take)) {
      return;
    }
    long now = track.clickBefore(take.frames() - offsetFrames) - countIn;
    if (now >= -countIn && (beat.isEmpty() || now > beat.getAsLong())) {
      beat = OptionalLong.of(now);
      listener.beat(now);
    }
  }

  @Override
  public Optional<LiveRemover.Known> played() {
    long offset = Math.round(offsetFrames);
    return tape.map(played -> (frame, into) -> played.read(frame - offset, into));
  }

  @Override
  public boolean outputGone() {
    return out.gone();
  }

  @Override
  public Optional<String> doubt(LiveTake take) {
    long underruns = out.underruns() - underrunsBefore;
    double begun = reportedAtBegin.orElse(reported(take));
    double driftSeconds = (reported(take) - begun) / take.sampleRate();
    if (underruns == 0 && Math.abs(driftSeconds) <= DRIFT_SECONDS) {
      return Optional.empty();
    }
    return Optional.of(
        Wording.of("machine.live.stumbled", Math.round(Math.abs(driftSeconds) * 1000)));
  }
}
