package neckway.review.words;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.neck.Place;
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

  /** A place of the round, and what sounded there instead. */
  private record Wrong(int place, String heard) {}

  /** "One note wrong: fret 7 on the second string, coming down, sounded like fret 8." */
  List<Sentence> wrong() {
    Map<Wrong, List<Integer>> alike = new LinkedHashMap<>();
    for (ReviewedNote note : played.notes(Verdict.WRONG)) {
      int step = note.step().getAsInt();
      Wrong wrong = new Wrong(played.inRound(step), heard(note, played.step(step)));
      alike.computeIfAbsent(wrong, w -> new ArrayList<>()).add(step);
    }
    List<String> each = new ArrayList<>();
    alike.forEach(
        (wrong, steps) -> each.add(Wording.of("slip.sounded", played.where(steps), wrong.heard())));
    return said(each, "slips.wrong", inOrder(alike.values()));
  }

  /** "fret 8", "the open string", "G3, most likely the open third string". */
  private String heard(ReviewedNote note, Step step) {
    HeardAs heard = HeardAs.of(drill, step, note.midi());
    if (heard.fret().isEmpty()) {
      boolean open = drill.tuning().openMidi(step.place().string()) == note.midi();
      return open ? open(note.midi(), heard.note()) : heard.note();
    }
    int fret = heard.fret().getAsInt();
    return fret == 0 ? Wording.of("slip.heard.open") : Wording.of("slip.heard.fret", fret);
  }

  /** "One note left out: fret 8 on the second string, coming down in rounds 1 and 3." */
  List<Sentence> leftOut(List<Integer> steps) {
    return atPlaces("slips.leftOut", steps);
  }

  List<Sentence> struckTwice() {
    return atPlaces("slips.twice", steps(played.notes(Verdict.REPEAT)));
  }

  /** Steps that sounded in their time, but not clearly enough to be named. */
  List<Sentence> unclear() {
    return atPlaces("slips.unclear", played.unnamed());
  }

  /** The same place of several rounds is named once. */
  private List<Sentence> atPlaces(String what, List<Integer> steps) {
    Collection<List<Integer>> places = played.byPlace(steps);
    List<String> each = places.stream().map(played::where).toList();
    return said(each, what, inOrder(places));
  }

  private static List<Integer> inOrder(Collection<List<Integer>> places) {
    return places.stream().flatMap(List::stream).toList();
  }

  /** Notes of no step; the same one heard again is named once, and then without its place. */
  List<Sentence> stray() {
    List<ReviewedNote> stray = played.notes(Verdict.EXTRA);
    Map<Integer, List<ReviewedNote>> alike = new LinkedHashMap<>();
    stray.forEach(n -> alike.computeIfAbsent(n.midi(), m -> new ArrayList<>()).add(n));
    List<String> each = alike.values().stream().map(this::strayAlike).toList();
    return said(each, stray.size(), "slips.stray", steps(stray));
  }

  private String strayAlike(List<ReviewedNote> alike) {
    ReviewedNote first = alike.get(0);
    String name = name(first.midi());
    if (alike.size() > 1) {
      return open(first.midi(), Wording.of("slip.times", name, Wording.times(alike.size())));
    }
    String said = open(first.midi(), name);
    return played.straysBetween().contains(first)
        ? Wording.of("slip.after", said, after(played.stepAt(first)), way(played.stepAt(first)))
        : said;
  }

  private String after(int step) {
    Place place = played.step(step).place();
    return Wording.of(Phrases.at("past", place), place.fret(), Phrases.ordinal(place.string()));
  }

  private String way(int step) {
    return played.way(played.step(step));
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
    return said(each, steps.size(), what, steps);
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
