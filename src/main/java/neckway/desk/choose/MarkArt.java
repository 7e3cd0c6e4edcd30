package neckway.desk.choose;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;
import neckway.desk.DrillWords;
import neckway.desk.Texts;
import neckway.desk.choose.NeckPicture.Mark;

/**
 * Draws the stands that could be chosen, in lanes above the neck.
 *
 * @param lanes stands that do not overlap, lane by lane
 * @param laneHeight pixels
 * @param em size of the names, pixels
 * @param onMark what a click on one does
 */
record MarkArt(List<List<Mark>> lanes, double laneHeight, double em, Consumer<Mark> onMark) {
  /** Puts stands in as few lanes as they need. */
  static List<List<Mark>> lanes(List<Mark> marks) {
    List<List<Mark>> lanes = new ArrayList<>();
    for (Mark mark : marks) {
      List<Mark> free =
          lanes.stream()
              .filter(lane -> lane.get(lane.size() - 1).to() < mark.from())
              .findFirst()
              .orElse(null);
      if (free == null) {
        free = new ArrayList<>();
        lanes.add(free);
      }
      free.add(mark);
    }
    return lanes;
  }

  void add(NeckGeometry at, List<Node> nodes) {
    for (int lane = 0; lane < lanes.size(); lane++) {
      for (Mark mark : lanes.get(lane)) {
        double x1 = at.lineX(mark.from() - 1);
        double x2 = at.lineX(mark.to());
        double left = Math.min(x1, x2) + 2;
        double width = Math.abs(x2 - x1) - 4;
        double y = lane * laneHeight;
        String[] style = {"mark", mark.chosen().map(Forms::word).orElse("other")};
        Line under =
            Forms.line(left, y + laneHeight * 0.82, left + width, y + laneHeight * 0.82, style);
        Text name =
            Forms.text(
                words(mark, width),
                left + width / 2,
                y + laneHeight * 0.4,
                em * 0.92,
                mark.chosen().isPresent(),
                "mark-text",
                style[1]);
        Forms.shrink(name, width);
        Rectangle hit = new Rectangle(left, y, width, laneHeight);
        hit.getStyleClass().add("hit");
        hit.setOnMouseClicked(e -> onMark.accept(mark));
        nodes.addAll(List.of(under, name, hit));
      }
    }
  }

  private String words(Mark mark, double width) {
    String name = Texts.of("mark.name", mark.shape().number(), DrillWords.name(mark.shape()));
    if (mark.chosen().isEmpty()) {
      return name;
    }
    String hands =
        mark.hands().stream()
            .map(String::valueOf)
            .collect(Collectors.joining(" " + Texts.of("mark.then") + " "));
    String all = Texts.of("mark.chosen", name, hands);
    return all.length() * em * 0.65 < width ? all : name;
  }
}
