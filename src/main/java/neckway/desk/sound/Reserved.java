package neckway.desk.sound;

import java.util.List;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;

/**
 * Words that change while one plays, with the room that the longest of them needs: whatever stands
 * below stays where it is, so that a click on it does not miss.
 */
final class Reserved extends StackPane {
  /**
   * @param shown what is shown
   * @param longest those of its words that may need the most room
   */
  Reserved(Label shown, List<String> longest) {
    setAlignment(Pos.TOP_LEFT);
    for (String words : longest) {
      Label room = new Label(words);
      room.getStyleClass().setAll(shown.getStyleClass());
      room.setWrapText(shown.isWrapText());
      room.setMinWidth(shown.getMinWidth());
      room.setMinHeight(Region.USE_PREF_SIZE);
      room.setVisible(false);
      getChildren().add(room);
    }
    getChildren().add(shown);
  }

  /** Words of a style, which wrap. */
  static Reserved of(String style, ObservableValue<String> words, List<String> longest) {
    Label label = SoundScreen.words(style);
    label.textProperty().bind(words);
    return new Reserved(label, longest);
  }
}
