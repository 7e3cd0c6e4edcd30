package neckway.desk;

import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Choosing: the neck with its stands and joins, and everything else that makes a drill. */
public final class ChoosingScreen implements Screen {
  private final Desk desk;
  private final ChoosingModel model;
  private final JoinList joins;
  private final ScrollPane root = new ScrollPane();

  public ChoosingScreen(Desk desk) {
    this.desk = desk;
    model = new ChoosingModel(desk);
    joins = new JoinList(model);
    VBox page = new VBox(head(), neck(), lower());
    page.getStyleClass().add("page");
    root.setContent(page);
    root.setFitToWidth(true);
    root.getStyleClass().add("scroll");
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
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    HBox head = new HBox(headline, gap, details);
    head.getStyleClass().add("head");
    return head;
  }

  private Node neck() {
    NeckView neck = new NeckView(desk.look());
    neck.em().bind(desk.look().textPercent().multiply(DeskFrame.BASE_PIXELS / 100));
    neck.onMark(model::stand);
    neck.onJoin(model::take);
    neck.picture().bind(model.picture());
    neck.accessibleTextProperty().bind(model.headline());
    return neck;
  }

  private Node lower() {
    Label title = new Label();
    title.getStyleClass().add("title");
    title.textProperty().bind(model.pairText());
    Button next = new Button(Texts.of("choosing.next-pair"));
    next.setOnAction(e -> model.nextPair());
    Label whys = new Label();
    whys.setWrapText(true);
    whys.getStyleClass().add("whys");
    whys.textProperty().bind(model.whys());
    VBox left = new VBox(title, joins, whys);
    left.getStyleClass().add("column");
    HBox.setHgrow(left, Priority.ALWAYS);
    HBox lower = new HBox(left, new DrillForm(desk, model).node());
    lower.getStyleClass().add("lower");
    return lower;
  }

  @Override
  public Parent node() {
    return root;
  }

  @Override
  public void shown() {
    joins.focus();
  }

  @Override
  public void hidden() {
    // nothing runs
  }
}
