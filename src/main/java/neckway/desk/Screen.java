package neckway.desk;

import javafx.scene.Parent;
import javafx.scene.input.KeyEvent;

/** One of the views that the frame shows, one at a time. It binds; its view model decides. */
public interface Screen {
  /** Which views there are, in the order of work. */
  enum Place {
    CHOOSING,
    PLAYING,
    READING,
    SOUND_ROOM,
    OPEN,
    STUDENTS;

    /** Its name in the bundle. */
    String textKey() {
      return "place." + name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** What is shown; the same each time. */
  Parent node();

  /**
   * A key was pressed somewhere in the window while this view is in front; it is asked before what
   * has the focus. Whether it takes the key.
   */
  default boolean takesKey(KeyEvent event) {
    return false;
  }

  /** It has come to the front: the place to put the focus, and to begin what only then runs. */
  void shown();

  /** Another one has come to the front, or the window closes: what runs is to stop. */
  void hidden();
}
