package neckway.desk.students;

import java.io.File;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.DirectoryChooser;
import neckway.desk.Desk;
import neckway.desk.Screen;
import neckway.desk.Texts;
import neckway.review.Summary;
import neckway.review.words.Words;

/** The class: a table of the recordings, and one moment after the other to hear and to judge. */
public final class StudentsScreen implements Screen {
  /** From here on the table needs the room of the hints. */
  private static final int CROWDED_PERCENT = 170;

  /** Of large text the vertical scroll bar takes as much of the columns' room. */
  private static final double BESIDE_A_SCROLL_BAR = 0.95;

  private final StudentsModel model;
  private final Desk desk;
  private final BorderPane root = new BorderPane();
  private final TableView<Student> table = new TableView<>();
  private final Label heard = label("students-heard");
  private final Label said = label("whys");
  private final TextField remark = new TextField();
  private boolean filling;

  public StudentsScreen(StudentsModel model, Desk desk) {
    this.model = model;
    this.desk = desk;
    root.getStyleClass().addAll("page", "students");
    root.getStylesheets().add(Screen.class.getResource("run.css").toExternalForm());
    Label line = label("details");
    line.textProperty().bind(model.line());
    Label first = label("whys");
    first.setText(Texts.of("students.first"));
    first
        .managedProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> model.students().get().isEmpty(), model.students()));
    first.visibleProperty().bind(first.managedProperty());
    HBox top = new HBox(button("students.folder", this::pick), line);
    top.getStyleClass().add("strip");
    HBox.setHgrow(line, Priority.ALWAYS);
    VBox head = new VBox(top, first);
    head.getStyleClass().add("students-head");
    root.setTop(head);
    table();
    root.setCenter(table);
    root.setBottom(below());
    model.students().addListener(o -> fill());
    model.chosen().addListener(o -> select());
    model.moment().addListener(o -> tell());
    fill();
  }

  private static Label label(String style) {
    Label label = new Label();
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }

  private void table() {
    column("students.name", 0.22, s -> s.job().name());
    column("students.doubts", 0.12, s -> s.read().isPresent() ? s.doubts() : null);
    column("students.slips", 0.1, s -> s.read().isPresent() ? s.slips() : null);
    column("students.right", 0.16, s -> score(s).orElse(null));
    column("students.note", 0.38, StudentsScreen::note);
    table.setPlaceholder(new Label(""));
    table.setAccessibleText(Texts.of("students.table"));
    table
        .getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (o, before, now) -> {
              if (now != null && !filling) {
                model.choose(model.students().get().indexOf(now));
              }
            });
  }

  private <T> void column(String key, double share, Function<Student, T> value) {
    TableColumn<Student, T> column = new TableColumn<>(Texts.of(key));
    column.setCellValueFactory(cell -> new ReadOnlyObjectWrapper<>(value.apply(cell.getValue())));
    column
        .prefWidthProperty()
        .bind(
            table
                .widthProperty()
                .multiply(
                    Bindings.when(desk.look().crowdingPercent().lessThan(CROWDED_PERCENT))
                        .then(share)
                        .otherwise(share * BESIDE_A_SCROLL_BAR)));
    table.getColumns().add(column);
  }

  private static Optional<String> score(Student student) {
    return student
        .review()
        .map(review -> review.summary())
        .map((Summary s) -> Texts.of("students.of", s.right(), s.notes()));
  }

  /** Why it could not be read; else a drill that is a guess, and what to do first. */
  private static String note(Student student) {
    Optional<String> first = student.review().flatMap(Words::advice);
    String why = student.status().replace(student.job().file().getParent() + File.separator, "");
    return Stream.of(student.guess(), first, Optional.of(why).filter(line -> !line.isEmpty()))
        .flatMap(Optional::stream)
        .collect(Collectors.joining(". "));
  }

  private Region below() {
    remark.setPromptText(Texts.of("students.remark"));
    remark.setAccessibleText(Texts.of("students.remark"));
    remark.setOnAction(
        e -> {
          model.remark(remark.getText());
          remark.clear();
          table.requestFocus();
        });
    FlowPane keys =
        new FlowPane(
            button("students.next", model::playNext),
            button("students.agree", model::agree),
            button("students.overrule", model::overrule));
    keys.getStyleClass().add("keys");
    keys.getChildren().get(0).getStyleClass().add("main-action");
    Label how = label("whys");
    how.setText(Texts.of("students.keys"));
    how.managedProperty().bind(desk.look().crowdingPercent().lessThan(CROWDED_PERCENT));
    how.visibleProperty().bind(how.managedProperty());
    for (Label each : new Label[] {heard, said}) {
      each.managedProperty().bind(each.textProperty().isNotEmpty());
    }
    // beside the remark, so that small windows have a row more of the table
    HBox hand = new HBox(remark, button("students.write", model::writeReports));
    hand.getStyleClass().add("students-hand");
    HBox.setHgrow(remark, Priority.ALWAYS);
    VBox below = new VBox(heard, said, hand, keys, how);
    below.getStyleClass().add("students-below");
    return below;
  }

  private static Button button(String key, Runnable action) {
    Button button = new Button(Texts.of(key));
    button.getStyleClass().add("keyed");
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setFocusTraversable(false);
    button.setOnAction(e -> action.run());
    return button;
  }

  private void pick() {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle(Texts.of("students.folder"));
    File folder = chooser.showDialog(root.getScene().getWindow());
    if (folder != null) {
      model.open(folder.toPath());
    }
  }

  private void fill() {
    filling = true;
    table.setItems(FXCollections.observableArrayList(model.students().get()));
    // a click on a column's head sorts it; until then the unsure ones stand first
    table.sort();
    filling = false;
    select();
  }

  private void select() {
    filling = true;
    model
        .student()
        .ifPresent(
            student -> {
              table.getSelectionModel().select(student);
              table.scrollTo(student);
            });
    filling = false;
    tell();
  }

  private void tell() {
    heard.setText(model.moment().get().map(m -> m.words()).orElse(""));
    Optional<Student> student = model.student();
    String verdict =
        student.flatMap(s -> model.moment().get().flatMap(m -> verdict(s, m))).orElse("");
    String remarks =
        student
            .filter(s -> s.remarks().overall().isPresent() || !s.remarks().moments().isEmpty())
            .map(
                s ->
                    Texts.of(
                        "students.remarks",
                        s.remarks().overall().orElse("\u2013"),
                        s.remarks().moments().size()))
            .orElse("");
    said.setText((verdict + " " + remarks).strip());
  }

  private static Optional<String> verdict(
      Student student, neckway.report.Report.WorthHearing moment) {
    return student.note(moment).stream()
        .boxed()
        .flatMap(note -> student.said(note).stream())
        .map(verdict -> Texts.of("students.yours." + verdict.word()))
        .findFirst();
  }

  @Override
  public boolean takesKey(KeyEvent event) {
    Node focus = root.getScene() == null ? null : root.getScene().getFocusOwner();
    KeyCode code = event.getCode();
    if (event.isShortcutDown() || event.isAltDown()) {
      return false;
    }
    if (code == KeyCode.PAGE_DOWN && desk.router().has(Place.PLAYING)) {
      desk.router().go(Place.PLAYING);
      return true;
    }
    if (focus instanceof TextInputControl) {
      if (code == KeyCode.ESCAPE) {
        table.requestFocus();
        return true;
      }
      return false;
    }
    Runnable action =
        switch (code) {
          case SPACE -> model::playNext;
          case J -> () -> move(1);
          case K -> () -> move(-1);
          case A -> model::agree;
          case X -> model::overrule;
          case T -> remark::requestFocus;
          case R -> model::writeReports;
          case O -> this::pick;
          case ESCAPE -> model::stop;
          default -> null;
        };
    if (action == null) {
      return false;
    }
    action.run();
    return true;
  }

  /** The next or the one before as the table is sorted. */
  private void move(int by) {
    int rows = table.getItems().size();
    if (rows > 0) {
      int now = table.getSelectionModel().getSelectedIndex();
      table.getSelectionModel().select(Math.max(0, Math.min(rows - 1, now + by)));
    }
  }

  @Override
  public Parent node() {
    return root;
  }

  @Override
  public void shown() {
    Platform.runLater(table::requestFocus);
  }

  @Override
  public void hidden() {
    model.stop();
  }
}
