package neckway.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class TypeTests {
  /** Columns of figures stand under each other only where all are equally wide. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void figuresAreEquallyWideAndTheTypeIsOurs(boolean bold) {
    Font font = FxWindow.on(() -> Type.of(bold, 100));
    List<Long> widths =
        FxWindow.on(
            () ->
                IntStream.rangeClosed('0', '9')
                    .mapToObj(
                        figure -> {
                          Text text = new Text(Character.toString(figure));
                          text.setFont(font);
                          return Math.round(text.getLayoutBounds().getWidth());
                        })
                    .distinct()
                    .toList());
    assertThat(font.getFamily()).isEqualTo(Type.FAMILY);
    assertThat(font.getStyle().contains("Bold")).isEqualTo(bold);
    assertThat(widths).hasSize(1);
  }
}
