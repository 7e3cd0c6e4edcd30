package neckway.desk.first;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import neckway.desk.Desk;
import neckway.desk.first.FirstModel.Question;
import neckway.file.SettingsFile;
import neckway.neck.Shape;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FirstModelTests {
  @TempDir Path folder;
  private final AtomicInteger over = new AtomicInteger();
  private Desk desk;
  private FirstModel model;

  @BeforeEach
  void starts() {
    desk = new Desk(SettingsFile.at(folder.resolve("settings.json")));
    model = new FirstModel(desk, over::incrementAndGet);
  }

  @Test
  void oneQuestionAfterTheOtherAndThenTheFirstDrillIsChosen() {
    model.guitar(true);
    assertThat(model.question().get()).isEqualTo(Question.SHAPES);
    model.known(List.of(Shape.MINOR, Shape.MAJOR));
    assertThat(model.question().get()).isEqualTo(Question.NECK);
    assertThat(over).hasValue(0);
    model.neck(true, true);
    assertThat(over).hasValue(1);
    assertThat(desk.drill().drill().shapes()).containsExactly(Shape.MINOR, Shape.MAJOR);
    assertThat(desk.look().leftHanded().get()).isTrue();
    assertThat(desk.look().lowStringOnTop().get()).isTrue();
    assertThat(desk.notice().get()).contains("minor", "major", "Page Down");
  }

  @Test
  void whatIsSkippedStaysAsUsual() {
    model.skipAll();
    assertThat(over).hasValue(1);
    assertThat(desk.look().leftHanded().get()).isFalse();
    assertThat(desk.drill().drill().shapes()).containsExactly(Shape.MINOR);
  }

  @Test
  void whoOnlyLooksIsToldOfTheGuest() {
    model.guitar(false);
    model.skip();
    model.skip();
    assertThat(desk.notice().get()).contains("hear someone try it");
  }

  @Test
  void theFirstDrillFitsWhatIsKnown() {
    assertThat(FirstModel.firstShapes(Set.of())).containsExactly(Shape.MINOR);
    assertThat(FirstModel.firstShapes(Set.of(Shape.MINOR))).containsExactly(Shape.MAJOR);
    assertThat(FirstModel.firstShapes(Set.of(Shape.DORIAN, Shape.PHRYGIAN, Shape.MINOR)))
        .containsExactly(Shape.DORIAN, Shape.PHRYGIAN);
    assertThat(FirstModel.firstShapes(EnumSet.allOf(Shape.class)))
        .containsExactly(Shape.MINOR, Shape.MAJOR);
  }
}
