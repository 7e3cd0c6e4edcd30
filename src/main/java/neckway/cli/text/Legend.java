package neckway.cli.text;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import neckway.hand.ShiftVerdict;
import neckway.page.LandingMark;
import neckway.page.PageModel;
import neckway.page.PageModel.Ink;
import neckway.page.PageStep;
import neckway.page.TimeFigure.Measure;

/** Tells each sign that stands on a page, and none that does not. */
final class Legend {
  private final List<PageStep> steps;

  Legend(PageModel page) {
    steps = IntStream.range(0, page.steps()).mapToObj(page::at).toList();
  }

  void print(PrintWriter out) {
    for (List<String> line : List.of(figures(), landings(), times())) {
      if (!line.isEmpty()) {
        Wrapped.print(out, String.join("; ", line) + ".");
      }
    }
  }

  private List<String> figures() {
    List<String> told = new ArrayList<>();
    tell(told, ink(Ink.RIGHT), "7 right");
    tell(told, ink(Ink.WRONG), "7x wrong, with the fret or note heard below");
    tell(told, ink(Ink.LEFT_OUT), "(7) left out");
    tell(told, ink(Ink.UNNAMED), "7? played, what it was is not known");
    tell(told, PageStep::twice, "7\" struck twice");
    tell(told, ink(Ink.PALE), ".7 not reached");
    tell(told, s -> !s.strays().isEmpty(), "stray: a note that belongs to no step");
    tell(told, s -> s.strays().size() > 1, "E4+1: and one more");
    return told;
  }

  private List<String> landings() {
    List<String> told = new ArrayList<>();
    tell(told, s -> s.landing().isPresent(), "^ and v: where a shift lands");
    tell(told, shift(ShiftVerdict.MOVED), "^4: planned here, made on string 4");
    tell(told, shift(ShiftVerdict.MISSED), "(^): the hand stayed");
    tell(told, shift(ShiftVerdict.UNHEARD), "^?: the sound does not tell on which string");
    tell(told, shift(ShiftVerdict.UNPLAYED), ".^: not reached");
    return told;
  }

  private List<String> times() {
    List<String> told = new ArrayList<>();
    tell(told, s -> s.time().isPresent(), "ms: off the beat, - early, + late");
    tell(told, time(Measure.LANDED_LATE), "under a landing that was late, how late it landed");
    tell(told, s -> s.timeLabel().equals("?"), "?: cannot be told exactly");
    return told;
  }

  private static Predicate<PageStep> ink(Ink ink) {
    return step -> step.ink() == ink;
  }

  private static Predicate<PageStep> shift(ShiftVerdict verdict) {
    return step -> step.landing().flatMap(LandingMark::verdict).filter(verdict::equals).isPresent();
  }

  private static Predicate<PageStep> time(Measure measure) {
    return step -> step.time().filter(t -> t.measure() == measure).isPresent();
  }

  private void tell(List<String> told, Predicate<PageStep> stands, String words) {
    if (steps.stream().anyMatch(stands)) {
      told.add(words);
    }
  }
}
