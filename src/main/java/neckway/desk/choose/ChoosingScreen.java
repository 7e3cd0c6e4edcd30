package neckway.desk.choose;

import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FollowFocus;
import neckway.desk.Screen;
import neckway.desk.SideBySide;
import neckway.desk.Texts;
import neckway.desk.VolumeControl;

/** Choosing: the neck with its stands and joins, and everything else that makes a drill. */
public final class ChoosingScreen implements Screen {
  private final Desk desk;
  private final ChoosingModel model;
  private final HearModel hear;
  private final JoinList joins;
  private final DrillFiles files;
  private final BorderPane root = new BorderPane();

  public ChoosingScreen(Desk desk) {
    this(desk, new SpeakerOutlet(() -> desk.settings().text(Desk.OUTPUT)));
  }

  ChoosingScreen(Desk desk, HearModel.Outlet outlet) {
    this.desk = desk;
    model = new ChoosingModel(desk);
    hear = new HearModel(outlet, Platform::runLater, desk::say);
    hear.gain(desk.volume().gain());
    desk.volume().share().addListener(o -> hear.gain(desk.volume().gain()));
    joins = new JoinList(model);
    files = new DrillFiles(desk, root);
    VBox page = new VBox(head(), neck(), lower());
    page.getStyleClass().add("page");
    ScrollPane scroll = new ScrollPane(page);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("scroll");
    FollowFocus.in(scroll);
    root.setCenter(scroll);
    root.setBottom(actions());
  }

  private Node head() {
    Label headline = new Label();
    headline.getStyleClass().add("headline");
    headline.setWrapText(true);
    headline.textProperty().bind(model.headline());
    Label details = new Label();
    details.getStyleClass().add("details");
    details.setWrapText(true);
    details.textProperty().bind(model.details());
    VBox head = new VBox(headline, details);
    head.getStyleClass().add("head");
    return head;
  }

  private Node neck() {
    NeckView neck = new NeckView(desk.look());
    neck.em().bind(desk.look().fontPercent().multiply(DeskFrame.BASE_PIXELS / 100));
    neck.onMark(model::stand);
    neck.onBridge(model::take);
    neck.picture().bind(model.picture());
    neck.sounding().bind(hear.place());
    neck.accessibleTextProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    Texts.of(
                        "choosing.neck", model.headline().get(), model.details().get().strip()),
                model.headline(),
                model.details()));
    StandKeys.give(neck, model);
    return neck;
  }

  private Node lower() {
    Label title = new Label();
    title.getStyleClass().add("title");
    title.textProperty().bind(model.pairText());
    title.setWrapText(true);
    Button next = new Button(Texts.of("choosing.next-pair"));
    next.setMinWidth(Region.USE_PREF_SIZE);
    next.setOnAction(e -> model.nextPair());
    next.visibleProperty().bind(model.severalPairs());
    next.managedProperty().bind(model.severalPairs());
    HBox titles = new HBox(title, next);
    titles.getStyleClass().add("titles");
    Label whys = new Label();
    whys.setWrapText(true);
    whys.getStyleClass().add("whys");
    whys.textProperty().bind(model.whys());
    VBox left = new VBox(titles, joins, whys);
    left.getStyleClass().add("column");
    return new SideBySide(left, new DrillForm(desk, model, files).node());
  }

  private Node actions() {
    FlowPane bar = new FlowPane();
    bar.getStyleClass().add("actions");
    if (desk.router().has(Place.PLAYING)) {
      Button play = button("choosing.play", () -> desk.router().go(Place.PLAYING));
      play.setTooltip(new Tooltip(Texts.of("choosing.play.key")));
      bar.getChildren().add(play);
    }
    Button listen = new Button();
    listen.setOnAction(e -> hear());
    listen.getStyleClass().add(desk.router().has(Place.PLAYING) ? "second-action" : "main-action");
    listen.setTooltip(new Tooltip(Texts.of("choosing.hear.key")));
    listen
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    switch (hear.state().get()) {
                      case SILENT -> Texts.of("choosing.hear");
                      case RENDERING -> Texts.of("choosing.hear.rendering");
                      case PLAYING -> Texts.of("choosing.hear.stop");
                    },
                hear.state()));
    bar.getChildren().addAll(listen, VolumeControl.named(desk.volume()));
    return bar;
  }

  private static Button button(String textKey, Runnable action) {
    Button button = new Button(Texts.of(textKey));
    button.getStyleClass().add("main-action");
    button.setOnAction(e -> action.run());
    return button;
  }

  private void hear() {
    hear.toggle(desk.drill().drill());
  }

  /**
   * Wherever the focus is, also on the names of the views, where one shape has no join to have it.
   */
  @Override
  public boolean takesKey(KeyEvent event) {
    KeyCode code = event.getCode();
    boolean done = true;
    if (event.isShortcutDown() && code == KeyCode.H) {
      hear();
    } else if (event.isShortcutDown() && code == KeyCode.O) {
      files.open();
      // the join that had the focus may be gone with the drill before
      Platform.runLater(this::focus);
    } else if (event.isShortcutDown() && code == KeyCode.S) {
      files.save();
    } else if (code == KeyCode.PAGE_DOWN && desk.router().has(Place.PLAYING)) {
      desk.router().go(Place.PLAYING);
    } else if (code == KeyCode.ESCAPE && hear.state().get() != HearModel.State.SILENT) {
      hear.stop();
    } else {
      done = false;
    }
    return done;
  }

  @Override
  public Parent node() {
    return root;
  }

  @Override
  public void shown() {
    Platform.runLater(this::focus);
  }

  /** The join that is taken; where one shape has none, what comes next. */
  private void focus() {
    if (desk.drill().pairs().isEmpty()) {
      root.lookup(".main-action").requestFocus();
    } else {
      joins.focus();
    }
  }

  @Override
  public void hidden() {
    hear.stop();
  }
}
