package neckway.review.words;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.review.HeardPulse;

/** Says at what tempo a run was played, where that was another than the drill's. */
final class HeardTempo {
  /** Common practice, no source: a run beside the click is the first thing a teacher mends. */
  private static final double OFF_THE_CLICK = 6;

  private final Played played;
  private final Pulse asked;

  HeardTempo(Played played) {
    this.played = played;
    this.asked = played.drill().pulse();
  }

  Optional<String> sentence() {
    double slot = played.review().grid().slotSeconds();
    if (!played.review().keepsTheGrid()) {
      return Optional.of(
          "You did not keep to the click: your notes went at some "
              + beats(played.review().heardSlotSeconds().orElseThrow())
              + " beats a minute, the click at "
              + Math.round(asked.tempo())
              + ".");
    }
    if (HeardPulse.isSame(slot, asked.slotSeconds())) {
      return Optional.empty();
    }
    OptionalDouble notes = wholeNotesPerBeat(slot);
    if (played.hasClick()) {
      return Optional.of(
          notes.isPresent()
              ? "You played "
                  + perBeat(notes.getAsDouble())
                  + " where the drill has "
                  + asked()
                  + "."
              : "You played at "
                  + beats(slot)
                  + " beats a minute, and the click was at "
                  + Math.round(asked.tempo())
                  + ".");
    }
    String heard =
        "You played at "
            + beats(slot)
            + " beats a minute, and the drill is at "
            + Math.round(asked.tempo());
    return Optional.of(
        notes.isPresent()
            ? heard
                + "; at "
                + Math.round(asked.tempo())
                + " that is "
                + perBeat(notes.getAsDouble())
                + "."
            : heard + ".");
  }

  List<Cause> causes() {
    if (played.review().keepsTheGrid()) {
      return List.of();
    }
    boolean faster = played.review().heardSlotSeconds().orElseThrow() < asked.slotSeconds();
    return List.of(
        Cause.ofTheWhole(
            OFF_THE_CLICK,
            "you played "
                + (faster ? "faster" : "slower")
                + " than the click; listen to a bar of it and count along before you come in, or set"
                + " it to "
                + beats(played.review().heardSlotSeconds().getAsDouble())));
  }

  private long beats(double slotSeconds) {
    return Math.round(60 / (slotSeconds * asked.notesPerBeat()));
  }

  private OptionalDouble wholeNotesPerBeat(double slotSeconds) {
    double notes = asked.beatSeconds() / slotSeconds;
    boolean whole =
        Math.rint(notes) >= 1
            && Math.rint(notes) <= Pulse.MOST_NOTES_PER_BEAT
            && HeardPulse.isSame(notes, Math.rint(notes));
    return whole ? OptionalDouble.of(Math.rint(notes)) : OptionalDouble.empty();
  }

  private String asked() {
    return Phrases.count(asked.notesPerBeat());
  }

  private static String perBeat(double notes) {
    return Phrases.count((int) notes, "note") + " a beat";
  }
}
