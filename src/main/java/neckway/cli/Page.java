package neckway.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import neckway.follow.Review;
import neckway.follow.ReviewedNote;
import neckway.follow.ReviewedShift;
import neckway.follow.ReviewedStep;
import neckway.follow.RunPlan;
import neckway.follow.Timing;
import neckway.follow.Verdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;

/**
 * The route as tab, filled with what was heard: what was right stands plain; the other marks are
 * told under the last line. Under each note stands how far off its slot it was.
 */
final class Page {
  private static final int CELL = 4;
  private static final int MARGIN = 6;

  private final RunPlan plan;
  private final Review review;
  private final Map<Integer, ReviewedNote> inPlace = new HashMap<>();
  private final Map<Integer, ReviewedNote> twice = new HashMap<>();
  private final Map<Integer, ReviewedNote> stray = new HashMap<>();
  private final Map<Integer, ReviewedShift> landings = new HashMap<>();

  Page(RunPlan plan, Review review) {
    this.plan = plan;
    this.review = review;
    int last = 0;
    for (ReviewedNote note : review.notes()) {
      if (note.attempt() != review.reviewed()) {
        continue;
      }
      switch (note.verdict()) {
        case RIGHT, WRONG -> inPlace.put(last = note.step().getAsInt(), note);
        case REPEAT -> twice.put(note.step().getAsInt(), note);
        case EXTRA -> stray.put(last, note);
      }
    }
    review.shifts().forEach(s -> landings.put(s.planned().landingStep(), s));
  }

  void print(PrintWriter out) {
    int bar = plan.pulse().notesPerBeat() * plan.pulse().beatsPerBar();
    int most = (Wrapped.COLUMNS - MARGIN) / CELL;
    int bars = Math.max(1, most / (bar + 1));
    int perLine = Math.min(bar, most - 1) * bars;
    for (int from = 0; from < review.steps().size(); from += perLine) {
      line(out, from, Math.min(review.steps().size(), from + perLine), bar);
    }
    legend(out);
  }

  private void line(PrintWriter out, int from, int to, int bar) {
    optional(out, "shift", from, to, bar, this::landing);
    for (GuitarString string : plan.tuning().strings()) {
      StringBuilder row = new StringBuilder(margin(name(string)));
      for (int s = from; s < to; s++) {
        row.append(s % bar == 0 ? "|" : "").append(cell(tab(s, string), '-'));
      }
      out.println(row.append('|'));
    }
    optional(out, "heard", from, to, bar, this::heard);
    optional(out, "stray", from, to, bar, s -> note(stray.get(s)));
    optional(out, "ms", from, to, bar, this::off);
    out.println();
  }

  private static void optional(
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
    return plan.key().spell(plan.tuning().openMidi(string)).note();
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
    return shift.planned().direction() == Direction.UP ? "^" : "v";
  }

  private String heard(int index) {
    ReviewedNote note = inPlace.get(index);
    return note != null && note.verdict() == Verdict.WRONG ? note(note) : "";
  }

  private String note(ReviewedNote note) {
    return note == null ? "" : plan.key().spell(note.midi()).toString();
  }

  private String off(int index) {
    ReviewedNote note = inPlace.get(index);
    if (note == null) {
      return "";
    }
    if (note.timing() == Timing.UNSURE) {
      return "?";
    }
    long ms = Math.round(note.offMs());
    return ms > 0 ? "+" + ms : Long.toString(ms);
  }

  private void legend(PrintWriter out) {
    List<String> marks = new ArrayList<>();
    marks.add("7 right");
    marks.add("7x wrong, with what was heard below");
    marks.add("(7) left out");
    marks.add("7\" struck twice");
    marks.add(".7 not reached");
    Wrapped.print(out, String.join("; ", marks) + ".");
    Wrapped.print(
        out, "^ and v: where a shift lands. Last line: ms off the beat, - early, + late.");
  }

  private static String margin(String name) {
    return String.format("%" + (MARGIN - 1) + "s ", name);
  }

  private static String cell(String text, char fill) {
    StringBuilder cell = new StringBuilder();
    for (int i = text.length(); i < CELL; i++) {
      cell.append(fill);
    }
    return cell.append(text).toString();
  }
}
