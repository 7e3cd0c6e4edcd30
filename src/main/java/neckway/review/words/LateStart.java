package neckway.review.words;

import java.util.List;
import java.util.OptionalLong;
import neckway.drill.Pulse;
import neckway.words.Wording;

/** A run that was begun late. */
final class LateStart {
  /** Common practice, no source: the run itself is not touched; any other cause comes before it. */
  private static final double START = 0.2;

  private final Played played;

  LateStart(Played played) {
    this.played = played;
  }

  /** Whoever waits a whole bar or more may mean to. */
  List<Cause> causes() {
    OptionalLong slots = new Stumbles(played).slotsLate();
    Pulse pulse = played.drill().pulse();
    long bar = (long) pulse.beatsPerBar() * pulse.notesPerBeat();
    return slots.isEmpty() || slots.getAsLong() >= bar
        ? List.of()
        : List.of(new Cause(START, 0, List.of(0), Wording.of("lateStart")));
  }
}
