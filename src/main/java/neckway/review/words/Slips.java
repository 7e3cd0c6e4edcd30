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
import neckway.words.Wording;

/** Says the slips of the reviewed attempt, each with its place. */
final class Slips {
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
      each.add(heard(note, step));
    }
    return said(each, "slips.wrong", steps(played.notes(Verdict.WRONG)));
  }

  private String heard(ReviewedNote note, Step step) {
    HeardAs heard = HeardAs.of(drill, step, note.midi());
    String way = played.way(step);
    String due =
        Wording.of(
            Phrases.at("slip.due", step.place()),
            step.place().fret(),
            Phrases.ordinal(step.place().string()));
    if (heard.fret().isEmpty()) {
      return Wording.of("slip.heard", way, due, heard.note());
    }
    int fret = heard.fret().getAsInt();
    return fret == 0
        ? Wording.of("slip.sounded.open", way, due)
        : Wording.of("slip.sounded", way, due, fret);
  }

  /** Steps left out, a row of them as one. */
  List<Sentence> leftOut(List<Integer> steps) {
    List<String> each = new ArrayList<>();
    for (int s : steps) {
      Step step = drill.route().steps().get(s);
      each.add(Wording.of("slip.place", played.way(step), Phrases.spot(step.place())));
    }
    return said(each, "slips.leftOut", steps);
  }

  List<Sentence> struckTwice() {
    List<String> each = new ArrayList<>();
    for (ReviewedNote note : played.notes(Verdict.REPEAT)) {
      Step step = drill.route().steps().get(note.step().getAsInt());
      each.add(Wording.of("slip.place", played.way(step), Phrases.spot(step.place())));
    }
    return said(each, "slips.twice", steps(played.notes(Verdict.REPEAT)));
  }

  /** Steps that sounded in their time, but not clearly enough to be named. */
  List<Sentence> unclear() {
    List<String> each = new ArrayList<>();
    for (int s : played.unnamed()) {
      Step step = drill.route().steps().get(s);
      each.add(Wording.of("slip.place", played.way(step), Phrases.spot(step.place())));
    }
    return said(each, "slips.unclear", played.unnamed());
  }

  /** Notes of no step; the same one heard again is named once. */
  List<Sentence> stray() {
    List<ReviewedNote> stray = played.notes(Verdict.EXTRA);
    Map<Integer, Integer> heard = new LinkedHashMap<>();
    stray.forEach(note -> heard.merge(note.midi(), 1, Integer::sum));
    List<String> each = new ArrayList<>();
    heard.forEach(
        (midi, times) ->
            each.add(
                open(
                    midi,
                    times == 1
                        ? name(midi)
                        : Wording.of("slip.times", name(midi), Wording.times(times)))));
    return said(each, stray.size(), "slips.stray", steps(stray));
  }

  /** The string that a note of no step is of, if it was an open one. */
  private String open(int midi, String heard) {
    return drill.tuning().strings().stream()
        .filter(string -> drill.tuning().openMidi(string) == midi)
        .findFirst()
        .map(string -> Wording.of("slip.open", heard, Phrases.ordinal(string)))
        .orElse(heard);
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
    String text = Wording.counted(what, count, Phrases.named(each), Phrases.count(count));
    return List.of(Sentence.of(Wording.capital(text), steps));
  }

  private String name(int midi) {
    return HeardAs.note(drill, midi);
  }
}
