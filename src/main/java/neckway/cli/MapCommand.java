package neckway.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.HelpOption;
import neckway.cli.option.JsonOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.option.TuningOption;
import neckway.cli.text.Handed;
import neckway.cli.text.MapText;
import neckway.cli.text.TabText;
import neckway.cli.text.TerminalWidth;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.file.AtomicFile;
import neckway.file.DrillFile;
import neckway.file.JsonFile;
import neckway.file.MapFile;
import neckway.file.OutputFiles;
import neckway.file.WriteFault;
import neckway.neck.BadInput;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.NeckMap;
import neckway.neck.Shape;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows where the shapes of a key lie and how the hand goes from one to the next. */
@Command(name = "map")
final class MapCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private TuningOption tuningOption = new TuningOption();
  @Mixin private HelpOption help;
  @Mixin private JsonOption json = new JsonOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Option(names = "--key", required = true, paramLabel = "KEY")
  private String key;

  @Option(names = "--frets", paramLabel = "NUMBER")
  private int frets = Neck.USUAL_FRETS;

  @Option(names = "--shapes", paramLabel = "NAMES")
  private String shapes;

  @Option(names = "--start", paramLabel = "FRET")
  private Integer start;

  @Option(names = "--up", paramLabel = "STRINGS")
  private String up;

  @Option(names = "--down", paramLabel = "STRINGS")
  private String down;

  @Option(names = "--save", paramLabel = "FILE")
  private Path save;

  @Option(names = "--left")
  private boolean left;

  @Override
  public Integer call() {
    overwrite
        .files()
        .writes("--json", json.file(), OutputFiles.Kind.MAP)
        .writes("--save", Optional.ofNullable(save), OutputFiles.Kind.DRILL);
    Neck neck =
        new Neck(DrillOptions.option("--key", key, Key::parse), tuningOption.tuning(), frets);
    NeckMap map = map(neck);
    int width = TerminalWidth.columns();
    List<String> text = new ArrayList<>(MapText.of(map, width, left ? Handed.LEFT : Handed.RIGHT));
    Optional<PlayableDrill> drill = map.chain() ? Optional.of(drill(neck)) : Optional.empty();
    drill.ifPresent(chain -> text.addAll(TabText.of(neck, chain.route(), width)));
    write(map, drill);
    if (json.toStandardOutput()) {
      spec.commandLine().getOut().print(JsonFile.text(MapFile.toJson(map)));
      return 0;
    }
    if (save != null) {
      text.addAll(List.of("", Wording.of("terminal.map.saved", save)));
    }
    text.forEach(spec.commandLine().getOut()::println);
    return 0;
  }

  /** Map and drill, both or neither: each is written beside its target, then moved into place. */
  private void write(NeckMap map, Optional<PlayableDrill> drill) {
    Path mapFile = json.file().orElse(null);
    try (AtomicFile mapTo = mapFile == null ? null : AtomicFile.beside(mapFile);
        AtomicFile drillTo = save == null ? null : AtomicFile.beside(save)) {
      if (mapTo != null) {
        mapTo.stream().write(bytes(MapFile.toJson(map)));
      }
      if (drillTo != null) {
        drillTo.stream().write(bytes(DrillFile.toJson(drill.orElseThrow())));
        drillTo.commit();
      }
      if (mapTo != null) {
        mapTo.commit();
      }
    } catch (IOException e) {
      String files =
          Wording.list(
              Stream.of(mapFile, save).filter(Objects::nonNull).map(Path::toString).toList());
      throw new BadInput(files + ": " + WriteFault.words(e), e);
    }
  }

  private static byte[] bytes(ObjectNode node) {
    return JsonFile.text(node).getBytes(StandardCharsets.UTF_8);
  }

  private NeckMap map(Neck neck) {
    if (shapes != null) {
      List<Shape> chain = DrillOptions.option("--shapes", shapes, DrillOptions::shapeList);
      return NeckMap.ofChain(neck, chain, start());
    }
    if (start != null || up != null || down != null || save != null) {
      String given =
          start != null ? "--start" : up != null ? "--up" : down != null ? "--down" : "--save";
      throw new BadInput(Wording.of("terminal.map.needsShapes", given));
    }
    return NeckMap.ofAll(neck);
  }

  private PlayableDrill drill(Neck neck) {
    return new Drill(
            Optional.empty(),
            neck.tuning(),
            neck.frets(),
            neck.key(),
            DrillOptions.shapeList(shapes),
            start(),
            joins("--up", up),
            joins("--down", down),
            1,
            Drill.USUAL_PULSE)
        .playable();
  }

  private OptionalInt start() {
    return start == null ? OptionalInt.empty() : OptionalInt.of(start);
  }

  private static List<JoinChoice> joins(String name, String given) {
    return given == null ? List.of() : DrillOptions.option(name, given, DrillOptions::joinList);
  }
}
