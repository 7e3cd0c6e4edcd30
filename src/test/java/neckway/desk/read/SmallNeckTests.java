package neckway.desk.read;

import static org.assertj.core.api.Assertions.assertThat;

import neckway.neck.GuitarString;
import neckway.neck.Place;
import org.junit.jupiter.api.Test;

/** The small neck lies as the large one does. */
class SmallNeckTests {
  private static final Place PLACE = new Place(new GuitarString(6), 4);

  private static SmallNeck neck(boolean leftHanded, boolean lowOnTop) {
    return new SmallNeck(100, 60, 10, 60, 6, 3, 8, leftHanded, lowOnTop);
  }

  /** Six frets of ten pixels from 100 on: the second one's middle is 115, or 145 from the right. */
  @Test
  void theNutIsOnTheRightForTheLeftHanded() {
    assertThat(neck(false, false).x(PLACE)).isEqualTo(115);
    assertThat(neck(true, false).x(PLACE)).isEqualTo(145);
  }

  @Test
  void theLowestStringIsAtTheTopWhereItIsAskedFor() {
    assertThat(neck(false, false).y(PLACE)).isEqualTo(60.5);
    assertThat(neck(false, true).y(PLACE)).isEqualTo(10.5);
  }
}
