package neckway.player.voice;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedNote.How;
import neckway.player.settings.PlayerSettings;

/** What one string does from a stroke on until it is struck again or stopped. */
final class StringRun {
  private static final double PICK_DAMP_PER_SECOND = 400;
  private static final double STRUCK_ANEW_PER_SECOND = 1500;
  private static final double ANEW_SECONDS = 0.006;
  private static final double FRET_SECONDS = 0.022;
  private static final double LEAST_BEFORE_SLIDE_SECONDS = 0.02;
  private static final double AUDIBLE_CENTS = 0.15;

  /** A change of fret while the string sounds; passing: on the way of a slide. */
  private record Turn(long frame, PlayedNote note, int fret, double loss, boolean passing) {}

  private final int rate;
  private final Touch touch;
  private final FingerNoise noise;
  private final Random random;
  private final float[] out;
  private final List<PlayedNote> notes;
  private final List<Turn> turns = new ArrayList<>();
  private final PitchContour contour;
  private final StringVoice voice;
  private final long handOff;
  private final long pickOn;
  private final long struckAnew;
  private final double handDampPerSecond;
  private long onFretSince;
  private double damping;

  /**
   * @param notes the stroke and what is slid, hammered or pulled from it
   * @param follower the next stroke of the same string, null if there is none
   * @param handOff when and how the hand stops the string
   */
  StringRun(
      PlayerSettings settings,
      Touch touch,
      FingerNoise noise,
      Random random,
      float[] out,
      List<PlayedNote> notes,
      PlayedNote follower,
      GuitarSound.HandOff handOff) {
    this.rate = settings.sampleRate();
    this.touch = touch;
    this.noise = noise;
    this.random = random;
    this.out = out;
    this.notes = notes;
    this.handOff = handOff.frame();
    PlayedNote first = notes.get(0);
    int fret = first.place().fret();
    voice =
        new StringVoice(
            rate,
            touch.hz(first, fret),
            touch.stiffness(first, fret),
            settings.guitar(),
            touch.strike(first));
    contour = new PitchContour(first, settings.habits(), random);
    handDampPerSecond = handOff.perSecond();
    double muteMs = settings.habits().pick().muteMs() * (0.5 + random.nextDouble());
    struckAnew = follower == null ? out.length : follower.frame();
    pickOn = Math.max(first.frame(), struckAnew - (long) (muteMs / 1000 * rate));
    planTurns(follower);
  }

  void render() {
    PlayedNote first = notes.get(0);
    noise.attack(out, first, first.how() == How.PLUCK ? 1 : 0.4);
    onFretSince = first.frame();
    long end = Math.min(out.length, struckAnew + (long) (ANEW_SECONDS * rate));
    int turn = 0;
    double tuned = Double.NaN;
    long at = first.frame();
    while (at < end) {
      boolean changed = false;
      for (; turn < turns.size() && turns.get(turn).frame() <= at; turn++) {
        make(turns.get(turn));
        changed = true;
      }
      changed |= damp(at);
      double off =
          contour.cents((double) (at - first.frame()) / rate, (double) (at - onFretSince) / rate);
      if (changed || !(Math.abs(off - tuned) <= AUDIBLE_CENTS)) {
        voice.tune(off);
        tuned = off;
      }
      long stop = Math.min(end, at + StringVoice.block());
      stop = turn < turns.size() ? Math.min(stop, turns.get(turn).frame()) : stop;
      for (long change : new long[] {pickOn, handOff, struckAnew}) {
        stop = change > at ? Math.min(stop, change) : stop;
      }
      if (!voice.render(out, (int) at, (int) stop)) {
        return;
      }
      at = stop;
    }
  }

  private boolean damp(long at) {
    double now =
        at >= struckAnew
            ? STRUCK_ANEW_PER_SECOND
            : at >= pickOn && struckAnew < out.length
                ? PICK_DAMP_PER_SECOND
                : at >= handOff ? handDampPerSecond : 0;
    boolean changed = now != damping;
    damping = now;
    voice.damp(now);
    return changed;
  }

  private void make(Turn turn) {
    PlayedNote note = turn.note();
    voice.moveTo(
        touch.hz(note, turn.fret()),
        touch.stiffness(note, turn.fret()),
        touch.ringSeconds(note, turn.fret()));
    voice.lose(turn.loss(), turn.passing() ? 0.01 : 0.02);
    if (!turn.passing()) {
      onFretSince = turn.frame();
      if (note.how() != How.SLIDE) {
        voice.excite(touch.strike(note));
        noise.attack(out, note, 0.3);
      }
    }
  }

  private void planTurns(PlayedNote follower) {
    for (int i = 1; i < notes.size(); i++) {
      PlayedNote note = notes.get(i);
      boolean slid = note.how() == How.SLIDE;
      if (slid) {
        slide(note, notes.get(i - 1).frame());
      }
      double loss = slid ? 0.05 : 0.2 + 0.25 * random.nextDouble();
      turns.add(new Turn(note.frame(), note, note.place().fret(), loss, false));
    }
    if (follower != null && follower.slideFrom().isPresent()) {
      slide(follower, notes.get(notes.size() - 1).frame());
    }
  }

  private void slide(PlayedNote to, long notBefore) {
    int from = to.slideFrom().orElse(to.place().fret());
    int frets = Math.abs(to.place().fret() - from);
    double perFret = FRET_SECONDS * (0.6 + 0.8 * random.nextDouble()) * rate;
    for (int i = 1; i < frets; i++) {
      long frame = to.frame() - (long) ((frets - i) * perFret);
      if (frame > notBefore + LEAST_BEFORE_SLIDE_SECONDS * rate) {
        int fret = from + i * Integer.signum(to.place().fret() - from);
        turns.add(new Turn(frame, to, fret, 0.04 + 0.08 * random.nextDouble(), true));
      }
    }
    noise.squeak(out, to, to.frame() - (long) (frets * perFret), to.frame());
  }
}
