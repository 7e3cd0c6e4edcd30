package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.neck.Step;
import neckway.review.HeardAs;
import neckway.review.ReviewedNote;

/** Says the slips of the reviewed attempt, each with its place. */
final class Slips {
  private static final int MOST_NAMED = 3;

  private final Played played;
  private final PlayableDrill drill;

  Slips(Played played) {
    this.played = played;
    this.drill = played.drill();
  }

  /**
   * "One note wrong: coming down, where the second string, fret 7 was due, it sounded like fret 8
   * of that string."
   */
  List<Sentence> wrong() {
    List<String> each = new ArrayList<>();
    for (ReviewedNote note : played.notes(Verdict.WRONG)) {
      Step step = drill.route().steps().get(note.step().getAsInt());
      each.add(
          played.way(step)
              + ", where the "
              + Phrases.spot(step.place())
              + " was due, "
              + heard(note, step));
    }
    return said(each, " wrong: ", steps(played.notes(Verdict.WRONG)));
  }

  private String heard(ReviewedNote note, Step step) {
    HeardAs heard = HeardAs.of(drill, step, note.midi());
    return heard.fret().isPresent()
        ? "it sounded like fret " + heard.fret().getAsInt() + " of that string"
        : "I heard " + heard.note();
  }

  /** Steps left out, a row of them as one. */
  List<Sentence> leftOut(List<Integer> steps) {
    List<String> each = new ArrayList<>();
    for (int s : steps) {
      Step step = drill.route().steps().get(s);
      each.add(played.way(step) + ", " + Phrases.spot(step.place()));
    }
    return said(each, " left out: ", steps);
  }

  List<Sentence> struckTwice() {
    List<String> each = new ArrayList<>();
    for (ReviewedNote note : played.notes(Verdict.REPEAT)) {
      Step step = drill.route().steps().get(note.step().getAsInt());
      each.add(played.way(step) + ", " + Phrases.spot(step.place()));
    }
    return said(each, " struck twice: ", steps(played.notes(Verdict.REPEAT)));
  }

  /** Steps that sounded in their time, but not clearly enough to be named. */
  List<Sentence> unclear() {
    List<String> each = new ArrayList<>();
    for (int s : played.unnamed()) {
      Step step = drill.route().steps().get(s);
      each.add(played.way(step) + ", " + Phrases.spot(step.place()));
    }
    return said(each, " I heard but could not make out: ", played.unnamed());
  }

  /** Notes of no step; the same one heard again is named once. */
  List<Sentence> stray() {
    List<ReviewedNote> stray = played.notes(Verdict.EXTRA);
    Map<Integer, Integer> heard = new LinkedHashMap<>();
    stray.forEach(note -> heard.merge(note.midi(), 1, Integer::sum));
    List<String> each = new ArrayList<>();
    heard.forEach(
        (midi, times) ->
            each.add(name(midi) + (times == 1 ? "" : " " + Phrases.times(times)) + open(midi)));
    String what = stray.size() == 1 ? " that does not" : " that do not";
    return said(each, stray.size(), what + " belong there: ", steps(stray));
  }

  /** The string that a note of no step is of, if it was an open one. */
  private String open(int midi) {
    return drill.tuning().strings().stream()
        .filter(string -> drill.tuning().openMidi(string) == midi)
        .findFirst()
        .map(string -> ", most likely the open " + Phrases.string(string))
        .orElse("");
  }

  private List<Integer> steps(List<ReviewedNote> notes) {
    return notes.stream().map(played::stepAt).toList();
  }

  private static List<Sentence> said(List<String> each, String what, List<Integer> steps) {
    return said(each, each.size(), what, steps);
  }

  private static List<Sentence> said(
      List<String> each, int count, String what, List<Integer> steps) {
    if (each.isEmpty()) {
      return List.of();
    }
    String head = Phrases.sentence(Phrases.count(count, "note")) + what;
    String all =
        each.size() <= MOST_NAMED
            ? String.join("; ", each) + "."
            : String.join("; ", each.subList(0, MOST_NAMED)) + "; and more, marked below.";
    return List.of(Sentence.of(head + all, steps));
  }

  private String name(int midi) {
    return HeardAs.note(drill, midi);
  }
}
