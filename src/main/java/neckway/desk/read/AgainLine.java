package neckway.desk.read;

import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.util.StringConverter;
import neckway.desk.Texts;
import neckway.file.sound.Channel;

/**
 * The line by which a recording is read again with another first beat or on another channel; a take
 * that was played live has none.
 */
final class AgainLine {
  private static final int COLUMNS = 6;

  private final ReadingModel model;
  private final RecordingModel recording;
  private final FlowPane line = new FlowPane();

  AgainLine(ReadingModel model, RecordingModel recording) {
    this.model = model;
    this.recording = recording;
    Button read = new Button(Texts.of("again.read"));
    read.getStyleClass().add("keyed");
    read.setOnAction(e -> again());
    line.getStyleClass().addAll("keys", "again");
    line.getChildren()
        .addAll(
            labelled("again.firstBeat", firstBeat()), labelled("again.channel", channel()), read);
    BooleanBinding recorded =
        Bindings.createBooleanBinding(
            () -> model.take().get().flatMap(ReadTake::recording).isPresent(), model.take());
    line.managedProperty().bind(recorded);
    line.visibleProperty().bind(recorded);
  }

  Region node() {
    return line;
  }

  /** Whether a node is one of its own, which takes its keys itself. */
  boolean holds(Node focus) {
    Node at = focus;
    while (at != null && at != line) {
      at = at.getParent();
    }
    return at == line;
  }

  private void again() {
    model.take().get().ifPresent(recording::again);
  }

  private TextField firstBeat() {
    TextField field = new TextField();
    field.setPromptText(Texts.of("again.found"));
    field.setPrefColumnCount(COLUMNS);
    field.textProperty().bindBidirectional(recording.firstBeat());
    field.setOnAction(e -> again());
    return field;
  }

  private ComboBox<Channel> channel() {
    ComboBox<Channel> box = new ComboBox<>(FXCollections.observableArrayList(Channel.values()));
    box.setConverter(new ChannelWords());
    box.valueProperty().bindBidirectional(recording.channel());
    return box;
  }

  private static HBox labelled(String key, Node control) {
    Label label = new Label(Texts.of(key));
    label.setLabelFor(control);
    label.setMinWidth(Region.USE_PREF_SIZE);
    control.setAccessibleText(Texts.of(key));
    HBox pair = new HBox(label, control);
    pair.getStyleClass().add("meter");
    return pair;
  }

  /** A channel's name as it is shown. */
  private static final class ChannelWords extends StringConverter<Channel> {
    @Override
    public String toString(Channel channel) {
      return channel == null
          ? ""
          : Texts.of("again.channel." + channel.name().toLowerCase(Locale.ROOT));
    }

    @Override
    public Channel fromString(String text) {
      throw new UnsupportedOperationException("nothing is typed here");
    }
  }
}
