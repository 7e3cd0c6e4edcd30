package neckway.live;

import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.follow.NoteVerdict;

/** Tells by what was played when a round is over. */
final class RoundEnd {
  /** A round ends when nothing was heard for this long, seconds. */
  private static final double QUIET_END_SECONDS = 10;

  private static final double LAST_NOTE_RINGS_SECONDS = 1;
  private static final double WAIT_FOR_FIRST_NOTE_SECONDS = 120;

  private final boolean backed;
  private final int lastStep;
  private final double firstNoteBySeconds;
  private OptionalDouble lastNote = OptionalDouble.empty();
  private boolean lastStepPlayed;

  /**
   * @param backed whether a backing plays: it goes on when the player has stopped, and what leaks
   *     of it may be heard as notes, so that only notes in place tell that one plays
   */
  RoundEnd(PlayableDrill drill, boolean backed) {
    this.backed = backed;
    lastStep = drill.route().steps().size() - 1;
    Pulse pulse = drill.pulse();
    firstNoteBySeconds =
        LiveRun.LEAD_SECONDS + pulse.countIn() * pulse.beatSeconds() + WAIT_FOR_FIRST_NOTE_SECONDS;
  }

  /** The first beat is known; nothing is missed before that. */
  void begun(FirstBeat first, double nowSeconds) {
    lastNote = OptionalDouble.of(Math.max(first.seconds(), nowSeconds));
  }

  /** A note was heard. */
  void heard(NoteVerdict verdict) {
    if (backed && !verdict.inPlace()) {
      return;
    }
    double time = verdict.note().time();
    lastNote = OptionalDouble.of(Math.max(lastNote.orElse(time), time));
    if (verdict.inPlace()) {
      lastStepPlayed = verdict.step().getAsInt() == lastStep;
    }
  }

  /** Whether it is over, by a take of this length. */
  boolean reached(double nowSeconds) {
    if (lastNote.isEmpty()) {
      return nowSeconds > firstNoteBySeconds;
    }
    double quiet = nowSeconds - lastNote.getAsDouble();
    return quiet > QUIET_END_SECONDS || lastStepPlayed && quiet > LAST_NOTE_RINGS_SECONDS;
  }
}
