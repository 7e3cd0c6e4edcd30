package neckway.desk.sound;

import java.io.File;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.value.ObservableValue;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import neckway.desk.FollowFocus;
import neckway.desk.Texts;
import neckway.desk.sound.GuitarModel.Stage;
import neckway.neck.GuitarString;

/** Shows the guitar: the profile in use, and the guided plucks. */
final class GuitarPane {
  private final GuitarModel model;
  private final VBox node = new VBox();

  GuitarPane(GuitarModel model) {
    this.model = model;
    Label profile = SoundScreen.words("room-known");
    profile.textProperty().bind(model.profile());
    Button open = new Button(Texts.of("guitar.open"));
    open.setMinWidth(Button.USE_PREF_SIZE);
    open.setOnAction(
        e ->
            ask(dialog -> dialog.showOpenDialog(node.getScene().getWindow()))
                .ifPresent(model::open));
    node.getChildren()
        .addAll(
            SoundScreen.title("guitar.title"),
            SoundScreen.row(
                "guitar.profile",
                SoundScreen.choice(
                    "guitar.profile", model.known(), model.inUse(), GuitarModel::shownName),
                open),
            SoundScreen.fault(model.profileTrouble()),
            profile,
            rest(),
            plucking(),
            learnt());
  }

  Node node() {
    return node;
  }

  private static void only(Node part, BooleanBinding when) {
    part.visibleProperty().bind(when);
    part.managedProperty().bind(when);
  }

  private static Button button(String key, Runnable action) {
    Button button = new Button(Texts.of(key));
    button.setOnAction(e -> action.run());
    return button;
  }

  private Node rest() {
    Label how = SoundScreen.words("room-how");
    how.setText(Texts.of("guitar.how"));
    Button begin = button("guitar.begin", model::begin);
    VBox part = new VBox(how, begin);
    part.getStyleClass().add("room-part");
    only(part, model.stage().isEqualTo(Stage.REST));
    return part;
  }

  /**
   * Words that can have the focus and do nothing: where it stands while something is told, so that
   * no key that is struck takes anything back.
   */
  private static Label still(String style, ObservableValue<String> words) {
    Label label = SoundScreen.words(style);
    label.textProperty().bind(words);
    label.accessibleTextProperty().bind(words);
    label.setAccessibleRole(AccessibleRole.TEXT);
    label.setFocusTraversable(true);
    return label;
  }

  private Node plucking() {
    Label next = SoundScreen.words("room-next");
    next.textProperty().bind(model.next());
    // the tuning is that of the drill when the plucks begin
    StackPane nextRoom = new StackPane(next);
    nextRoom.setAlignment(Pos.TOP_LEFT);
    Reserved said = Reserved.of("room-said", model.said(), SoundWords.allSaid());
    Label count = SoundScreen.words("room-count");
    count.textProperty().bind(model.count());
    ProgressBar bar = new ProgressBar(0);
    bar.getStyleClass().add("level");
    bar.setMaxWidth(Double.MAX_VALUE);
    bar.progressProperty().bind(model.share());
    bar.setAccessibleText(Texts.of("guitar.progress"));
    Button back = button("guitar.back", model::back);
    FollowFocus.keepInSight(back, next);
    FlowPane keys =
        new FlowPane(back, button("guitar.skip", model::skip), button("guitar.stop", model::stop));
    keys.getStyleClass().add("room-keys");
    VBox part = new VBox(nextRoom, said, bar, count, keys);
    part.getStyleClass().addAll("room-part", "room-plucks");
    // all of it has the focus, so that all of it is kept in sight and no key takes anything back
    part.setFocusTraversable(true);
    part.setAccessibleRole(AccessibleRole.TEXT);
    part.accessibleTextProperty().bind(model.next());
    only(part, model.stage().isEqualTo(Stage.PLUCKING));
    model
        .stage()
        .addListener(
            (o, old, now) -> {
              if (now == Stage.PLUCKING) {
                nextRoom.getChildren().setAll(new Reserved(next, model.allNext()));
                part.requestFocus();
              }
            });
    return part;
  }

  private Node learnt() {
    Label head =
        still(
            "room-said",
            Bindings.when(model.stage().isEqualTo(Stage.LEARNT))
                .then(Texts.of("guitar.learnt"))
                .otherwise(Texts.of("guitar.refused")));
    VBox findings = new VBox();
    findings.getStyleClass().add("room-part");
    model
        .findings()
        .addListener(
            (ListChangeListener<String>)
                change -> {
                  findings.getChildren().clear();
                  for (String words : model.findings()) {
                    Label line = SoundScreen.words("room-finding");
                    line.setText(words);
                    findings.getChildren().add(line);
                  }
                });
    FlowPane again = new FlowPane();
    again.getStyleClass().add("room-keys");
    model
        .again()
        .addListener(
            (ListChangeListener<GuitarString>)
                change -> {
                  again.getChildren().clear();
                  for (GuitarString string : model.again()) {
                    Button button = new Button(Texts.of("guitar.again", string));
                    button.setOnAction(e -> model.again(string));
                    again.getChildren().add(button);
                  }
                });
    TextField name = new TextField();
    name.textProperty().bindBidirectional(model.name());
    name.setAccessibleText(Texts.of("guitar.name"));
    Button save = button("guitar.save", model::save);
    Button elsewhere =
        button(
            "guitar.save.elsewhere",
            () ->
                ask(dialog -> dialog.showSaveDialog(node.getScene().getWindow()))
                    .ifPresent(model::save));
    FlowPane keys = new FlowPane(save, elsewhere);
    keys.getStyleClass().add("room-keys");
    VBox saving =
        new VBox(
            SoundScreen.row("guitar.name", name), SoundScreen.fault(model.saveTrouble()), keys);
    saving.getStyleClass().add("room-part");
    only(saving, model.stage().isEqualTo(Stage.LEARNT));
    Button stop = button("guitar.discard", model::stop);
    VBox part = new VBox(head, findings, again, saving, stop);
    part.getStyleClass().add("room-part");
    only(part, model.stage().isEqualTo(Stage.LEARNT).or(model.stage().isEqualTo(Stage.REFUSED)));
    model
        .stage()
        .addListener(
            (o, old, now) -> {
              if (now == Stage.LEARNT) {
                save.requestFocus();
              } else if (now == Stage.REFUSED) {
                head.requestFocus();
              }
            });
    return part;
  }

  private Optional<Path> ask(Function<FileChooser, File> show) {
    FileChooser dialog = new FileChooser();
    dialog.setTitle(Texts.of("guitar.profile"));
    dialog
        .getExtensionFilters()
        .add(new FileChooser.ExtensionFilter(Texts.of("guitar.profile"), "*.json"));
    dialog.setInitialFileName(model.name().get() + ".json");
    return Optional.ofNullable(show.apply(dialog)).map(File::toPath);
  }
}
