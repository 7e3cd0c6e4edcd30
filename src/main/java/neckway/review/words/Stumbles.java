package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.neck.Step;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.words.Wording;

/** Says where a player came in late or hesitated; landings after a shift are told apart. */
final class Stumbles {
  /** A wait shorter than this, or than two fifths of a slot, is unevenness, seconds. */
  private static final double LEAST_SECONDS = 0.15;

  private static final double LEAST_SLOTS = 0.4;

  /** A wait before a step, beyond the usual time from note to note. */
  record Wait(Step step, double seconds) {}

  private final Played played;
  private final PlayableDrill drill;
  private final Review review;

  Stumbles(Played played) {
    this.played = played;
    this.drill = played.drill();
    this.review = played.review();
  }

  /** "You came in a beat late.", where the beat is known from outside the notes. */
  Optional<Sentence> cameInLate() {
    return review.notes().stream()
        .filter(n -> played.hasBeatToKeep() && n.attempt() == 0 && review.reviewed() == 0)
        .filter(
            n -> n.verdict() == Verdict.RIGHT && n.step().equals(OptionalInt.of(0)) && n.slot() > 0)
        .findFirst()
        .map(n -> Sentence.of(Wording.of("stumble.late", slots(n.slot())), List.of(0)));
  }

  private String slots(long slots) {
    int inBeat = drill.pulse().notesPerBeat();
    if (slots % inBeat == 0) {
      return Phrases.count((int) (slots / inBeat), "beat");
    }
    return 2 * slots == inBeat
        ? Wording.of("count.beat.half")
        : Phrases.ms(1000 * slots * slotSeconds());
  }

  /** "You hesitated: 2 seconds before the second string, fret 8, going up." */
  List<Sentence> hesitations() {
    List<Wait> waits = waits();
    List<String> each =
        waits.stream()
            .map(
                w ->
                    Wording.of(
                        Phrases.at("stumble.each", w.step().place()),
                        Phrases.ms(1000 * w.seconds()),
                        played.way(w.step()),
                        Phrases.ordinal(w.step().place().string()),
                        w.step().place().fret()))
            .toList();
    if (each.isEmpty()) {
      return List.of();
    }
    return List.of(
        Sentence.of(
            Wording.of("stumble.waited", Phrases.named(each)),
            waits.stream().map(w -> w.step().index()).toList()));
  }

  /** The waits before notes that are no landings. */
  List<Wait> waits() {
    Set<Integer> landings = played.landings();
    List<Wait> waits = new ArrayList<>();
    ReviewedNote before = null;
    for (ReviewedNote note : review.notes()) {
      if (before != null && follows(before, note)) {
        int index = note.step().getAsInt();
        double due = slotSeconds() * review.ownSlots().gapBefore(index);
        double wait = note.time() - before.time() - due;
        if (wait > Math.max(LEAST_SECONDS, LEAST_SLOTS * slotSeconds())
            && !landings.contains(index)) {
          waits.add(new Wait(played.step(index), wait));
        }
      }
      before = note;
    }
    return waits;
  }

  private boolean follows(ReviewedNote before, ReviewedNote note) {
    return before.attempt() == review.reviewed()
        && note.attempt() == review.reviewed()
        && before.inPlace()
        && note.inPlace()
        && note.step().getAsInt() == before.step().getAsInt() + 1;
  }

  private double slotSeconds() {
    return played.ownSlotSeconds();
  }
}
