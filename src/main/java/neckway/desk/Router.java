package neckway.desk;

import java.util.EnumSet;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import neckway.desk.Screen.Place;

/** Which view is in front. */
public final class Router {
  private final ReadOnlyObjectWrapper<Place> current =
      new ReadOnlyObjectWrapper<>(this, "current", Place.CHOOSING);

  private final Set<Place> places = EnumSet.of(Place.CHOOSING);

  /** Says which views there are. */
  void offer(Set<Place> there) {
    places.addAll(there);
  }

  /** Whether there is such a view. */
  public boolean has(Place place) {
    return places.contains(place);
  }

  /** The view in front. */
  public ReadOnlyObjectProperty<Place> current() {
    return current.getReadOnlyProperty();
  }

  /** Brings a view to the front. */
  public void go(Place place) {
    current.set(place);
  }
}
