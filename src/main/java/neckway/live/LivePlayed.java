package neckway.live;

import java.util.List;
import java.util.Optional;
import neckway.drill.Cue;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.hear.beside.AtRate;
import neckway.hear.beside.LiveRemover;
import neckway.sound.BackingTrack;
import neckway.sound.ClickTrack;
import neckway.sound.CueTones;
import neckway.sound.CueWords;
import neckway.sound.PlayedSound;
import neckway.sound.PlayedTape;
import neckway.sound.Together;
import neckway.sound.Turned;

/** All that a live run plays: its click, and the backing where there is one. */
final class LivePlayed {
  /**
   * What is played is made so far ahead that it is known before it is heard; a change of volume is
   * that late.
   */
  private static final double SPARE_SECONDS = 0.05;

  /** What was played is remembered beyond the count-in for as long as the input's sound is. */
  private static final double KEPT_SECONDS = 30;

  private final PlayedSound all;
  private final double backingEnds;
  private final Optional<PlayedTape> tape;
  private final Optional<BesideClick> counting;

  /**
   * @param track clicks on every beat, at the highest gain
   * @param rate of the output, Hz
   */
  LivePlayed(LiveSetup setup, ClickTrack track, int rate) {
    if (setup.backing().isEmpty()) {
      all = audible(setup, calls(setup, track, rate));
      tape = Optional.empty();
      counting = Optional.empty();
      backingEnds = Double.POSITIVE_INFINITY;
      return;
    }
    LiveBacking backing = setup.backing().get();
    Pulse pulse = setup.drill().pulse();
    float[] samples = AtRate.of(backing.samples(), backing.sampleRate(), rate);
    BackingTrack band = track(backing, samples, pulse, track, rate);
    backingEnds = band.endFrame();
    double clicksFrom = backing.clicks() == LiveBacking.Clicks.ALL ? 0 : backingEnds;
    BesideClick clicks = new BesideClick(audible(setup, track), clicksFrom);
    double intro = LiveRun.LEAD_SECONDS + (pulse.countIn() + 1) * pulse.beatSeconds();
    PlayedTape both =
        new PlayedTape(
            new Together(clicks, new Turned(band, backing.gain())),
            LiveRemover.aheadFrames(rate) + (int) (SPARE_SECONDS * rate),
            (int) ((intro + KEPT_SECONDS) * rate));
    all = both;
    tape = Optional.of(both);
    counting = Optional.of(clicks);
  }

  private static BackingTrack track(
      LiveBacking backing, float[] samples, Pulse pulse, ClickTrack track, int rate) {
    double start = track.clickFrame(pulse.countIn());
    double fade = Math.max(1, pulse.countIn()) * pulse.beatSeconds() * rate;
    return backing.loopBeats().isPresent()
        ? BackingTrack.round(
            samples, start, backing.loopBeats().getAsDouble() * pulse.beatSeconds() * rate, fade)
        : BackingTrack.once(samples, start, backing.firstBeatSeconds() * rate, fade);
  }

  /** The clicks, with the tones of the calls among them where the drill has any. */
  private static PlayedSound calls(LiveSetup setup, ClickTrack track, int rate) {
    if (!setup.drill().isCalled()) {
      return track;
    }
    return switch (setup.callTones()) {
      case SOUNDING -> new Together(track, tones(setup.drill(), track, rate));
      case SPOKEN -> new Together(track, words(setup.drill(), track, rate));
      case SILENT -> track;
    };
  }

  private static PlayedSound tones(PlayableDrill drill, ClickTrack track, int rate) {
    int countIn = drill.pulse().countIn();
    List<CueTones.At> tones =
        drill.cues().stream()
            .map(cue -> new CueTones.At(track.clickFrame(countIn + cue.beat()), way(cue.move())))
            .toList();
    return new CueTones(rate, tones, ClickTrack.MAX_GAIN);
  }

  private static PlayedSound words(PlayableDrill drill, ClickTrack track, int rate) {
    int countIn = drill.pulse().countIn();
    List<CueWords.At> words =
        drill.cues().stream()
            .map(
                cue ->
                    new CueWords.At(
                        track.clickFrame(countIn + cue.beat()), cue.spoken(drill.tuning())))
            .toList();
    return new CueWords(rate, words, ClickTrack.MAX_GAIN);
  }

  private static CueTones.Way way(Cue.Move move) {
    return switch (move) {
      case UP -> CueTones.Way.RISING;
      case STAY -> CueTones.Way.LEVEL;
      case DOWN -> CueTones.Way.FALLING;
    };
  }

  /** As loud as is wished, which may change while it clicks. */
  private static Turned audible(LiveSetup setup, PlayedSound track) {
    return new Turned(track, () -> setup.clickGain().getAsDouble() / ClickTrack.MAX_GAIN);
  }

  /** A round begins. */
  void countIn(ClickTrack track, int countIn) {
    counting.ifPresent(clicks -> clicks.countIn(track, countIn));
  }

  /** The output frame at which the backing has ended; infinite where it goes round or none is. */
  double backingEnds() {
    return backingEnds;
  }

  PlayedSound all() {
    return all;
  }

  /** What was played, where it is to be taken out of what is heard. */
  Optional<PlayedTape> tape() {
    return tape;
  }
}
