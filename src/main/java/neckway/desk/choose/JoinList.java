package neckway.desk.choose;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import neckway.desk.Texts;
import neckway.neck.Direction;

/** The joins of a pair, cleanest first, with one column for the way up and one for the way down. */
final class JoinList extends GridPane {
  private final ChoosingModel model;
  private final List<RadioButton> ups = new ArrayList<>();
  private final List<RadioButton> downs = new ArrayList<>();

  JoinList(ChoosingModel model) {
    this.model = model;
    getStyleClass().add("joins");
    model.rows().addListener(o -> fill());
    fill();
  }

  private void fill() {
    boolean onUp = ups.stream().anyMatch(RadioButton::isFocused);
    boolean onDown = downs.stream().anyMatch(RadioButton::isFocused);
    getChildren().clear();
    ups.clear();
    downs.clear();
    ToggleGroup up = new ToggleGroup();
    ToggleGroup down = new ToggleGroup();
    int line = 0;
    for (ChoosingModel.Row row : model.rows().get()) {
      RadioButton upButton = button(row, Direction.UP, row.up(), up);
      RadioButton downButton = button(row, Direction.DOWN, row.down(), down);
      ups.add(upButton);
      downs.add(downButton);
      Label text = new Label(row.text());
      text.getStyleClass().add(row.up() || row.down() ? "join-taken" : "join");
      text.setWrapText(true);
      setHgrow(text, Priority.ALWAYS);
      text.setOnMouseClicked(e -> model.take(Direction.UP, row.join()));
      addRow(line++, upButton, downButton, text);
    }
    focusTaken(onUp ? ups : onDown ? downs : List.of());
  }

  private RadioButton button(
      ChoosingModel.Row row, Direction direction, boolean taken, ToggleGroup group) {
    RadioButton button =
        new RadioButton(Texts.of(direction == Direction.UP ? "choosing.up" : "choosing.down"));
    button.setMinWidth(USE_PREF_SIZE);
    button.setToggleGroup(group);
    button.setSelected(taken);
    button.setFocusTraversable(taken);
    button.setAccessibleText(button.getText() + ": " + row.text() + ". " + row.join().why());
    button.setOnAction(e -> model.take(direction, row.join()));
    button.addEventFilter(KeyEvent.KEY_PRESSED, e -> key(e, direction));
    return button;
  }

  private void key(KeyEvent event, Direction direction) {
    KeyCode code = event.getCode();
    if (code == KeyCode.UP || code == KeyCode.DOWN) {
      model.takeBy(direction, code == KeyCode.UP ? -1 : 1);
      event.consume();
    } else if (code == KeyCode.LEFT || code == KeyCode.RIGHT) {
      focusTaken(code == KeyCode.LEFT ? ups : downs);
      event.consume();
    }
  }

  /** Puts the focus on the join that is taken up. */
  void focus() {
    focusTaken(ups);
  }

  private static void focusTaken(List<RadioButton> column) {
    column.stream()
        .filter(RadioButton::isSelected)
        .findFirst()
        .ifPresent(RadioButton::requestFocus);
  }
}
