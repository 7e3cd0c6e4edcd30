package neckway.desk.choose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.layout.Region;
import neckway.desk.LookModel;
import neckway.desk.choose.NeckPicture.Bridge;
import neckway.desk.choose.NeckPicture.Mark;
import neckway.neck.Direction;
import neckway.neck.Place;

/**
 * A neck: strings, frets in their true places, the hand in its stands, notes and bridges. Above it
 * the stands that could be chosen. Colours come from the style sheet.
 */
public final class NeckView extends Region {
  private static final double LEAST_GAP = 30;
  private static final double MOST_GAP = 64;
  private static final double MOST_EM = 24;

  private final ObjectProperty<NeckPicture> picture = new SimpleObjectProperty<>(this, "picture");
  private final ObjectProperty<Optional<Place>> sounding =
      new SimpleObjectProperty<>(this, "sounding", Optional.empty());
  private final DoubleProperty em = new SimpleDoubleProperty(this, "em", 15);
  private final LookModel look;
  private BiConsumer<Direction, Bridge> onBridge = (direction, bridge) -> {};
  private Consumer<Mark> onMark = mark -> {};
  private boolean marksShown;
  private double builtWidth;
  private double builtHeight;

  public NeckView(LookModel look) {
    this.look = look;
    getStyleClass().add("neck");
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    picture.addListener(o -> rebuild());
    sounding.addListener(o -> rebuild());
    em.addListener(o -> rebuild());
    look.leftHanded().addListener(o -> rebuild());
    look.lowStringOnTop().addListener(o -> rebuild());
  }

  /** What is on the neck. */
  public ObjectProperty<NeckPicture> picture() {
    return picture;
  }

  /** The place that sounds now, if one does. */
  public ObjectProperty<Optional<Place>> sounding() {
    return sounding;
  }

  /** Whether the nut is on the right. */
  boolean leftHanded() {
    return look.leftHanded().get();
  }

  /** Size of plain text, pixels. */
  public DoubleProperty em() {
    return em;
  }

  /** What a click on a bridge does: up, or with the other button down. */
  public void onBridge(BiConsumer<Direction, Bridge> action) {
    onBridge = action;
  }

  /** Shows the stands that could be chosen, and what a click on one does. */
  public void onMark(Consumer<Mark> action) {
    onMark = action;
    marksShown = true;
  }

  private void rebuild() {
    builtWidth = 0;
    requestLayout();
  }

  private double gap() {
    return Math.max(LEAST_GAP, Math.min(MOST_GAP, 2.7 * em.get()));
  }

  private int strings() {
    return picture.get() == null ? 6 : picture.get().tuning().count();
  }

  private List<List<Mark>> lanes() {
    boolean none = !marksShown || picture.get() == null;
    return none ? List.of() : MarkArt.lanes(picture.get().marks());
  }

  private double laneHeight() {
    return 1.75 * Math.min(em.get(), MOST_EM);
  }

  private double numberEm() {
    return Math.min(em.get(), MOST_EM) * 0.87;
  }

  @Override
  protected double computePrefHeight(double width) {
    return lanes().size() * laneHeight() + gap() * (strings() + 0.15) + 2.2 * numberEm();
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computeMinWidth(double height) {
    return 400;
  }

  @Override
  protected void layoutChildren() {
    if (picture.get() == null || getWidth() < 50) {
      return;
    }
    if (builtWidth == getWidth() && builtHeight == getHeight()) {
      return;
    }
    builtWidth = getWidth();
    builtHeight = getHeight();
    NeckPicture p = picture.get();
    double names = 1.9 * em.get();
    double marksHeight = lanes().size() * laneHeight();
    NeckGeometry at =
        new NeckGeometry(
            look.leftHanded().get() ? 0.6 * em.get() : names,
            getWidth() - names - 0.6 * em.get(),
            marksHeight + gap() * 0.62,
            gap(),
            p.tuning().count(),
            p.firstLine(),
            p.lastLine(),
            look.leftHanded().get(),
            look.lowStringOnTop().get());
    double nameX = look.leftHanded().get() ? getWidth() - 0.5 * em.get() : 0.5 * em.get();
    WoodArt wood = new WoodArt(at, nameX, numberEm());
    BridgeArt bridges = new BridgeArt(at, em.get(), onBridge);
    DotArt dots = new DotArt(at, sounding.get());
    List<Node> nodes = new ArrayList<>();
    wood.addWindows(p, nodes);
    wood.addWood(p, nodes);
    new MarkArt(lanes(), laneHeight(), Math.min(em.get(), MOST_EM), onMark).add(at, nodes);
    p.bridges().forEach(bridge -> bridges.add(bridge, nodes));
    p.dots().forEach(dot -> dots.add(dot, nodes));
    p.bridges().forEach(bridge -> bridges.addText(bridge, nodes));
    getChildren().setAll(nodes);
  }
}
