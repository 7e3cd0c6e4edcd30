package neckway.follow;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.hear.HeardNote;
import neckway.neck.Route;

/** Feeds heard notes to a follower as an ear does, in steps of five milliseconds. */
public final class Following {
  private static final double TICK = 0.005;

  /** Routes of tests lie anywhere. */
  private static final Compass ANY_NOTE = new Compass(0, 127);

  private Following() {}

  public static List<NoteVerdict> of(
      Route route, Pulse pulse, OptionalDouble firstBeat, List<HeardNote> notes) {
    double end = notes.isEmpty() ? 1 : notes.get(notes.size() - 1).time() + 2;
    return of(route, pulse, firstBeat, notes, end);
  }

  /** The same for a take cut off at {@code end} seconds. */
  public static List<NoteVerdict> of(
      Route route, Pulse pulse, OptionalDouble firstBeat, List<HeardNote> notes, double end) {
    List<NoteVerdict> verdicts = new ArrayList<>();
    Follower follower = new Follower(route, pulse, ANY_NOTE, firstBeat, verdicts::add);
    int next = 0;
    for (long tick = 1; tick * TICK <= end; tick++) {
      double now = tick * TICK;
      while (next < notes.size() && notes.get(next).decided() <= now) {
        follower.heard(notes.get(next++));
      }
      follower.listenedUntil(now);
    }
    follower.finish(end);
    return verdicts;
  }
}
