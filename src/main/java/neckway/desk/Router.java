package neckway.desk;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import neckway.desk.Screen.Place;

/** Which view is in front. */
public final class Router {
  private final ReadOnlyObjectWrapper<Place> current =
      new ReadOnlyObjectWrapper<>(this, "current", Place.CHOOSING);

  /** The view in front. */
  public ReadOnlyObjectProperty<Place> current() {
    return current.getReadOnlyProperty();
  }

  /** Brings a view to the front. */
  public void go(Place place) {
    current.set(place);
  }
}
