package neckway.desk.choose;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.desk.Desk;
import neckway.desk.DrillWords;
import neckway.desk.NumberText;
import neckway.desk.Texts;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.Direction;
import neckway.neck.Join;
import neckway.neck.Key;
import neckway.neck.Shape;

/** What the choosing screen shows and what its keys do. */
public final class ChoosingModel {
  /** The keys that are offered, each pair of relatives together. */
  static final List<Key> KEYS =
      List.of("C", "G", "D", "A", "E", "B", "F#", "Db", "Ab", "Eb", "Bb", "F").stream()
          .flatMap(tonic -> List.of(tonic + " major", relative(tonic)).stream())
          .map(Key::parse)
          .toList();

  /**
   * One join in the list.
   *
   * @param join what it is of
   * @param text its string, finger and travel
   * @param up whether the way up takes it
   * @param down whether the way down takes it
   */
  public record Row(Join join, String text, boolean up, boolean down) {}

  private final Desk desk;
  private final ReadOnlyStringWrapper headline = new ReadOnlyStringWrapper(this, "headline");
  private final ReadOnlyStringWrapper details = new ReadOnlyStringWrapper(this, "details");
  private final ReadOnlyStringWrapper whys = new ReadOnlyStringWrapper(this, "whys");
  private final ReadOnlyStringWrapper legend = new ReadOnlyStringWrapper(this, "legend");
  private final ReadOnlyStringWrapper pairText = new ReadOnlyStringWrapper(this, "pairText");
  private final ReadOnlyBooleanWrapper severalPairs =
      new ReadOnlyBooleanWrapper(this, "severalPairs");
  private final ReadOnlyIntegerWrapper pair = new ReadOnlyIntegerWrapper(this, "pair");
  private final ReadOnlyObjectWrapper<List<Row>> rows =
      new ReadOnlyObjectWrapper<>(this, "rows", List.of());
  private final ReadOnlyObjectWrapper<NeckPicture> picture =
      new ReadOnlyObjectWrapper<>(this, "picture");

  public ChoosingModel(Desk desk) {
    this.desk = desk;
    desk.drill()
        .drillProperty()
        .addListener(
            (o, before, now) -> {
              desk.say("");
              update();
            });
    desk.drill().problem().addListener((o, before, now) -> desk.say(now));
    desk.look().label().addListener(o -> update());
    desk.look().closeUp().addListener(o -> update());
    pair.addListener(o -> update());
    update();
  }

  private static String relative(String major) {
    int third = Key.parse(major + " major").majorTonic() + 9;
    return Key.parse(major + " major").spell(60 + third).note() + " minor";
  }

  /** The drill in one line, to be read from afar. */
  public ReadOnlyStringProperty headline() {
    return headline.getReadOnlyProperty();
  }

  /** The joins and the pulse in one line. */
  public ReadOnlyStringProperty details() {
    return details.getReadOnlyProperty();
  }

  /** Why the joins that are taken are clean or awkward. */
  public ReadOnlyStringProperty whys() {
    return whys.getReadOnlyProperty();
  }

  /** What the signs on the neck mean, of those that are on it. */
  public ReadOnlyStringProperty legend() {
    return legend.getReadOnlyProperty();
  }

  /** Which pair of shapes the joins are of. */
  public ReadOnlyStringProperty pairText() {
    return pairText.getReadOnlyProperty();
  }

  /** Whether the chain has more than one pair. */
  public ReadOnlyBooleanProperty severalPairs() {
    return severalPairs.getReadOnlyProperty();
  }

  /** The pair whose joins are listed, counted from the lowest. */
  public ReadOnlyIntegerProperty pair() {
    return pair.getReadOnlyProperty();
  }

  /** The joins of that pair, cleanest first. */
  public ReadOnlyObjectProperty<List<Row>> rows() {
    return rows.getReadOnlyProperty();
  }

  /** What is on the neck. */
  public ReadOnlyObjectProperty<NeckPicture> picture() {
    return picture.getReadOnlyProperty();
  }

  /** Lists the joins of the next pair, or of the first after the last. */
  public void nextPair() {
    int pairs = desk.drill().pairs().size();
    pair.set(pairs == 0 ? 0 : (pair.get() + 1) % pairs);
  }

  /** Takes a join of the listed pair. */
  public void take(Direction direction, Join join) {
    desk.drill().join(pair.get(), direction, join);
  }

  /** Takes a join of any pair, and lists that pair's. */
  public void take(Direction direction, NeckPicture.Bridge bridge) {
    pair.set(bridge.pair());
    take(direction, bridge.join());
  }

  /** Goes along the list of joins. */
  public void takeBy(Direction direction, int ranks) {
    desk.drill().joinBy(pair.get(), direction, ranks);
  }

  /** Begins the chain at a stand; the chain stays as long as it is, or as it fits there. */
  public void stand(NeckPicture.Mark mark) {
    int wanted = desk.drill().drill().shapes().size();
    for (int count = wanted; count >= 1; count--) {
      if (desk.drill().shapes(chain(mark.shape(), count), mark.start())) {
        if (count < wanted) {
          desk.say(Texts.of("choosing.shorter", Texts.number(count)));
        }
        return;
      }
    }
  }

  /** Goes to the next stand up or down the neck. */
  public void standBy(int stands) {
    List<NeckPicture.Mark> marks =
        new NeckPainter(desk.drill(), desk.look().label().get()).picture(false, 0).marks();
    PlayableDrill d = desk.drill().drill();
    for (int i = 0; i < marks.size(); i++) {
      NeckPicture.Mark mark = marks.get(i);
      if (mark.shape() == d.shapes().get(0) && mark.start() == d.start()) {
        int next = i + stands;
        if (next >= 0 && next < marks.size()) {
          stand(marks.get(next));
        }
        return;
      }
    }
  }

  /** Makes the chain longer or shorter at its upper end. */
  public void count(int shapes) {
    desk.drill()
        .shapes(chain(desk.drill().drill().shapes().get(0), shapes), desk.drill().drill().start());
  }

  private static List<Shape> chain(Shape lowest, int count) {
    List<Shape> chain = new ArrayList<>();
    Shape shape = lowest;
    for (int i = 0; i < count; i++) {
      chain.add(shape);
      shape = shape.next();
    }
    return chain;
  }

  private void update() {
    PlayableDrill d = desk.drill().drill();
    int pairs = d.shapes().size() - 1;
    if (pair.get() >= Math.max(1, pairs)) {
      pair.set(0);
      return;
    }
    severalPairs.set(pairs > 1);
    headline.set(DrillWords.title(d));
    details.set(joinsText(pairs) + pulseText(d));
    pairText.set(
        pairs == 0
            ? Texts.of("choosing.no-joins")
            : Texts.of(
                "choosing.pair",
                d.shapes().get(pair.get()).number(),
                d.shapes().get(pair.get() + 1).number()));
    rows.set(pairs == 0 ? List.of() : rowsOf(pair.get()));
    whys.set(pairs == 0 ? "" : whysOf(pair.get()));
    picture.set(
        new NeckPainter(desk.drill(), desk.look().label().get())
            .picture(desk.look().closeUp().get(), pair.get()));
    legend.set(legendOf(picture.get()));
  }

  private String legendOf(NeckPicture shown) {
    List<String> signs = new ArrayList<>();
    signs.add(Texts.of("choosing.legend.root", desk.drill().drill().key().tonicName()));
    shown.dots().stream()
        .map(NeckPicture.Dot::label)
        .filter(label -> label.contains(NeckPainter.BOTH))
        .findFirst()
        .map(label -> label.split(NeckPainter.BOTH))
        .ifPresent(two -> signs.add(Texts.of("choosing.legend.double.finger", two[0], two[1])));
    signs.add(Texts.of("choosing.legend.hand"));
    return String.join(" ", signs);
  }

  private String joinsText(int pairs) {
    if (pairs == 0) {
      return "";
    }
    List<String> up = new ArrayList<>();
    List<String> down = new ArrayList<>();
    for (int i = 0; i < pairs; i++) {
      up.add(desk.drill().join(i, Direction.UP).string().toString());
      down.add(0, desk.drill().join(i, Direction.DOWN).string().toString());
    }
    return Texts.of("choosing.joins", String.join(", ", up), String.join(", ", down)) + "   ";
  }

  private static String pulseText(PlayableDrill d) {
    String pulse = feelText(d.pulse());
    return d.rounds() == 1 ? pulse : pulse + "   " + Texts.of("choosing.rounds", d.rounds());
  }

  private static String feelText(Pulse pulse) {
    String said = Texts.of("choosing.pulse", Texts.number(pulse.notesPerBeat()));
    if (pulse.swing() > Pulse.STRAIGHT) {
      long first = Math.round(100 * pulse.swing());
      said = Texts.of("choosing.pulse.swung", said, first, 100 - first);
    }
    return pulse.offsetBeats() == 0
        ? said
        : Texts.of("choosing.pulse.later", said, NumberText.written(pulse.offsetBeats(), 2));
  }

  private List<Row> rowsOf(int of) {
    Join up = desk.drill().join(of, Direction.UP);
    Join down = desk.drill().join(of, Direction.DOWN);
    return desk.drill().pairs().get(of).stream()
        .map(join -> new Row(join, text(join), join.equals(up), join.equals(down)))
        .toList();
  }

  private String whysOf(int of) {
    Join up = desk.drill().join(of, Direction.UP);
    Join down = desk.drill().join(of, Direction.DOWN);
    if (up.equals(down)) {
      return Texts.of("choosing.why-both", up.why());
    }
    return Texts.of("choosing.why-up", up.why()) + "\n" + Texts.of("choosing.why-down", down.why());
  }

  /** String, finger and travel of a join in a line. */
  static String text(Join join) {
    return Texts.of(
        join.lead() == Join.Lead.CHANGE ? "join.change" : "join.led",
        join.string(),
        Texts.ordinal(join.finger()),
        Texts.ordinal(Math.max(1, join.downFinger())),
        join.travel());
  }

  /** What stands on a bridge, in full or only its way and finger. */
  static String onBridge(NeckPicture.Bridge bridge, boolean brief) {
    Join join = bridge.join();
    String finger = Texts.of("short." + join.finger());
    boolean change = join.lead() == Join.Lead.CHANGE;
    String how = brief ? finger : Texts.of(change ? "bridge.change" : "bridge.led", finger);
    return switch (bridge.taken().size()) {
      case 1 -> Texts.of(bridge.taken().get(0) == Direction.UP ? "way.up" : "way.down", how);
      default -> how;
    };
  }
}
