package neckway.page;

import java.util.List;
import java.util.Optional;
import neckway.neck.Step;
import neckway.page.PageModel.Ink;
import neckway.review.HeardAs;

/**
 * All that stands on the page at one step. Whoever draws a page draws this, and adds nothing.
 *
 * @param due what was to be played
 * @param ink what became of it
 * @param twice whether it was struck twice
 * @param heard what was heard in its place, where that was another pitch
 * @param strays names of the notes beside it that belong to no step, in the order heard
 * @param time when it fell, where that is known
 * @param landing the shift that was planned to land on it
 */
public record PageStep(
    Step due,
    Ink ink,
    boolean twice,
    Optional<HeardAs> heard,
    List<String> strays,
    Optional<TimeFigure> time,
    Optional<LandingMark> landing) {
  public PageStep {
    strays = List.copyOf(strays);
  }

  /** Its fret with its marks: "7", "7x" wrong, "(7)" left out, "7?", ".7" not reached; "7\"". */
  public String sign() {
    return marked(Integer.toString(due.place().fret()));
  }

  /** Another name of the step with the same marks. */
  public String marked(String name) {
    String marked =
        switch (ink) {
          case PALE -> "." + name;
          case RIGHT -> name;
          case WRONG -> name + "x";
          case LEFT_OUT -> "(" + name + ")";
          case UNNAMED -> name + "?";
        };
    return twice ? marked + "\"" : marked;
  }

  /** The fret or the note heard in its place; empty where nothing else was. */
  public String heardLabel() {
    return heard.map(HeardAs::label).orElse("");
  }

  /** The first stray note and how many more there were, "E4" or "E4+1"; empty where none was. */
  public String strayLabel() {
    if (strays.isEmpty()) {
      return "";
    }
    return strays.get(0) + (strays.size() > 1 ? "+" + (strays.size() - 1) : "");
  }

  /** Milliseconds with their sign; empty where no time is known. */
  public String timeLabel() {
    return time.map(TimeFigure::label).orElse("");
  }

  /** The sign of a landing; empty where none is. */
  public String landingSign() {
    return landing.map(LandingMark::sign).orElse("");
  }
}
