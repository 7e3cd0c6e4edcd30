package neckway.desk;

import java.util.function.Predicate;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Spinner;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.skin.ComboBoxListViewSkin;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/**
 * The one key of playing and reading: Space, Enter or Page Down, which a pedal sends. It means the
 * same wherever the focus is. Two things go before it: text that is being typed, into which Space
 * and Enter go, and Enter on a control that Tab has led to, which it presses.
 */
public final class OneKey {
  private OneKey() {}

  /** Whether a key that is pressed while a node has the focus is the one key. */
  public static boolean is(KeyEvent event, Node focus) {
    return switch (event.getCode()) {
      case PAGE_DOWN -> true;
      case SPACE -> !takesText(focus);
      case ENTER -> !takesText(focus) && !reachedByTab(focus) && !isOpen(focus);
      default -> false;
    };
  }

  /** Whether letters that are typed now go into a field. */
  public static boolean takesText(Node focus) {
    return focus instanceof TextInputControl field && field.isEditable()
        || focus instanceof Spinner<?> spinner && spinner.isEditable()
        || focus instanceof ComboBoxBase<?> box && box.isEditable();
  }

  /** Whether a list of choices has dropped down, which takes the keys that choose from it. */
  public static boolean isOpen(Node focus) {
    return focus instanceof ComboBoxBase<?> box && box.isShowing();
  }

  /** Lets keys be asked for before a list of choices, once it has dropped down, takes them. */
  public static void before(ComboBox<?> box, Predicate<KeyEvent> taker) {
    box.skinProperty()
        .addListener(
            (o, old, skin) -> {
              if (skin instanceof ComboBoxListViewSkin<?> list) {
                list.getPopupContent().addEventFilter(KeyEvent.KEY_PRESSED, e -> ask(e, taker));
              }
            });
  }

  private static void ask(KeyEvent event, Predicate<KeyEvent> taker) {
    if (taker.test(event)) {
      event.consume();
    }
  }

  /** Closes a list of choices that has dropped down. */
  public static void close(Node focus) {
    if (focus instanceof ComboBoxBase<?> box) {
      box.hide();
    }
  }

  /** Lets Enter press the button or box that Tab has led to; whether there is one. */
  public static boolean presses(KeyEvent event, Node focus) {
    if (event.getCode() != KeyCode.ENTER || !reachedByTab(focus)) {
      return false;
    }
    if (focus instanceof ButtonBase button) {
      button.fire();
      return true;
    }
    return false;
  }

  private static boolean reachedByTab(Node focus) {
    return focus != null
        && focus.isFocusVisible()
        && (focus instanceof ButtonBase || focus instanceof ComboBoxBase<?>);
  }
}
