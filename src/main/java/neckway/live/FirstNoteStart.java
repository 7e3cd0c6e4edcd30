package neckway.live;

import java.util.Optional;
import java.util.OptionalDouble;
import neckway.hear.Ear;
import neckway.hear.HeardNote;
import neckway.hear.NoteListener;
import neckway.review.Clock;

/** A free start: the first note heard is the first one of the drill. */
final class FirstNoteStart implements RoundStart {
  private final Ear ear;
  private final FirstNote first = new FirstNote();
  private final double firstDueSeconds;
  private int heard;

  /**
   * @param firstDueSeconds from the first beat to the first note
   */
  FirstNoteStart(double sampleRate, double firstDueSeconds) {
    this.firstDueSeconds = firstDueSeconds;
    ear = new Ear(sampleRate);
  }

  @Override
  public Optional<FirstBeat> find(LiveTake take) {
    ear.process(take.kept(), heard, take.length() - heard, first);
    heard = take.length();
    return first.time.isPresent() ? Optional.of(beat(first.time.getAsDouble())) : Optional.empty();
  }

  @Override
  public FirstBeat atEnd(LiveTake take) {
    return beat(first.time.orElse(0));
  }

  private FirstBeat beat(double firstNote) {
    return new FirstBeat(firstNote - firstDueSeconds, Clock.MEASURED, Optional.empty());
  }

  /** Keeps the time of the first note heard. */
  private static final class FirstNote implements NoteListener {
    private OptionalDouble time = OptionalDouble.empty();

    @Override
    public void heard(HeardNote note) {
      if (time.isEmpty()) {
        time = OptionalDouble.of(note.time());
      }
    }

    @Override
    public void listenedUntil(double seconds) {
      // only notes matter here
    }
  }
}
