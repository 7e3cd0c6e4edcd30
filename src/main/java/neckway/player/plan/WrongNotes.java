package neckway.player.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.words.Wording;

/** Chooses the notes that the route does not ask for, as fingers err. */
final class WrongNotes {
  private static final int HIGHEST_FRET = 24;

  /** A pitch and where it is played. */
  record Choice(Place place, int midi) {
    Choice moved(int semitones) {
      int fret = Math.max(0, place.fret() + semitones);
      return new Choice(new Place(place.string(), fret), midi + fret - place.fret());
    }
  }

  private final Route route;
  private final HandPath path;
  private final Random random;

  WrongNotes(Route route, HandPath path, Random random) {
    this.route = route;
    this.path = path;
    this.random = random;
  }

  /** Another note in place of a step: a fret or two beside, or the same fret one string off. */
  Choice instead(HandPath.Stop stop, OptionalInt midi) {
    if (midi.isPresent()) {
      if (midi.getAsInt() == stop.step().midi()) {
        throw new BadInput(
            Wording.of("music.player.rightNote", stop.step().index(), midi.getAsInt()));
      }
      return near(stop, midi.getAsInt());
    }
    List<Choice> likely = new ArrayList<>();
    int fret = stop.place().fret();
    for (int off : new int[] {-1, 1, -1, 1, -2, 2, 3, -3}) {
      offer(likely, stop, stop.place().string(), fret + off);
    }
    for (int off : new int[] {-1, 1}) {
      int at = path.strings().indexOf(stop.place().string()) + off;
      if (at >= 0 && at < path.strings().size()) {
        offer(likely, stop, path.strings().get(at), fret);
      }
    }
    if (likely.isEmpty()) {
      return near(stop, stop.step().midi() + 1);
    }
    return likely.get(random.nextInt(likely.size()));
  }

  /** A stray note after a step: mostly an open string beside the hand. */
  Choice stray(HandPath.Stop stop, OptionalInt midi) {
    if (midi.isPresent()) {
      return near(stop, midi.getAsInt());
    }
    List<Choice> likely = new ArrayList<>();
    int at = path.strings().indexOf(stop.place().string());
    for (int off = -2; off <= 2; off++) {
      if (off != 0 && at + off >= 0 && at + off < path.strings().size()) {
        offer(likely, stop, path.strings().get(at + off), 0);
      }
    }
    if (likely.isEmpty()) {
      return instead(stop, OptionalInt.empty());
    }
    return likely.get(random.nextInt(likely.size()));
  }

  /** Any note of the neck. */
  Choice anything() {
    GuitarString string = path.strings().get(random.nextInt(path.strings().size()));
    int fret = random.nextInt(15);
    return new Choice(new Place(string, fret), path.open(string) + fret);
  }

  private void offer(List<Choice> likely, HandPath.Stop stop, GuitarString string, int fret) {
    if (fret < 0 || fret > HIGHEST_FRET) {
      return;
    }
    int midi = path.open(string) + fret;
    int index = stop.step().index();
    for (int near = Math.max(0, index - 1);
        near <= Math.min(route.steps().size() - 1, index + 1);
        near++) {
      Step step = route.steps().get(near);
      if (step.midi() == midi) {
        return;
      }
    }
    likely.add(new Choice(new Place(string, fret), midi));
  }

  private Choice near(HandPath.Stop stop, int midi) {
    Choice best = null;
    int bestAway = Integer.MAX_VALUE;
    for (GuitarString string : path.strings()) {
      int fret = midi - path.open(string);
      int away =
          Math.abs(fret - stop.place().fret())
              + 3 * Math.abs(string.number() - stop.place().string().number());
      if (fret >= 0 && fret <= HIGHEST_FRET && away < bestAway) {
        best = new Choice(new Place(string, fret), midi);
        bestAway = away;
      }
    }
    if (best == null) {
      throw new BadInput(Wording.of("music.player.offTheNeck", stop.step().index(), midi));
    }
    return best;
  }
}
