package neckway.desk;

import java.io.File;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.input.Dragboard;
import javafx.scene.input.TransferMode;

/** Lets files be dropped on the window. */
final class Drops {
  private Drops() {}

  static void accept(Node node, Desk desk) {
    node.setOnDragOver(
        event -> {
          if (event.getDragboard().hasFiles()) {
            event.acceptTransferModes(TransferMode.COPY);
          }
          event.consume();
        });
    node.setOnDragDropped(
        event -> {
          Dragboard board = event.getDragboard();
          List<File> files = board.hasFiles() ? board.getFiles() : List.of();
          if (!files.isEmpty()) {
            desk.open(files.stream().map(File::toPath).toList());
          }
          event.setDropCompleted(!files.isEmpty());
          event.consume();
        });
  }
}
