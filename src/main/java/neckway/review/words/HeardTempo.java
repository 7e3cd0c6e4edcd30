package neckway.review.words;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.review.HeardPulse;
import neckway.words.Wording;

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
          Wording.of(
              "tempo.notTheClick",
              beats(played.review().heardSlotSeconds().orElseThrow()),
              Math.round(asked.tempo())));
    }
    if (HeardPulse.isSame(slot, asked.slotSeconds())) {
      return Optional.empty();
    }
    OptionalDouble notes = wholeNotesPerBeat(slot);
    if (played.hasClick()) {
      return Optional.of(
          notes.isPresent()
              ? Wording.of("tempo.click.notes", notes(notes.getAsDouble()), asked())
              : Wording.of("tempo.click", beats(slot), Math.round(asked.tempo())));
    }
    return Optional.of(
        notes.isPresent()
            ? Wording.of(
                "tempo.drill.notes",
                beats(slot),
                Math.round(asked.tempo()),
                notes(notes.getAsDouble()))
            : Wording.of("tempo.drill", beats(slot), Math.round(asked.tempo())));
  }

  List<Cause> causes() {
    if (played.review().keepsTheGrid()) {
      return List.of();
    }
    return List.of(
        Cause.ofTheWhole(
            OFF_THE_CLICK,
            Wording.of(
                "tempo.toTheClick", beats(played.review().heardSlotSeconds().orElseThrow()))));
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

  private static String notes(double notes) {
    return Phrases.count((int) notes, "note");
  }
}
