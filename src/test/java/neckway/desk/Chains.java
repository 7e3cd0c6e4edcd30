package neckway.desk;

import java.util.List;
import java.util.OptionalInt;
import neckway.neck.Shape;

/** Chains of shapes for a drill that a test chooses. */
public final class Chains {
  private Chains() {}

  /** Chooses a chain in the lowest place where it fits. */
  public static void lowest(DrillModel model, List<Shape> chain) {
    int start = model.drill().neck().chain(chain, OptionalInt.empty()).get(0).start();
    if (!model.shapes(chain, start)) {
      throw new IllegalArgumentException(model.problem().get());
    }
  }
}
