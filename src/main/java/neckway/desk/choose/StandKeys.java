package neckway.desk.choose;

import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import neckway.desk.Texts;

/** The keys of the neck while it has the focus: the arrows move the hand's first stand. */
final class StandKeys {
  private StandKeys() {}

  static void give(NeckView neck, ChoosingModel model) {
    neck.setFocusTraversable(true);
    neck.setAccessibleHelp(Texts.of("choosing.stands"));
    neck.setOnMousePressed(event -> neck.requestFocus());
    neck.addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          KeyCode code = event.getCode();
          if (code == KeyCode.LEFT || code == KeyCode.RIGHT) {
            boolean towardsBody = (code == KeyCode.RIGHT) != neck.leftHanded();
            model.standBy(towardsBody ? 1 : -1);
            event.consume();
          }
        });
  }
}
