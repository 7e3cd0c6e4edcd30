package neckway.desk.first;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import neckway.desk.Desk;
import neckway.desk.DrillWords;
import neckway.desk.Texts;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;
import neckway.neck.Tuning;

/**
 * The questions of the first start. Each answer is taken at once; what is skipped stays as usual.
 * At the end a first drill is chosen.
 */
public final class FirstModel {
  /** In the order in which they are asked. */
  public enum Question {
    GUITAR,
    SHAPES,
    NECK
  }

  /** The key whose shapes most players meet first (common practice, no source). */
  private static final Key FIRST_KEY = Key.parse("A minor");

  /** Slow enough for a first run, beats a minute (common practice, no source). */
  private static final double FIRST_TEMPO = 60;

  private final Desk desk;
  private final Runnable done;
  private final ReadOnlyObjectWrapper<Question> question =
      new ReadOnlyObjectWrapper<>(this, "question", Question.GUITAR);
  private final Set<Shape> known = EnumSet.noneOf(Shape.class);
  private Optional<Boolean> guitar = Optional.empty();

  /**
   * @param done told when the last question is answered or all are skipped
   */
  public FirstModel(Desk desk, Runnable done) {
    this.desk = desk;
    this.done = done;
  }

  /** What is asked now. */
  public ReadOnlyObjectProperty<Question> question() {
    return question.getReadOnlyProperty();
  }

  /** Whether there is a guitar, or one is only looking. */
  public void guitar(boolean here) {
    guitar = Optional.of(here);
    next();
  }

  /** The shapes that are known already; none is an answer too. */
  public void known(Collection<Shape> shapes) {
    known.clear();
    known.addAll(shapes);
    next();
  }

  /** How the neck is looked at. */
  public void neck(boolean leftHanded, boolean lowStringOnTop) {
    desk.look().leftHanded().set(leftHanded);
    desk.look().lowStringOnTop().set(lowStringOnTop);
    next();
  }

  /** Leaves this question without an answer. */
  public void skip() {
    next();
  }

  /** Leaves all that are left. */
  public void skipAll() {
    end();
  }

  private void next() {
    int following = question.get().ordinal() + 1;
    if (following < Question.values().length) {
      question.set(Question.values()[following]);
    } else {
      end();
    }
  }

  private void end() {
    List<Shape> shapes = firstShapes(known);
    desk.drill().use(drill(shapes));
    done.run();
    boolean looking = guitar.filter(here -> !here).isPresent();
    String what =
        shapes.size() == 1
            ? Texts.of("first.drill.shape", spoken(shapes.get(0)))
            : Texts.of("first.drill.join", spoken(shapes.get(0)), spoken(shapes.get(1)));
    desk.say(what + " " + Texts.of(looking ? "first.drill.look" : "first.drill.play"));
  }

  private static String spoken(Shape shape) {
    return DrillWords.name(shape);
  }

  /**
   * What comes first: who knows two neighbours joins them, who knows one learns the next above it,
   * and who knows none begins with the minor one.
   */
  static List<Shape> firstShapes(Set<Shape> known) {
    List<Shape> order = new ArrayList<>();
    Shape shape = Shape.MINOR;
    for (int i = 0; i < Shape.values().length; i++) {
      order.add(shape);
      shape = shape.next();
    }
    for (Shape lower : order) {
      if (known.contains(lower) && known.contains(lower.next())) {
        return List.of(lower, lower.next());
      }
    }
    return order.stream()
        .filter(known::contains)
        .findFirst()
        .map(one -> List.of(one.next()))
        .orElse(List.of(Shape.MINOR));
  }

  private static PlayableDrill drill(List<Shape> shapes) {
    Pulse usual = Drill.USUAL_PULSE;
    return new Drill(
            Optional.empty(),
            Tuning.STANDARD,
            Neck.USUAL_FRETS,
            FIRST_KEY,
            shapes,
            OptionalInt.empty(),
            List.of(),
            List.of(),
            1,
            new Pulse(FIRST_TEMPO, usual.notesPerBeat(), usual.beatsPerBar(), usual.countIn()))
        .playable();
  }
}
