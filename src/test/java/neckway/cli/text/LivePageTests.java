package neckway.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hand.ShiftSaid;
import neckway.hand.ShiftVerdict;
import neckway.hear.HeardNote;
import neckway.neck.GuitarString;
import neckway.review.Grid;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What stands on a terminal while the worked route of the drill format is played, at 80 beats a
 * minute, two notes a beat: eight steps a bar, a bar a line of tab. Each page is written out by
 * hand: strings from the highest down, the fret of each step in four columns, offsets below.
 */
class LivePageTests {
  private static final double SLOT = 0.375;
  private static final double FIRST_BEAT = 2;
  private static final PlayableDrill DRILL = Drills.example();

  private final StringWriter out = new StringWriter();
  private LivePage live;
  private int heard;

  @BeforeEach
  void begin() {
    PrintWriter writer = new PrintWriter(out);
    Grid grid = new Grid(Grid.Source.GIVEN, 80, FIRST_BEAT, SLOT);
    live = new LivePage(writer, DRILL, grid, true, 80);
  }

  private TerminalScreen screen() {
    return TerminalScreen.showing(out.toString().replace(System.lineSeparator(), "\n"));
  }

  private static int midi(int step) {
    return DRILL.route().steps().get(step).midi();
  }

  private void said(Verdict verdict, int slot, double offMs, int midi, int step, int attempt) {
    double time = FIRST_BEAT + SLOT * slot + offMs / 1000;
    live.decided(
        new NoteVerdict(
            new HeardNote(heard++, time, midi, midi, HeardNote.Start.PLUCK, true, -20, time + 0.03),
            verdict,
            verdict == Verdict.EXTRA ? OptionalInt.empty() : OptionalInt.of(step),
            attempt,
            time + 0.03));
  }

  private void right(int step, double offMs) {
    said(Verdict.RIGHT, step, offMs, midi(step), step, 0);
  }

  /** A page as it is written out here, less the end of its last line. */
  private static String page(String written) {
    return written.stripTrailing();
  }

  @Test
  void nothingIsDrawnBeforeTheFirstNote() {
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void aLineIsFaintUntilItsNotesAreHeard() {
    right(0, -12.4);
    right(1, 3);
    assertThat(screen().text())
        .isEqualTo(
            page(
                """
                E |--------------------------------|
                B |--------------------------------|
                G |---------------------------2---4|
                D |-------------------2---5--------|
                A |-----------2---5----------------|
                E |---3---5------------------------|
               ms   -12  +3
            """));
    assertThat(screen().faintness())
        .isEqualTo(
            page(
                """


                                              ·   ·
                                      ·   ·
                              ·   ·
            """));
  }

  @Test
  void slipsAreMarkedInTheirPlaces() {
    right(0, 0);
    said(Verdict.WRONG, 1, 20, 46, 1, 0);
    right(3, 5);
    said(Verdict.REPEAT, 3, 100, midi(3), 3, 0);
    live.unnamed(0, 4);
    right(5, -1);
    said(Verdict.EXTRA, 5, 150, 40, 5, 0);
    assertThat(screen().text())
        .isEqualTo(
            page(
                """
                E |--------------------------------|
                B |--------------------------------|
                G |---------------------------2---4|
                D |------------------2?---5--------|
                A |---------(2)--5"----------------|
                E |---3--5x------------------------|
               ms     0 +20      +5      -1           stray E2
            """));
    assertThat(screen().faintness().strip().replaceAll("\\s+", " ")).isEqualTo("· ·");
  }

  @Test
  void whatIsSaidBesideALineGoesWithTheNextNote() {
    right(0, 0);
    said(Verdict.EXTRA, 0, 150, 40, 0, 0);
    assertThat(screen().text()).endsWith("   ms     0" + " ".repeat(7 * 4) + "   stray E2");
    right(1, 0);
    assertThat(screen().text()).endsWith("   ms     0   0");
  }

  /** The first line stays as it was when its last note was heard; the second stands below it. */
  @Test
  void theNextLineIsDrawnBelowTheOneThatIsFull() {
    for (int step = 0; step <= 8; step++) {
      right(step, step);
    }
    assertThat(screen().text())
        .isEqualTo(
            page(
                """
                E |--------------------------------|
                B |--------------------------------|
                G |---------------------------2---4|
                D |-------------------2---5--------|
                A |-----------2---5----------------|
                E |---3---5------------------------|
               ms     0  +1  +2  +3  +4  +5  +6  +7

                E |---------------5---7---5--------|
                B |-------5---8---------------8---5|
                G |---7----------------------------|
                D |--------------------------------|
                A |--------------------------------|
                E |--------------------------------|
               ms    +8
            """));
    assertThat(screen().faintness().strip().replaceAll("\\s+", "")).hasSize(7);
  }

  @Test
  void aShiftIsToldBesideTheLineItWasHeardIn() {
    for (int step = 0; step <= 7; step++) {
      right(step, 0);
    }
    live.shifted(
        0,
        new ShiftSaid(
            DRILL.route().shifts().get(0),
            ShiftVerdict.MOVED,
            Optional.of(new GuitarString(4)),
            OptionalDouble.of(0.98),
            5));
    assertThat(screen().text()).endsWith("0   0   up on string 4, not 3");
    assertThat(screen().text().lines()).hasSize(7);
  }

  /** A3 was played on string 4: fret 7 there, with the planned fret 2 of string 3 faint. */
  @Test
  void aShiftMadeElsewhereMovesItsNotesToTheirString() {
    for (int step = 0; step <= 7; step++) {
      right(step, 0);
    }
    moved(4);
    assertThat(screen().text().lines().skip(2).limit(2))
        .containsExactly(
            "    G |---------------------------2---4|", "    D |-------------------2---5---7----|");
    assertThat(screen().faintness().strip()).isEqualTo("·");
  }

  /** It stayed in the major shape: C4's place on string 3 is not where its D was played. */
  @Test
  void aShiftMissedLeavesFaintWhatWasNotPlayedThere() {
    for (int step = 0; step <= 8; step++) {
      right(step, 0);
    }
    live.shifted(0, missed());
    assertThat(screen().text()).contains("    G |--7?----").endsWith("no shift up");
  }

  /** Where the page cannot be drawn over, words follow what is known by then. */
  @Test
  void inWordsANoteIsWhereItWasPlayedOrIsSaidNotToBeWherePlanned() {
    live =
        new LivePage(
            new PrintWriter(out),
            DRILL,
            new Grid(Grid.Source.GIVEN, 80, FIRST_BEAT, SLOT),
            false,
            80);
    for (int step = 0; step <= 5; step++) {
      right(step, 0);
    }
    moved(5);
    right(6, 0);
    live.shifted(0, missed());
    right(8, 0);
    assertThat(out.toString())
        .contains("4:5 0  [up on string 5, not 3]  4:7 0  [no shift up]")
        .endsWith("bar 2 |  not 3:7 0");
  }

  private static ShiftSaid missed() {
    return new ShiftSaid(
        DRILL.route().shifts().get(0),
        ShiftVerdict.MISSED,
        Optional.empty(),
        OptionalDouble.of(0.97),
        5);
  }

  /** On a narrow terminal what is said stands below, and no line is longer than its columns. */
  @Test
  void aNarrowTerminalIsKeptTo() {
    for (int columns : new int[] {40, 50, 72}) {
      out.getBuffer().setLength(0);
      PrintWriter writer = new PrintWriter(out);
      live =
          new LivePage(
              writer, DRILL, new Grid(Grid.Source.GIVEN, 80, FIRST_BEAT, SLOT), true, columns);
      for (int step = 0; step <= 8; step++) {
        right(step, 0);
      }
      moved(2);
      String text = out.toString().replace(System.lineSeparator(), "\n");
      List<String> lines = TerminalScreen.showing(text, columns).text().lines().toList();
      assertThat(lines).hasSize(columns == 72 ? 15 : 17);
      assertThat(lines.get(lines.size() - 1)).endsWith("up on string 2, not 3");
    }
  }

  private void moved(int string) {
    live.shifted(
        0,
        new ShiftSaid(
            DRILL.route().shifts().get(0),
            ShiftVerdict.MOVED,
            Optional.of(new GuitarString(string)),
            OptionalDouble.of(0.98),
            5));
  }

  @Test
  void beginningAgainLeavesWhatWasPlayedAndDrawsBelow() {
    right(0, 0);
    right(1, 0);
    said(Verdict.RIGHT, 8, 2, midi(0), 0, 1);
    assertThat(screen().text())
        .isEqualTo(
            page(
                """
                E |--------------------------------|
                B |--------------------------------|
                G |---------------------------2---4|
                D |-------------------2---5--------|
                A |-----------2---5----------------|
                E |---3---5------------------------|
               ms     0   0
            from the beginning again
                E |--------------------------------|
                B |--------------------------------|
                G |---------------------------2---4|
                D |-------------------2---5--------|
                A |-----------2---5----------------|
                E |---3---5------------------------|
               ms    +2
            """));
    assertThat(screen().faintness().strip().replaceAll("\\s+", "")).hasSize(6 + 7);
  }

  /**
   * Whatever is played, the page that is left is as high as its lines, and no line is too long. The
   * one note of the fourth bar stands on the third line.
   */
  @Test
  void theWholeRouteLeavesThreeLinesOfTab() {
    for (int step = 0; step < DRILL.route().steps().size(); step++) {
      right(step, step % 3 - 1);
    }
    live.end();
    assertThat(screen().text().lines()).hasSize(3 * 7 + 2);
    assertThat(screen().faintness()).isBlank();
    assertThat(screen().text().lines().filter(String::isEmpty)).hasSize(2);
  }
}
