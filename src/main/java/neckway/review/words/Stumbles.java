package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hear.RobustStatistics;
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
    OptionalLong slots = slotsLate();
    return slots.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Sentence.of(Wording.of("stumble.late", slots(slots.getAsLong())), List.of(0)));
  }

  /** Slots by which the first note came late, where it did. */
  OptionalLong slotsLate() {
    return review.notes().stream()
        .filter(n -> played.hasBeatToKeep() && n.attempt() == 0 && review.reviewed() == 0)
        .filter(
            n -> n.verdict() == Verdict.RIGHT && n.step().equals(OptionalInt.of(0)) && n.slot() > 0)
        .mapToLong(ReviewedNote::slot)
        .findFirst();
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

  /** "You hesitated before fret 8 on the second string, going up, by 2 seconds." */
  List<Sentence> hesitations() {
    List<Wait> waits = waits();
    if (waits.isEmpty()) {
      return List.of();
    }
    Map<Integer, List<Wait>> places = new LinkedHashMap<>();
    waits.forEach(
        w ->
            places
                .computeIfAbsent(played.inRound(w.step().index()), p -> new ArrayList<>())
                .add(w));
    List<String> each = places.values().stream().map(this::hesitation).toList();
    List<Integer> steps =
        places.values().stream().flatMap(List::stream).map(w -> w.step().index()).toList();
    return List.of(Sentence.of(Wording.of("stumble.waited", Phrases.named(each)), steps));
  }

  /** One place, in some rounds. */
  private String hesitation(List<Wait> waits) {
    Step step = waits.get(0).step();
    List<Integer> rounds = waits.stream().map(w -> played.round(w.step().index())).toList();
    return Wording.of(
        waits.size() == 1 ? "stumble.each" : "stumble.some",
        Phrases.before(step.place()),
        played.wayAlone(step.index()),
        Phrases.inRounds(rounds, played.rounds()),
        Phrases.ms(1000 * RobustStatistics.median(waits.stream().map(Wait::seconds).toList())));
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
