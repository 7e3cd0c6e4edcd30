package neckway.player;

import java.util.ArrayList;
import java.util.List;
import neckway.drill.Pulse;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Shape;
import neckway.neck.Step;

/** Routes written out by hand, so that these tests stand on nothing but the player. */
public final class TestRoutes {
  private static final int[] OPEN = {64, 59, 55, 50, 45, 40};

  private TestRoutes() {}

  /** Eighth notes at 100 beats a minute. */
  static Pulse pulse() {
    return new Pulse(100, 2, 4, 4);
  }

  /** G major, major into Dorian, start 3, up on string 3, down on string 5. */
  public static Route majorIntoDorian(int rounds) {
    String round =
        "6:3 6:5 5:2 5:5 4:2 4:5 3:2 3:4 3:7 2:5 2:8 1:5 1:7 "
            + "1:5 2:8 2:5 3:7 3:4 4:7 4:5 5:7 5:5 5:2 6:5 6:3";
    List<Step> steps = new ArrayList<>();
    List<PlannedShift> shifts = new ArrayList<>();
    for (int r = 0; r < rounds; r++) {
      String[] places = round.split(" ");
      for (int i = r == 0 ? 0 : 1; i < places.length; i++) {
        String[] parts = places[i].split(":");
        int string = Integer.parseInt(parts[0]);
        int fret = Integer.parseInt(parts[1]);
        int stand = i >= 8 && i < 22 ? 1 : 0;
        steps.add(
            new Step(
                steps.size(),
                new Place(new GuitarString(string), fret),
                OPEN[string - 1] + fret,
                1,
                stand));
      }
      shifts.add(new PlannedShift(r, Direction.UP, 0, new GuitarString(3), 1, 24 * r + 8));
      shifts.add(new PlannedShift(r, Direction.DOWN, 0, new GuitarString(5), 4, 24 * r + 22));
    }
    return new Route(List.of(Shape.MAJOR, Shape.DORIAN), steps, shifts, rounds);
  }
}
