package neckway.desk;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListCell;
import javafx.scene.text.Text;

/** Finds words that there is no room for: the toolkit shows less of them, with dots at the end. */
public final class CutWords {
  private CutWords() {}

  /**
   * The words that are cut below a node, each with what is seen of it. Words whose whole text is in
   * a hint are cut on purpose, and names that the machine or the player gave may be of any length.
   * Call in the window's thread.
   */
  public static List<String> in(Node node) {
    List<String> cut = new ArrayList<>();
    collect(node, cut);
    return cut;
  }

  private static void collect(Node node, List<String> cut) {
    if (!node.isVisible()) {
      return;
    }
    if (node instanceof Labeled words && !isInHint(words) && !isGivenName(words)) {
      for (Node part : words.getChildrenUnmodifiable()) {
        if (part instanceof Text seen && part.isVisible() && isLess(seen, words)) {
          cut.add(words.getText() + " -> " + seen.getText() + ", " + words);
        }
      }
    }
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> collect(child, cut));
    }
  }

  private static boolean isLess(Text seen, Labeled words) {
    String all = words.getText() == null ? "" : words.getText();
    return !all.equals(seen.getText());
  }

  private static boolean isGivenName(Labeled words) {
    return words instanceof ListCell<?> cell && cell.getItem() instanceof String;
  }

  private static boolean isInHint(Labeled words) {
    return words.getTooltip() != null && words.getText().equals(words.getTooltip().getText());
  }
}
