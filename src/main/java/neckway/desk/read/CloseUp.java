package neckway.desk.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.desk.Texts;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.page.PageModel;
import neckway.page.PlayedPlace;
import neckway.page.PlayedPlace.Known;
import neckway.review.HeardAs;
import neckway.review.Landings;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;

/**
 * One shift from near: the sound round it, its notes, the planned and the heard place, the stumble.
 *
 * @param shift what is said of it
 * @param fromSeconds where the stretch begins in the take
 * @param toSeconds where it ends
 * @param notes what was heard in it
 * @param expected when the landing would have come had it kept the time between notes, seconds
 * @param landed when it came, seconds; empty where it was not heard, or the hand stayed
 * @param planned where the landing note was planned
 * @param before where the note before it was planned
 * @param made the way that the hand went, where it was heard to have gone one
 * @param rounds rounds of the drill
 * @param firstStep the first step of the stretch
 * @param lastStep the last one
 */
public record CloseUp(
    ReviewedShift shift,
    double fromSeconds,
    double toSeconds,
    List<Heard> notes,
    OptionalDouble expected,
    OptionalDouble landed,
    Place planned,
    Place before,
    Optional<Way> made,
    int rounds,
    int firstStep,
    int lastStep) {
  private static final int NOTES_AROUND = 2;
  private static final double LEAD_SECONDS = 0.12;

  /**
   * A note in the stretch.
   *
   * @param seconds when
   * @param label where it was played, or what was heard in place of the note due
   * @param wrong whether it was another pitch than planned
   */
  public record Heard(double seconds, String label, boolean wrong) {}

  /**
   * The way of a hand along a string.
   *
   * @param from the note that it left
   * @param to the first note in its new stand
   */
  public record Way(Place from, Place to) {}

  /** Whether the hand is known not to have gone the planned way. */
  boolean otherwise() {
    return shift.verdict() == ShiftVerdict.MISSED
        || made.filter(way -> !way.to().equals(planned)).isPresent();
  }

  /** The shift with this index in the review. */
  static CloseUp of(ReadTake take, int index) {
    Review review = take.review();
    ReviewedShift shift = review.shifts().get(index);
    int landing = shift.planned().landingStep();
    List<Step> steps = take.drill().route().steps();
    int landedOn = new Landings(take.drill()).step(shift);
    Optional<ReviewedNote> note =
        inPlace(review, landedOn).filter(n -> shift.verdict() != ShiftVerdict.MISSED);
    int first = Math.min(landing, landedOn) - NOTES_AROUND;
    int last = Math.max(landing, landedOn) + NOTES_AROUND;
    double from = time(review, Math.max(0, first)) - LEAD_SECONDS;
    double to = time(review, Math.min(steps.size() - 1, last)) + review.grid().slotSeconds();
    from = Math.max(0, from);
    to = Math.max(from + 0.1, Math.min(review.take().seconds(), to));
    PageModel page = new PageModel(take.drill());
    page.review(review);
    List<Heard> heard = new ArrayList<>();
    for (ReviewedNote each : review.notes()) {
      if (each.attempt() == review.reviewed() && each.time() >= from && each.time() <= to) {
        boolean planned = each.verdict() == Verdict.RIGHT || each.verdict() == Verdict.REPEAT;
        heard.add(new Heard(each.time(), label(take.drill(), page, each), !planned));
      }
    }
    OptionalDouble landed =
        note.isPresent() ? OptionalDouble.of(note.get().time()) : OptionalDouble.empty();
    OptionalDouble expected =
        note.isPresent() && shift.lateMs().isPresent()
            ? OptionalDouble.of(note.get().time() - shift.lateMs().getAsDouble() / 1000)
            : OptionalDouble.empty();
    return new CloseUp(
        shift,
        from,
        to,
        List.copyOf(heard),
        expected,
        landed,
        steps.get(landing).place(),
        steps.get(landing - 1).place(),
        shift.string().flatMap(string -> way(take, shift, string)),
        take.drill().route().rounds(),
        Math.max(0, first),
        Math.min(steps.size() - 1, last));
  }

  private static String label(PlayableDrill drill, PageModel page, ReviewedNote note) {
    if (note.step().isEmpty()) {
      return Texts.of("read.heard.stray", HeardAs.note(drill, note.midi()));
    }
    Step due = drill.route().steps().get(note.step().getAsInt());
    if (note.verdict() != Verdict.WRONG) {
      return place(page.at(due.index()).played());
    }
    HeardAs heard = HeardAs.of(drill, due, note.midi());
    return Texts.of(
        heard.fret().isPresent() ? "read.heard.fret" : "read.heard.note", heard.label());
  }

  /** As the page has it: where the note was played, or that this is not known. */
  private static String place(PlayedPlace played) {
    return played.known() == Known.NOT_AS_PLANNED
        ? Texts.of("read.heard.somewhere")
        : played.place().toString();
  }

  /** As planned, or by the cleanest join of the string on which it was made. */
  private static Optional<Way> way(ReadTake take, ReviewedShift shift, GuitarString string) {
    PlannedShift planned = shift.planned();
    List<Step> steps = take.drill().route().steps();
    if (string.equals(planned.string())) {
      return Optional.of(
          new Way(
              steps.get(planned.landingStep() - 1).place(),
              steps.get(planned.landingStep()).place()));
    }
    boolean up = planned.direction() == Direction.UP;
    return take.drill().pairs().get(planned.pair()).stream()
        .filter(join -> join.string().equals(string))
        .findFirst()
        .map(
            join ->
                new Way(
                    new Place(string, up ? join.from() : join.to()),
                    new Place(string, up ? join.to() : join.from())));
  }

  private static Optional<ReviewedNote> inPlace(Review review, int step) {
    return review.notes().stream()
        .filter(n -> n.attempt() == review.reviewed())
        .filter(ReviewedNote::inPlace)
        .filter(n -> n.step().getAsInt() == step)
        .findFirst();
  }

  /** When a step was heard, or was due. */
  private static double time(Review review, int step) {
    return inPlace(review, step).map(ReviewedNote::time).orElse(review.steps().get(step).due());
  }
}
