package neckway.review.words;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.neck.Step;
import neckway.review.Review;
import neckway.review.StepVerdict;
import neckway.words.Tongue;
import neckway.words.Wording;

/**
 * What a teacher would say of a take: what was right, what was not and where, how it lay in time,
 * and what to work on first. Each kind of sentence has a class of its own in this room; {@link
 * Phrasebook} lists them all.
 */
public final class Words {
  /** Below this share of right notes, and with so few, it is not this drill. */
  private static final double FITS_SHARE = 0.4;

  private static final int FEWEST_TO_JUDGE = 4;

  /** Less is not told: a hard pluck and a pressing finger sharpen a tuned string by as much. */
  private static final double OFF_TUNE_CENTS = 10;

  private final PlayableDrill drill;
  private final Review review;
  private final Played played;
  private final List<Sentence> said = new ArrayList<>();

  private Words(PlayableDrill drill, Review review) {
    this.drill = drill;
    this.review = review;
    this.played = new Played(drill, review);
  }

  /**
   * The sentences of a review, in the order in which they are said.
   *
   * @param drill what the take was held against
   */
  public static List<String> of(PlayableDrill drill, Review review) {
    return sentences(drill, review).stream().map(Sentence::text).toList();
  }

  /** The same with what each is for, and the notes that it tells of. */
  public static List<Sentence> sentences(PlayableDrill drill, Review review) {
    return new Words(drill, review).sentences();
  }

  /**
   * What a review says, which may be more or other than its own sentences (see {@link
   * OtherwisePlayed}), each with what is known of it: a sentence of another kind is a detail that
   * tells of no notes. They stay in the language in which they were said first.
   */
  public static List<Sentence> said(PlayableDrill drill, Review review) {
    Map<String, Sentence> own = new HashMap<>();
    for (Tongue tongue : Tongue.values()) {
      Wording.in(tongue, () -> sentences(drill, review))
          .forEach(sentence -> own.putIfAbsent(sentence.text(), sentence));
    }
    return review.summary().words().stream()
        .map(text -> own.getOrDefault(text, Sentence.of(text)))
        .toList();
  }

  /** The sentence of a review that says what to do first, or next. */
  public static Optional<String> advice(Review review) {
    return review.summary().words().stream().filter(Advice::isOne).findFirst();
  }

  private List<Sentence> sentences() {
    if (review.notes().isEmpty()) {
      return List.of(Sentence.of(Wording.of("words.nothing")));
    }
    if (!fits()) {
      doesNotFit();
      tuning();
      return said;
    }
    MissedShifts missed = new MissedShifts(played);
    ShiftStrings shiftStrings = new ShiftStrings(played);
    Slips slips = new Slips(played);
    Stumbles stumbles = new Stumbles(played);
    said.addAll(new Tries(played).sentences());
    whatWasRight();
    stoppedEarly(missed);
    said.addAll(missed.sentences());
    said.addAll(shiftStrings.sentences());
    said.addAll(slips.wrong());
    said.addAll(slips.leftOut(leftOutByThemselves(missed)));
    said.addAll(slips.struckTwice());
    said.addAll(slips.stray());
    said.addAll(slips.unclear());
    new CleanRounds(played).sentence().ifPresent(said::add);
    stumbles.cameInLate().ifPresent(said::add);
    said.addAll(stumbles.hesitations());
    said.addAll(new KeptTime(played).sentences());
    tuning();
    shiftStrings.unheard().ifPresent(said::add);
    said.add(new Advice(played).sentence());
    return said;
  }

  private boolean fits() {
    int right = rightInAll();
    return right > 0
        && (review.notes().size() < FEWEST_TO_JUDGE || right >= FITS_SHARE * review.notes().size());
  }

  private int rightInAll() {
    return (int) review.notes().stream().filter(n -> n.verdict() == Verdict.RIGHT).count();
  }

  private void doesNotFit() {
    int right = rightInAll();
    said.add(
        Sentence.of(
            right == 0
                ? Wording.of("words.unfit.none", ofNotes())
                : Wording.counted("words.unfit", right, ofNotes(), Phrases.count(right))));
  }

  private String ofNotes() {
    return Phrases.count(review.notes().size(), "ofNotes");
  }

  private void whatWasRight() {
    int steps = drill.route().steps().size();
    int reached = steps - played.steps(StepVerdict.UNPLAYED).size();
    int right = review.summary().right();
    String score = reached == steps ? "score" : "score.upTo";
    boolean all = right == reached && reached > 1;
    boolean nothingElse = review.summary().notes() == reached;
    String text =
        all
            ? Wording.of(score + (nothingElse ? ".all" : ".allRight"), reached)
            : Wording.counted(score + (reached == 1 ? ".ofOne" : ".ofMany"), right, right, reached);
    said.add(new Sentence(Sentence.Part.SCORE, text, List.of()));
  }

  private void stoppedEarly(MissedShifts missed) {
    List<Integer> left =
        played.steps(StepVerdict.UNPLAYED).stream().filter(s -> !missed.explain(s)).toList();
    Optional<Step> next = left.stream().findFirst().map(played::step);
    next.ifPresent(
        step ->
            said.add(
                Sentence.of(
                    Wording.counted(
                        "words.stopped",
                        left.size(),
                        Phrases.fretOnString(step.place()),
                        played.way(step),
                        Phrases.count(left.size(), "note")),
                    List.of(step.index()))));
  }

  private List<Integer> leftOutByThemselves(MissedShifts missed) {
    return played.steps(StepVerdict.SKIPPED).stream().filter(s -> !missed.explain(s)).toList();
  }

  private void tuning() {
    review
        .take()
        .tuningCents()
        .ifPresent(
            cents -> {
              if (Math.abs(cents) >= OFF_TUNE_CENTS) {
                said.add(
                    Sentence.of(
                        Wording.of(
                            cents < 0 ? "words.flat" : "words.sharp",
                            Math.round(Math.abs(cents)))));
              }
            });
  }
}
