package neckway.cli.text;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hand.ShiftSaid;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Step;
import neckway.review.Grid;
import neckway.run.RunListener;

/**
 * The page filling in as it is played. On a terminal the line of tab being played is drawn in its
 * place, faint where nothing was heard yet; elsewhere each bar is a line of words.
 */
final class LivePage implements RunListener {
  private static final int CELL = 4;
  private static final int MARGIN = 6;
  private static final String UP = "\u001b[%dA\r";
  private static final String CLEAR = "\u001b[K";
  private static final String FAINT = "\u001b[2m";
  private static final String PLAIN = "\u001b[0m";

  private final PrintWriter out;
  private final PlayableDrill drill;
  private final Grid grid;
  private final boolean terminal;
  private final int bar;
  private final int perLine;
  private final String[] marks;
  private final String[] offs;
  private int attempt;
  private int reached = -1;
  private int drawnLine = -1;
  private int barSaid = -1;

  LivePage(PrintWriter out, PlayableDrill drill, Grid grid, boolean terminal) {
    this.out = out;
    this.drill = drill;
    this.grid = grid;
    this.terminal = terminal;
    bar = drill.pulse().notesPerBeat() * drill.pulse().beatsPerBar();
    perLine = Math.min(bar, (Wrapped.COLUMNS - MARGIN) / CELL - 1);
    int steps = drill.route().steps().size();
    marks = new String[steps];
    offs = new String[steps];
  }

  @Override
  public void decided(NoteVerdict verdict) {
    if (verdict.attempt() != attempt) {
      again(verdict.attempt());
    }
    List<String> said = new ArrayList<>();
    int step = verdict.step().orElse(reached);
    if (verdict.inPlace()) {
      for (int left = reached + 1; left < step; left++) {
        mark(left, "(" + fret(left) + ")", "");
        tell(left, "(" + place(left) + ")");
      }
      reached = Math.max(reached, step);
    }
    String heard = drill.key().spell(verdict.note().midi()).toString();
    long ms = Math.round(grid.offMs(verdict.note().time()));
    String off = verdict.note().fine() ? (ms > 0 ? "+" : "") + ms : "?";
    switch (verdict.verdict()) {
      case RIGHT -> {
        mark(step, fret(step), off);
        said.add(place(step) + " " + off);
      }
      case WRONG -> {
        mark(step, fret(step) + "x", off);
        said.add(place(step) + "x(" + heard + ")");
      }
      case REPEAT -> {
        mark(step, fret(step) + "\"", offs[step] == null ? "" : offs[step]);
        said.add(place(step) + "\"");
      }
      case EXTRA -> said.add("+" + heard);
    }
    said.forEach(words -> tell(Math.max(0, step), words));
    draw(Math.max(0, step), verdict.verdict() == Verdict.EXTRA ? "stray " + heard : "");
    out.flush();
  }

  @Override
  public void unnamed(int inAttempt, int step) {
    if (inAttempt == attempt && step == reached + 1) {
      mark(step, "?", "");
      tell(step, place(step) + "?");
      reached = step;
    }
  }

  @Override
  public void shifted(int inAttempt, ShiftSaid said) {
    String words = words(said);
    if (inAttempt == attempt && !words.isEmpty()) {
      tell(Math.max(0, reached), "[" + words + "]");
      draw(Math.max(0, reached), words);
      out.flush();
    }
  }

  private static String words(ShiftSaid said) {
    String way = said.planned().direction() == Direction.UP ? "up" : "down";
    return switch (said.verdict()) {
      case MADE -> way + " on string " + said.planned().string();
      case MOVED ->
          way + " on string " + said.string().orElseThrow() + ", not " + said.planned().string();
      case MISSED -> "no shift " + way;
      case UNHEARD, UNPLAYED -> "";
    };
  }

  /** Ends the page's last line. */
  void end() {
    if (barSaid >= 0) {
      out.println();
      barSaid = -1;
    }
    out.flush();
  }

  private void again(int newAttempt) {
    attempt = newAttempt;
    reached = -1;
    java.util.Arrays.fill(marks, null);
    java.util.Arrays.fill(offs, null);
    end();
    drawnLine = -1;
    out.println("from the beginning again");
  }

  private void mark(int step, String mark, String off) {
    marks[step] = mark;
    offs[step] = off;
  }

  private String fret(int step) {
    return Integer.toString(step(step).place().fret());
  }

  private String place(int step) {
    return step(step).place().toString();
  }

  private Step step(int index) {
    return drill.route().steps().get(index);
  }

  private void tell(int step, String words) {
    if (terminal) {
      return;
    }
    if (step / bar != barSaid) {
      end();
      barSaid = step / bar;
      out.print("bar " + (barSaid + 1) + " |");
    }
    out.print("  " + words);
  }

  private void draw(int step, String note) {
    if (!terminal) {
      return;
    }
    int line = step / perLine;
    int rows = drill.tuning().strings().size() + 1;
    if (line == drawnLine) {
      out.printf(UP, rows);
    } else if (drawnLine >= 0) {
      out.printf(UP, rows);
      rows(drawnLine, "");
      out.println();
    }
    drawnLine = line;
    rows(line, note);
  }

  private void rows(int line, String note) {
    int from = line * perLine;
    int to = Math.min(marks.length, from + perLine);
    List<GuitarString> highestFirst = new ArrayList<>(drill.tuning().strings());
    Collections.reverse(highestFirst);
    for (GuitarString string : highestFirst) {
      StringBuilder row = new StringBuilder(margin(string));
      for (int s = from; s < to; s++) {
        row.append(s % bar == 0 ? "|" : "");
        boolean here = step(s).place().string().equals(string);
        String text = !here ? "" : marks[s] == null ? fret(s) : marks[s];
        row.append("-".repeat(Math.max(0, CELL - text.length())));
        row.append(here && marks[s] == null ? FAINT + text + PLAIN : text);
      }
      out.println(row + "|" + CLEAR);
    }
    StringBuilder row = new StringBuilder("   ms ");
    for (int s = from; s < to; s++) {
      String off = offs[s] == null ? "" : offs[s];
      row.append(s % bar == 0 ? " " : "").append(" ".repeat(Math.max(0, CELL - off.length())));
      row.append(off);
    }
    out.println(row + "   " + note + CLEAR);
  }

  private String margin(GuitarString string) {
    String name = drill.key().spell(drill.tuning().openMidi(string)).note();
    return " ".repeat(Math.max(0, MARGIN - 1 - name.length())) + name + " ";
  }
}
