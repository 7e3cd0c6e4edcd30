package neckway.desk.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

final class FirstClassesTests {
  /** The toolkit's classes on its list are many on every system; the rest is Linux's own. */
  private static final int FEW = 20;

  @Test
  void theListNamesClassesThatAreThere() {
    List<String> names = FirstClasses.names();
    ClassLoader loader = FirstClassesTests.class.getClassLoader();

    List<String> gone = names.stream().filter(name -> !FirstClasses.ready(name, loader)).toList();

    assertThat(names).hasSizeGreaterThan(2_000).contains("neckway.desk.choose.ChoosingScreen");
    assertThat(gone).hasSizeLessThan(FEW).noneMatch(name -> name.startsWith("neckway."));
  }

  @Test
  void aNameThatIsNoClassIsPassedOver() {
    assertThat(FirstClasses.ready("neckway.NoSuchClass", getClass().getClassLoader())).isFalse();
  }
}
