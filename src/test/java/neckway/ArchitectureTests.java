package neckway;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The arrows between the rooms of the house. They point one way, so that what is heard live and
 * what is heard from a file is one stream, and the ear can never be told what to hear. The virtual
 * player is known only to those who read its mistakes, write its truth and run it: whoever judges a
 * take must not see how it was made.
 */
class ArchitectureTests {
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("neckway");

  /** What each room may know besides itself. */
  private static final Map<String, List<String>> MAY_KNOW =
      Map.of(
          "neck", List.of(),
          "hear", List.of("neck"),
          "place", List.of("neck", "hear"),
          "follow", List.of("neck", "hear", "place"),
          "player", List.of("neck", "follow"),
          "sound", List.of("neck", "hear", "place", "follow"),
          "file", List.of("neck", "hear", "place", "follow", "player"),
          "live", List.of("neck", "hear", "place", "follow", "sound", "file"),
          "desk", List.of("neck", "hear", "place", "follow", "player", "sound", "file", "live"),
          "cli",
              List.of(
                  "neck", "hear", "place", "follow", "player", "sound", "file", "live", "desk"));

  private static final List<String> PURE = List.of("neck", "hear", "place", "follow", "player");

  @Test
  void everyClassIsInARoom() {
    for (JavaClass each : CLASSES) {
      assertThat(MAY_KNOW).as(each.getName()).containsKey(room(each));
    }
  }

  @Test
  void arrowsPointOneWay() {
    MAY_KNOW.forEach(
        (room, others) ->
            noClasses()
                .that()
                .resideInAPackage("neckway." + room + "..")
                .should()
                .dependOnClassesThat(isInAnotherRoomThan(room, others))
                .because(
                    "neckway."
                        + room
                        + " may know "
                        + (others.isEmpty() ? "no other room" : others)
                        + ": what lies deeper must work, and be tested, without what stands on it")
                .check(CLASSES));
  }

  @Test
  void thereIsNoCycle() {
    slices()
        .matching("neckway.(*)..")
        .should()
        .beFreeOfCycles()
        .because("rooms that need each other are one room")
        .check(CLASSES);
  }

  @Test
  void theViewsOfTheWindowAreFreeOfCycles() {
    slices()
        .matching("neckway.desk.(**)")
        .should()
        .beFreeOfCycles()
        .because("choosing, playing and reading meet in the application only")
        .check(CLASSES);
    noClasses()
        .that()
        .resideInAPackage("neckway.desk")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("neckway.desk.*..")
        .because("what the views share knows none of them")
        .check(CLASSES);
  }

  @Test
  void whatDecidesInTheWindowNeedsNoScreen() {
    noClasses()
        .that()
        .resideInAPackage("neckway.desk..")
        .and()
        .haveSimpleNameEndingWith("Model")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("javafx.scene..", "javafx.stage..", "javafx.application..")
        .because("view models decide and are tested without a screen; views only bind")
        .check(CLASSES);
  }

  @Test
  void thePureRoomsTouchNoDeviceNoFileAndNoWindow() {
    for (String room : PURE) {
      noClasses()
          .that()
          .resideInAPackage("neckway." + room + "..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "javax.sound..", "javafx..", "java.awt..", "java.nio.file..", "java.net..")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.io.File")
          .because(
              "a verdict depends on samples and frame numbers alone, so that a saved take reviewed"
                  + " again gives the same verdicts")
          .check(CLASSES);
    }
  }

  private static String room(JavaClass each) {
    return each.getPackageName().replaceFirst("^neckway\\.?", "").replaceFirst("\\..*", "");
  }

  private static DescribedPredicate<JavaClass> isInAnotherRoomThan(
      String room, List<String> others) {
    return DescribedPredicate.describe(
        "lie in a room that neckway." + room + " may not know",
        each ->
            each.getPackageName().startsWith("neckway")
                && !room(each).equals(room)
                && !others.contains(room(each)));
  }
}
