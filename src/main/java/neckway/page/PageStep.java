package neckway.page;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import neckway.neck.Step;
import neckway.page.PageModel.Ink;
import neckway.page.PlayedPlace.Known;
import neckway.review.HeardAs;

/**
 * All that stands on the page at one step. Whoever draws a page draws this, and adds nothing.
 *
 * @param due what was to be played
 * @param played where it was played
 * @param ink what became of it
 * @param twice whether it was struck twice
 * @param heard what was heard in its place, where that was another pitch
 * @param strays names of the notes beside it that belong to no step, in the order heard
 * @param time when it fell, where that is known
 * @param landings the shifts that landed on it, or are planned to; seldom more than one
 */
public record PageStep(
    Step due,
    PlayedPlace played,
    Ink ink,
    boolean twice,
    Optional<HeardAs> heard,
    List<String> strays,
    Optional<TimeFigure> time,
    List<LandingMark> landings) {
  public PageStep {
    strays = List.copyOf(strays);
    landings = List.copyOf(landings);
  }

  /**
   * What stands on the string of {@link #played}: its fret with its marks: "7", "7x" wrong, "(7)"
   * left out, "7?", ".7" not reached, ":7?" not played where planned; "7\"".
   */
  public String sign() {
    return marked(Integer.toString(played.place().fret()));
  }

  /** What stands on the planned string beside a note that was played elsewhere, ":7"; or empty. */
  public String plannedSign() {
    return played.elsewhere().isPresent() ? ":" + due.place().fret() : "";
  }

  /** Another name of the step with the same marks. */
  public String marked(String name) {
    String marked =
        switch (ink) {
          case PALE -> "." + name;
          case RIGHT -> played.known() == Known.NOT_AS_PLANNED ? ":" + name + "?" : name;
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

  /** The signs of its landings; empty where none is. */
  public String landingSign() {
    return landings.stream().map(LandingMark::sign).collect(Collectors.joining());
  }
}
