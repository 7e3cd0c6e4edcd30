package neckway.hand;

import java.util.Optional;
import neckway.drill.Pulse;
import neckway.neck.Key;
import neckway.neck.Route;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;

/**
 * What a run is held against.
 *
 * @param route the steps
 * @param pulse the pulse they are played to
 * @param key how notes are named
 * @param tuning the open strings
 * @param frets of the neck
 * @param guitar the guitar played, if it was learnt
 */
public record RunPlan(
    Route route, Pulse pulse, Key key, Tuning tuning, int frets, Optional<GuitarProfile> guitar) {
  /** A run on a guitar that is not known. */
  public RunPlan(Route route, Pulse pulse, Key key, Tuning tuning, int frets) {
    this(route, pulse, key, tuning, frets, Optional.empty());
  }

  /** The same on a guitar that was learnt. */
  public RunPlan on(GuitarProfile learnt) {
    return new RunPlan(route, pulse, key, tuning, frets, Optional.of(learnt));
  }
}
