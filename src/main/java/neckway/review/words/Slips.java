package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.neck.GuitarString;
import neckway.neck.Step;
import neckway.review.HeardAs;
import neckway.review.Review;
import neckway.review.ReviewedNote;

/** Says the slips of the reviewed attempt, each with its place. */
final class Slips {
  private static final int MOST_NAMED = 3;

  private final PlayableDrill drill;
  private final Review review;
  private final int half;

  Slips(PlayableDrill drill, Review review) {
    this.drill = drill;
    this.review = review;
    this.half = (drill.route().stepsPerRound() - 1) / 2;
  }

  /** "One note wrong: coming down, on the second string you played fret 8, not 7." */
  List<String> wrong() {
    List<String> each = new ArrayList<>();
    for (ReviewedNote note : of(Verdict.WRONG)) {
      Step step = drill.route().steps().get(note.step().getAsInt());
      each.add(
          way(step)
              + ", on the "
              + Phrases.string(step.place().string())
              + " "
              + heard(note, step));
    }
    return said(each, " wrong: ", "note");
  }

  private String heard(ReviewedNote note, Step step) {
    HeardAs heard = HeardAs.of(drill, step, note.midi());
    int due = step.place().fret();
    return heard.fret().isPresent()
        ? "you played fret " + heard.fret().getAsInt() + ", not " + due
        : "I heard " + heard.note() + " where fret " + due + " was due";
  }

  /** Steps left out, a row of them as one. */
  List<String> leftOut(List<Integer> steps) {
    List<String> each = new ArrayList<>();
    for (int s : steps) {
      Step step = drill.route().steps().get(s);
      each.add(way(step) + ", " + spot(step));
    }
    return said(each, " left out: ", "note");
  }

  List<String> struckTwice() {
    List<String> each = new ArrayList<>();
    for (ReviewedNote note : of(Verdict.REPEAT)) {
      Step step = drill.route().steps().get(note.step().getAsInt());
      each.add(way(step) + ", " + spot(step));
    }
    return said(each, " struck twice: ", "note");
  }

  List<String> stray() {
    List<String> each = new ArrayList<>();
    for (ReviewedNote note : of(Verdict.EXTRA)) {
      each.add(stray(note));
    }
    return said(each, " stray: ", "note");
  }

  private String stray(ReviewedNote note) {
    for (GuitarString string : drill.tuning().strings()) {
      if (drill.tuning().openMidi(string) == note.midi()) {
        return name(note.midi()) + ", as the open " + Phrases.string(string) + " sounds";
      }
    }
    return name(note.midi());
  }

  private static List<String> said(List<String> each, String what, String thing) {
    if (each.isEmpty()) {
      return List.of();
    }
    String head = Phrases.sentence(Phrases.count(each.size(), thing)) + what;
    if (each.size() <= MOST_NAMED) {
      return List.of(head + String.join("; ", each) + ".");
    }
    return List.of(
        head + String.join("; ", each.subList(0, MOST_NAMED)) + "; and more, marked below.");
  }

  /** "going up" or "coming down", with the round where there are several. */
  String way(Step step) {
    int round = half == 0 ? 0 : Math.min(drill.route().rounds() - 1, step.index() / (2 * half));
    int within = step.index() - round * 2 * half;
    String way = within < half ? "going up" : within == half ? "at the top" : "coming down";
    return drill.route().rounds() == 1 ? way : "round " + (round + 1) + ", " + way;
  }

  /** "second string, fret 8". */
  static String spot(Step step) {
    int fret = step.place().fret();
    return Phrases.string(step.place().string()) + (fret == 0 ? ", open" : ", fret " + fret);
  }

  private String name(int midi) {
    return HeardAs.note(drill, midi);
  }

  private List<ReviewedNote> of(Verdict verdict) {
    return review.notes().stream()
        .filter(n -> n.attempt() == review.reviewed() && n.verdict() == verdict)
        .toList();
  }
}
