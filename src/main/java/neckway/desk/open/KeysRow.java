package neckway.desk.open;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import neckway.desk.open.OpenMap.Bridge;
import neckway.neck.Direction;
import neckway.practice.Reach;

/**
 * The keys of the log side by side, each a button with a small picture: a bridge is a pair of
 * lines, the way up above the way down, each as its best way is.
 */
final class KeysRow {
  private static final double LINE_EMS = 1.5;
  private static final double GAP_EMS = 0.35;
  private static final double APART_EMS = 0.62;

  private final OpenModel model;
  private final FlowPane row = new FlowPane();
  private double em = 15;

  KeysRow(OpenModel model) {
    this.model = model;
    row.getStyleClass().add("open-keys");
    model.reading().addListener(o -> fill());
    model.reach().addListener(o -> fill());
    fill();
  }

  Region node() {
    return row;
  }

  void em(double pixels) {
    em = pixels;
    fill();
  }

  private void fill() {
    List<Reach> keys = model.reading().get().map(LogReading::keys).orElse(List.of());
    boolean several = keys.size() > 1;
    row.setManaged(several);
    row.setVisible(several);
    ToggleGroup group = new ToggleGroup();
    List<Node> buttons = new ArrayList<>();
    for (Reach reach : several ? keys : List.<Reach>of()) {
      OpenMap map = OpenMap.of(reach, false);
      ToggleButton button = new ToggleButton(OpenWords.key(reach, map), picture(map));
      button.getStyleClass().setAll("open-key");
      button.setToggleGroup(group);
      button.setMinSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
      button.setSelected(model.reach().get().filter(r -> r.key().equals(reach.key())).isPresent());
      button.setOnAction(
          e -> {
            button.setSelected(true);
            model.key(reach.key());
          });
      buttons.add(button);
    }
    row.getChildren().setAll(buttons);
  }

  private Group picture(OpenMap map) {
    List<Node> nodes = new ArrayList<>();
    double size = Math.min(em, 28);
    double x = 0;
    for (OpenMap.Column column : map.columns()) {
      if (column instanceof Bridge bridge) {
        double to = x + LINE_EMS * size;
        Ink.line(nodes, bridge.state(Direction.UP), x, to, 0);
        Ink.line(nodes, bridge.state(Direction.DOWN), x, to, APART_EMS * size);
        x = to + GAP_EMS * size;
      }
    }
    // as high whatever the lines are, so that buttons stand in line
    Rectangle room = new Rectangle(0, -4, Math.max(1, x), APART_EMS * size + 8);
    room.getStyleClass().add("hit");
    nodes.add(0, room);
    return new Group(nodes);
  }
}
