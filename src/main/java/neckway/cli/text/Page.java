package neckway.cli.text;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.Timing;

/**
 * The route as tab, filled with what was heard: what was right stands plain; the other marks are
 * told under the last line. Under each note stands how far off its slot it was.
 */
public final class Page {
  private static final int LEAST_CELL = 4;
  private static final int MARGIN = 6;

  private final PlayableDrill drill;
  private final Review review;
  private final int cell;
  private final Map<Integer, ReviewedNote> inPlace = new HashMap<>();
  private final Map<Integer, ReviewedNote> twice = new HashMap<>();
  private final Map<Integer, List<ReviewedNote>> stray = new HashMap<>();
  private final Map<Integer, ReviewedShift> landings = new HashMap<>();

  public Page(PlayableDrill drill, Review review) {
    this.drill = drill;
    this.review = review;
    int last = 0;
    for (ReviewedNote note : review.notes()) {
      if (note.attempt() != review.reviewed()) {
        continue;
      }
      switch (note.verdict()) {
        case RIGHT, WRONG -> inPlace.put(last = note.step().getAsInt(), note);
        case REPEAT -> twice.put(note.step().getAsInt(), note);
        case EXTRA -> stray.computeIfAbsent(last, s -> new ArrayList<>()).add(note);
      }
    }
    review.shifts().forEach(s -> landings.put(s.planned().landingStep(), s));
    cell = Math.max(LEAST_CELL, 1 + longest());
  }

  /** Characters of the longest entry of the page. */
  private int longest() {
    int longest = 0;
    for (ReviewedStep step : review.steps()) {
      int s = step.step().index();
      String fret = tab(s, step.step().place().string());
      for (String text : List.of(fret, heard(s), strays(s), off(s))) {
        longest = Math.max(longest, text.length());
      }
    }
    return longest;
  }

  public void print(PrintWriter out) {
    int bar = drill.pulse().notesPerBeat() * drill.pulse().beatsPerBar();
    int most = (Wrapped.COLUMNS - MARGIN) / cell;
    int bars = Math.max(1, most / (bar + 1));
    int perLine = Math.min(bar, most - 1) * bars;
    for (int from = 0; from < review.steps().size(); from += perLine) {
      line(out, from, Math.min(review.steps().size(), from + perLine), bar);
    }
    legend(out);
  }

  private void line(PrintWriter out, int from, int to, int bar) {
    optional(out, "shift", from, to, bar, this::landing);
    for (GuitarString string : highestFirst()) {
      StringBuilder row = new StringBuilder(margin(name(string)));
      for (int s = from; s < to; s++) {
        row.append(s % bar == 0 ? "|" : "").append(cell(tab(s, string), '-'));
      }
      out.println(row.append('|'));
    }
    optional(out, "heard", from, to, bar, this::heard);
    optional(out, "stray", from, to, bar, s -> strays(s));
    optional(out, "ms", from, to, bar, this::off);
    out.println();
  }

  /** Strings as tab has them: the highest-sounding on top. */
  private List<GuitarString> highestFirst() {
    List<GuitarString> strings = new ArrayList<>(drill.tuning().strings());
    Collections.reverse(strings);
    return strings;
  }

  private void optional(
      PrintWriter out, String name, int from, int to, int bar, IntFunction<String> text) {
    StringBuilder row = new StringBuilder(margin(name));
    boolean any = false;
    for (int s = from; s < to; s++) {
      String cell = text.apply(s);
      any |= !cell.isEmpty();
      row.append(s % bar == 0 ? " " : "").append(cell(cell, ' '));
    }
    if (any) {
      out.println(row.toString().stripTrailing());
    }
  }

  private String name(GuitarString string) {
    return drill.key().spell(drill.tuning().openMidi(string)).note();
  }

  private String tab(int index, GuitarString string) {
    ReviewedStep step = review.steps().get(index);
    if (!step.step().place().string().equals(string)) {
      return "";
    }
    String fret = Integer.toString(step.step().place().fret());
    return switch (step.verdict()) {
      case PLAYED -> fret + (twice.containsKey(index) ? "\"" : "");
      case WRONG -> fret + "x";
      case SKIPPED -> "(" + fret + ")";
      case UNPLAYED -> "." + fret;
    };
  }

  private String landing(int index) {
    ReviewedShift shift = landings.get(index);
    if (shift == null) {
      return "";
    }
    String way = shift.planned().direction() == Direction.UP ? "^" : "v";
    return shift.verdict() == ShiftVerdict.MOVED ? way + shift.string().orElseThrow() : way;
  }

  private String heard(int index) {
    ReviewedNote note = inPlace.get(index);
    return note != null && note.verdict() == Verdict.WRONG ? note(note) : "";
  }

  /** The first stray note after a step, and how many more there were. */
  private String strays(int index) {
    List<ReviewedNote> notes = stray.getOrDefault(index, List.of());
    if (notes.isEmpty()) {
      return "";
    }
    return note(notes.get(0)) + (notes.size() > 1 ? "+" + (notes.size() - 1) : "");
  }

  private String note(ReviewedNote note) {
    return drill.key().spell(note.midi()).toString();
  }

  private String off(int index) {
    ReviewedNote note = inPlace.get(index);
    if (note == null) {
      return "";
    }
    if (note.timing() == Timing.UNSURE) {
      return "?";
    }
    long ms = Math.round(note.offMs() + 1000 * review.grid().slotSeconds() * slotsWaited(index));
    return ms > 0 ? "+" + ms : Long.toString(ms);
  }

  /**
   * Slots that passed in waiting for a note. Its distance from the nearest slot would call a
   * landing that is most of a slot late early; on the page it is as late as it came after the note
   * before.
   */
  private long slotsWaited(int index) {
    ReviewedNote before = inPlace.get(index - 1);
    if (before == null || twice.containsKey(index - 1) || stray.containsKey(index - 1)) {
      return 0;
    }
    return Math.max(0, inPlace.get(index).slot() - before.slot() - 1);
  }

  private void legend(PrintWriter out) {
    List<String> marks = new ArrayList<>();
    marks.add("7 right");
    marks.add("7x wrong, with what was heard below");
    marks.add("(7) left out");
    marks.add("7\" struck twice");
    out.println(String.join("; ", marks) + ";");
    out.println(".7 not reached.");
    if (review.shifts().stream().anyMatch(s -> s.verdict() == ShiftVerdict.MOVED)) {
      out.println("^4: planned here, made on string 4.");
    }
    Wrapped.print(
        out, "^ and v: where a shift lands. Last line: ms off the beat, - early, + late.");
  }

  private static String margin(String name) {
    return String.format("%" + (MARGIN - 1) + "s ", name);
  }

  private String cell(String text, char fill) {
    return String.valueOf(fill).repeat(Math.max(0, cell - text.length())) + text;
  }
}
