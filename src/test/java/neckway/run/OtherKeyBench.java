package neckway.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.player.plan.Mistake;
import neckway.review.Review;

/**
 * How often a take is told to be of another drill: takes of the drill with none to many slips, and
 * takes of the same drill in another key with none to some.
 *
 * <pre>OtherKeyBench TAKES</pre>
 */
public final class OtherKeyBench {
  private static final List<String> CHAINS =
      List.of("major,dorian", "minor,major", "mixolydian,minor", "phrygian,mixolydian", "major");

  private OtherKeyBench() {}

  public static void main(String[] args) {
    int takes = Integer.parseInt(args[0]);
    int toldOfOwn = 0;
    int toldOfOther = 0;
    for (int take = 0; take < takes; take++) {
      Random random = new Random(take);
      PlayableDrill drill = drill(random);
      int steps = drill.route().steps().size();
      int slips = take * 2 * steps / (3 * takes);
      Review own =
          OtherKeyTests.heard(
              drill, OtherKeyTests.play(drill, OtherKeyTests.slips(drill, slips, take), take));
      if (isOther(own)) {
        toldOfOwn++;
        System.out.println("own, " + slips + " slips of " + steps + ": " + own.summary().words());
      }
      PlayableDrill other = OtherKeyTests.inKey(drill.key().up(1 + random.nextInt(11)), drill);
      List<Mistake> few = OtherKeyTests.slips(other, take % 3, take);
      Review strange = OtherKeyTests.heard(drill, OtherKeyTests.play(other, few, take));
      boolean right =
          strange.summary().words().get(0).startsWith("This sounds like " + other.key() + ",");
      toldOfOther += right ? 1 : 0;
      if (!right) {
        System.out.println(
            "other, "
                + drill.key()
                + " played in "
                + other.key()
                + ", "
                + drill.shapes()
                + ", "
                + take % 3
                + " slips: "
                + strange.summary().words().get(0));
      }
    }
    System.out.printf(
        "of the drill, told as another: %d of %d; of another key, told as that: %d of %d%n",
        toldOfOwn, takes, toldOfOther, takes);
  }

  private static boolean isOther(Review review) {
    return review.summary().words().get(0).startsWith("This sounds like");
  }

  private static PlayableDrill drill(Random random) {
    List<Shape> chain =
        List.of(CHAINS.get(random.nextInt(CHAINS.size())).split(",")).stream()
            .map(Shape::parse)
            .toList();
    Key key = Key.parse("C major").up(random.nextInt(12));
    try {
      return new Drill(
              Optional.empty(),
              Tuning.STANDARD,
              Neck.USUAL_FRETS,
              key,
              chain,
              OptionalInt.empty(),
              List.of(),
              List.of(),
              1,
              new Pulse(100 + random.nextInt(60), 2, 4, 4))
          .playable();
    } catch (BadInput doesNotFit) {
      throw new IllegalStateException(doesNotFit);
    }
  }
}
