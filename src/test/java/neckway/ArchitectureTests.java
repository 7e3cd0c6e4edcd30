package neckway;

import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.neck.RouteBuilder;
import neckway.sound.Capture;
import org.junit.jupiter.api.Test;

/**
 * The arrows between the rooms of the house. They point one way, so that what is heard live and
 * what is heard from a file is one stream, and the ear can never be told what to hear. An arrow
 * that is not used is not allowed.
 */
class ArchitectureTests {
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("neckway");

  /** What a room may know besides itself, and why no more. */
  private record Room(Set<String> mayKnow, String because) {}

  /** From what knows least to what knows most. */
  private static final Map<String, Room> ROOMS = new LinkedHashMap<>();

  private static void room(String name, String mayKnow, String because) {
    Set<String> known =
        Stream.of(mayKnow.split(" ")).filter(r -> !r.isEmpty()).collect(Collectors.toSet());
    ROOMS.put(name, new Room(known, because));
  }

  static {
    room("words", "", "a sentence is looked up by its name, whatever it is of");
    room("neck", "", "the fingerboard is what all others speak of");
    room("drill", "neck", "what is to be played does not depend on who listens or plays");
    room("hear", "", "an ear that knows the route would hear the route");
    room(
        "follow", "neck drill hear", "which step a note was comes of order and pitch, not strings");
    room("string", "neck hear", "which string a note was on is in its sound, not in the route");
    room("hand", "neck drill hear follow string", "the hand is found from steps and strings");
    room("calibration", "neck hear string", "a guitar is learnt without a drill");
    room(
        "review",
        "words neck drill hear follow hand",
        "what came of a take is gathered, not heard again");
    room(
        "run",
        "neck drill hear follow string hand review",
        "one take goes through all of it, whoever feeds");
    room(
        "page",
        "neck drill hear follow hand review",
        "what stands on the page is the same on every screen");
    room("sheet", "neck drill", "a drill on paper does not depend on who has played it");
    room(
        "report",
        "words neck drill follow hand review page sheet",
        "what is handed back needs no file and no device to be written");
    room(
        "player",
        "neck drill",
        "whoever judges a take must not see how it was made, and the player not how it is judged");
    room("sound", "neck hear", "a device knows samples only");
    room(
        "band", "neck drill sound", "what is played under a player does not depend on who listens");
    room(
        "practice",
        "words neck drill hear hand review",
        "what is open and what comes next follows from what was played, wherever that is kept");
    room(
        "calls",
        "words neck drill hear follow review practice",
        "what is called follows from the drill, the states and a seed alone");
    room(
        "file",
        "words neck drill hear follow string hand review practice calls player",
        "files are read and written, never heard or judged, here");
    room(
        "log",
        "neck drill follow hand review practice calls file",
        "runs are stored and given back, never heard or judged, here");
    room(
        "live",
        "neck drill hear follow string hand review run sound file",
        "a live run prints nothing and draws nothing");
    room(
        "recording",
        "neck drill hear string review run file",
        "a recording is read to its end, whoever shows what came of it");
    room(
        "folder",
        "neck drill review report sound file recording",
        "many recordings are each reviewed as one is");
    room(
        "desk",
        "words neck drill hear follow string hand calibration review run page report calls player sound band"
            + " file log live recording folder practice",
        "nothing but the command that opens it knows the window");
    room(
        "cli",
        "words neck drill hear follow string hand calibration review run page report practice calls player"
            + " sound band sheet file log live recording folder desk",
        "nobody knows the commands");
  }

  private static final Set<String> TOUCH_THE_MACHINE =
      Set.of("sound", "band", "sheet", "file", "log", "live", "recording", "folder", "desk", "cli");

  @Test
  void everyClassIsInARoom() {
    for (JavaClass each : CLASSES) {
      assertThat(ROOMS).as(each.getName()).containsKey(room(each));
    }
  }

  @Test
  void arrowsAreThoseThatAreAllowedAndEachIsUsed() {
    Set<String> used = new TreeSet<>();
    Map<String, String> examples = new TreeMap<>();
    for (JavaClass from : CLASSES) {
      from.getDirectDependenciesFromSelf().stream()
          .map(d -> d.getTargetClass().getBaseComponentType())
          .filter(to -> to.getPackageName().startsWith("neckway") && !room(to).equals(room(from)))
          .forEach(
              to -> {
                String arrow = room(from) + " -> " + room(to);
                used.add(arrow);
                examples.put(arrow, from.getName() + " knows " + to.getName());
              });
    }
    Set<String> allowed = new TreeSet<>();
    ROOMS.forEach((name, room) -> room.mayKnow().forEach(to -> allowed.add(name + " -> " + to)));
    List<String> wrong = new ArrayList<>();
    used.stream()
        .filter(arrow -> !allowed.contains(arrow))
        .map(arrow -> arrow + " (" + examples.get(arrow) + "), but " + because(arrow))
        .forEach(wrong::add);
    allowed.stream()
        .filter(arrow -> !used.contains(arrow))
        .map(arrow -> arrow + " is allowed and not used")
        .forEach(wrong::add);
    assertThat(wrong).isEmpty();
  }

  private static String because(String arrow) {
    return ROOMS.get(arrow.replaceFirst(" .*", "")).because();
  }

  @Test
  void arrowsPointOneWay() {
    Set<String> before = new TreeSet<>();
    ROOMS.forEach(
        (name, room) -> {
          assertThat(before).as("rooms that neckway.%s may know", name).containsAll(room.mayKnow());
          before.add(name);
        });
  }

  @Test
  void aDrillIsResolvedInOnePlace() {
    noClasses()
        .that()
        .areNotAssignableTo(PlayableDrill.class)
        .and()
        .haveSimpleNameNotStartingWith("MapCommand")
        .and()
        .areNotAssignableTo(RouteBuilder.class)
        .should()
        .callMethodWhere(
            target(owner(assignableTo(RouteBuilder.class))).and(target(nameMatching("build"))))
        .because(
            "a route is built once, and the drill that has it is handed on; a map has no drill")
        .check(CLASSES);
    noClasses()
        .that()
        .areNotAssignableTo(Drill.class)
        .and()
        .areNotAssignableTo(PlayableDrill.class)
        .should()
        .callConstructorWhere(target(owner(assignableTo(PlayableDrill.class))))
        .because("a drill is resolved by Drill.playable alone; one that is called is a copy")
        .check(CLASSES);
  }

  @Test
  void soundIsTakenFromADeviceInOnePlace() {
    noClasses()
        .that()
        .resideOutsideOfPackage("neckway.sound")
        .or()
        .haveSimpleNameNotStartingWith("Pump")
        .should()
        .callMethodWhere(
            target(owner(assignableTo(Capture.class))).and(target(nameMatching("read"))))
        .because("whoever listens must not poll, and must not wait for a device that is gone")
        .check(CLASSES);
  }

  @Test
  void thereIsNoCycleNotEvenWithinARoom() {
    slices()
        .matching("neckway.(**)")
        .should()
        .beFreeOfCycles()
        .because("a room inside another is there to be read by itself")
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
    for (String room : ROOMS.keySet()) {
      if (TOUCH_THE_MACHINE.contains(room)) {
        continue;
      }
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
}
