package neckway.desk;

import javafx.scene.Node;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Region;
import neckway.desk.Screen.Place;

/** What stands above some of the views, the same one for all of them. */
public interface Strip {
  /** What is shown. */
  Region node();

  /** Told which view comes to the front; whether it stands above that one. */
  boolean isFor(Place place);

  /** Asked before the view in front; whether it takes the key. */
  boolean takesKey(KeyEvent event, Node focus);
}
