package neckway.follow;

import neckway.neck.Key;
import neckway.neck.Route;
import neckway.neck.Tuning;

/**
 * What a run is held against.
 *
 * @param route the steps
 * @param pulse the pulse they are played to
 * @param key how notes are named
 * @param tuning the open strings
 * @param frets of the neck
 */
public record RunPlan(Route route, Pulse pulse, Key key, Tuning tuning, int frets) {}
