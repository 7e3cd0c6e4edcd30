package neckway.desk.open;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Bounds;
import javafx.geometry.Pos;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Rectangle;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FollowFocus;
import neckway.desk.Screen;
import neckway.desk.SideBySide;
import neckway.desk.Texts;
import neckway.practice.Exercise;
import neckway.practice.Progress;
import neckway.practice.Reach;
import neckway.practice.State;

/** What is open: the stands of a key along the neck, the bridges between them, one in figures. */
public final class OpenScreen implements Screen {
  private static final double LEGEND_LINE_EMS = 2.6;

  private final Desk desk;
  private final OpenModel model;
  private final BorderPane root = new BorderPane();
  private final Label headline = label("headline");
  private final Label ways = label("details");
  private final KeysRow keys;
  private final StandsView stands;
  private final LandingsView landings = new LandingsView();
  private final Label title = label("title");
  private final Label figures = label("open-figures");
  private final VBox pointed = new VBox();
  private final Label noLanding = label("whys");
  private final WarmUpPane warmUp;
  private final Button warm = new Button(Texts.of("warmup.begin"));
  private final Button practise = new Button(Texts.of("open.practise"));
  private final VBox legend = new VBox();
  private final Node picture;
  private final ScrollPane scroll = new ScrollPane();
  private final VBox first = new VBox();

  /** Whether the screen was shown before the log was read, so that its focus is still to come. */
  private boolean awaitsLog;

  private final Label firstDrill = label("open-first");
  private final Button firstPlay = new Button(Texts.of("open.first.play"));

  public OpenScreen(Desk desk, OpenModel model, TakesModel takes) {
    this.desk = desk;
    this.model = model;
    keys = new KeysRow(model);
    stands = new StandsView(model, desk.look());
    VBox one = new VBox(noLanding, landings, practise);
    one.getStyleClass().add("open-one");
    VBox beside = new VBox(legend, new TakesLine(takes).node());
    beside.getStyleClass().add("open-beside");
    // in sight whatever is scrolled
    pointed.getChildren().setAll(title, figures);
    pointed.getStyleClass().add("open-pointed");
    practise.setOnAction(e -> model.playPointed());
    practise.getStyleClass().add("keyed");
    SideBySide lower = new SideBySide(one, beside);
    VBox shown = new VBox(ways, keys.node(), stands, lower);
    shown.getStyleClass().add("open-shown");
    picture = shown;
    begin();
    warm.getStyleClass().add("keyed");
    warm.setMinWidth(Region.USE_PREF_SIZE);
    warm.setOnAction(e -> model.beginWarmUp());
    warm.disableProperty()
        .bind(Bindings.createBooleanBinding(() -> model.reach().get().isEmpty(), model.reach()));
    VBox page = new VBox(headline, warm, first, picture);
    page.getStyleClass().addAll("page", "open");
    scroll.setContent(page);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("scroll");
    FollowFocus.in(scroll);
    warmUp = new WarmUpPane(model.warmUp(), desk.look());
    model.warmUp().shown().addListener(o -> front());
    front();
    stands.onKeyed(this::inSight);
    for (ObservableValue<?> each :
        List.of(model.reading(), model.reach(), model.map(), model.sitting())) {
      each.addListener((o, old, now) -> fill());
    }
    model.spot().addListener(o -> one());
    desk.look().fontPercent().addListener(o -> dress());
    desk.look().lowStringOnTop().addListener(o -> turn());
    turn();
    dress();
    fill();
  }

  private void front() {
    boolean led = model.warmUp().isLed();
    root.setCenter(led ? warmUp.node() : scroll);
    root.setBottom(led ? null : pointed);
    if (led) {
      warmUp.focus();
    }
  }

  private static Label label(String style) {
    Label label = new Label();
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }

  /** What stands here as long as nothing is logged. */
  private void begin() {
    Label what = label("whys");
    what.setText(Texts.of("open.first.what"));
    firstPlay.getStyleClass().add("main-action");
    firstPlay.setOnAction(e -> model.playNext());
    first.getChildren().setAll(firstDrill, firstPlay, what);
    first.getStyleClass().add("open-begin");
  }

  /** Scrolls to what is pointed at. */
  private void inSight() {
    Node content = scroll.getContent();
    double view = scroll.getViewportBounds().getHeight();
    double hidden = content.getLayoutBounds().getHeight() - view;
    Optional<Bounds> at =
        model
            .spot()
            .get()
            .flatMap(stands::room)
            .map(room -> content.sceneToLocal(room.localToScene(room.getLayoutBounds())));
    double top = scroll.getVvalue() * hidden;
    at.filter(b -> hidden > 0 && (b.getMinY() < top || b.getMaxY() > top + view))
        .ifPresent(
            b -> {
              double above = b.getHeight() < view / 2 ? view / 4 : 0;
              scroll.setVvalue(Math.max(0, Math.min(1, (b.getMinY() - above) / hidden)));
            });
  }

  private void turn() {
    model.turn(desk.look().lowStringOnTop().get());
  }

  private void dress() {
    double em = DeskFrame.BASE_PIXELS * desk.look().fontPercent().get() / 100;
    stands.em().set(em);
    landings.em().set(em);
    keys.em(em);
    legend.getChildren().clear();
    for (State state : State.values()) {
      HBox sign = new HBox(sign(state, em), label("open-said"));
      ((Label) sign.getChildren().get(1)).setText(Texts.of("open.legend." + state.word()));
      sign.getStyleClass().add("open-sign");
      sign.setAlignment(Pos.CENTER_LEFT);
      legend.getChildren().add(sign);
    }
    legend.getStyleClass().setAll("open-legend");
  }

  private static Group sign(State state, double em) {
    List<Node> nodes = new ArrayList<>();
    Rectangle room = new Rectangle(0, -0.5 * em, LEGEND_LINE_EMS * em, em);
    room.getStyleClass().add("hit");
    nodes.add(room);
    Ink.line(nodes, state, 2, LEGEND_LINE_EMS * em - 2, 0);
    return new Group(nodes);
  }

  private void fill() {
    Optional<LogReading> reading = model.reading().get();
    boolean logged = reading.filter(LogReading::logged).isPresent();
    boolean nothing = reading.isPresent() && !logged;
    show(picture, logged);
    show(pointed, logged);
    show(first, nothing && model.next().isPresent());
    if (awaitsLog && reading.isPresent()) {
      awaitsLog = false;
      focus();
    }
    Optional<Reach> reach = model.reach().get();
    if (reading.isEmpty()) {
      headline.setText(Texts.of("open.reading"));
    } else if (nothing) {
      boolean unreadable = reading.get().plan().isEmpty();
      headline.setText(
          unreadable ? reading.get().complaint().orElse("") : Texts.of("open.nothing"));
      firstDrill.setText(OpenWords.next(model.sitting().get()));
    } else {
      headline.setText(
          reach.map(r -> Texts.of("open.headline", r.key(), Texts.plain(r.target()))).orElse(""));
      ways.setText(model.map().get().map(OpenWords::ways).orElse(""));
    }
    one();
  }

  private static void show(Node node, boolean there) {
    node.setVisible(there);
    node.setManaged(there);
  }

  private void one() {
    Optional<Progress> progress = model.pointed();
    title.setText(progress.map(OpenWords::title).orElse(Texts.of("open.point")));
    figures.setText(
        progress
            .flatMap(p -> model.reach().get().map(r -> OpenWords.figures(p, r.today())))
            .orElse(Texts.of("open.keys")));
    List<LandingPoint> points = progress.map(LandingPoint::of).orElse(List.of());
    landings.show(points);
    show(landings, !points.isEmpty());
    boolean unheard = progress.filter(p -> p.rounds() > 0).isPresent() && points.isEmpty();
    show(noLanding, unheard);
    boolean shape = progress.filter(p -> p.exercise() instanceof Exercise.OfShape).isPresent();
    noLanding.setText(Texts.of(shape ? "open.landings.shape" : "open.landings.none"));
    show(practise, progress.isPresent());
    practise.setTooltip(new Tooltip(Texts.of("open.practise.key")));
    stands.setAccessibleText(Texts.of("open.stands", title.getText(), figures.getText()));
  }

  @Override
  public boolean takesKey(KeyEvent event) {
    if (model.warmUp().isLed() && warmUp.takesKey(event.getCode())) {
      return true;
    }
    if (event.getCode() == KeyCode.PAGE_DOWN && desk.router().has(Place.PLAYING)) {
      desk.router().go(Place.PLAYING);
      return true;
    }
    return false;
  }

  @Override
  public Parent node() {
    return root;
  }

  @Override
  public void shown() {
    warmUp.shown();
    // what cannot be seen takes no focus
    awaitsLog = model.reading().get().isEmpty();
    Platform.runLater(this::focus);
  }

  private void focus() {
    if (model.warmUp().isLed()) {
      warmUp.focus();
    } else if (first.isVisible()) {
      firstPlay.requestFocus();
    } else {
      stands.requestFocus();
    }
  }

  @Override
  public void hidden() {
    awaitsLog = false;
    warmUp.hidden();
  }
}
