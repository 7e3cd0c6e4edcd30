package neckway.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.HelpOption;
import neckway.cli.option.TuningOption;
import neckway.cli.text.MapText;
import neckway.cli.text.TabText;
import neckway.file.JsonFile;
import neckway.file.MapFile;
import neckway.neck.BadInput;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.NeckMap;
import neckway.neck.Route;
import neckway.neck.RouteBuilder;
import neckway.neck.Shape;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows where the shapes of a key lie and how the hand goes from one to the next. */
@Command(
    name = "map",
    description =
        "Shows the shapes of a key on the neck with the fingers that play them, and every place"
            + " where two neighbours can be joined. With --shapes it shows that chain and the route"
            + " through it as tab.")
final class MapCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private TuningOption tuningOption = new TuningOption();
  @Mixin private HelpOption help;

  @Option(
      names = "--key",
      required = true,
      paramLabel = "KEY",
      description = "The key, such as \"A major\" or \"F# minor\".")
  private String key;

  @Option(
      names = "--frets",
      paramLabel = "NUMBER",
      description = "How many frets the neck has, 12 to 24. Left out: 22.")
  private int frets = Neck.USUAL_FRETS;

  @Option(
      names = "--shapes",
      paramLabel = "NAMES",
      description =
          "A chain of one to five neighbours, low to high, such as major,dorian. Left out: all"
              + " five, each in its lowest place.")
  private String shapes;

  @Option(
      names = "--start",
      paramLabel = "FRET",
      description = "Fret of the first shape's first note on the lowest string.")
  private Integer start;

  @Option(
      names = "--up",
      paramLabel = "STRINGS",
      description = "The strings of the joins going up in the tab, such as 3 or 4,2 or 3/1.")
  private String up;

  @Option(
      names = "--down",
      paramLabel = "STRINGS",
      description = "The strings of the joins coming down in the tab.")
  private String down;

  @Option(
      names = "--json",
      paramLabel = "FILE",
      description = "Writes the map as neckway-map/1 as well; - writes it here and nothing else.")
  private String json;

  @Override
  public Integer call() {
    Neck neck =
        new Neck(DrillOptions.option("--key", key, Key::parse), tuningOption.tuning(), frets);
    NeckMap map = map(neck);
    List<String> text = new ArrayList<>(MapText.of(map));
    if (map.chain()) {
      text.addAll(TabText.of(neck, route(neck, map)));
    }
    if ("-".equals(json)) {
      spec.commandLine().getOut().print(JsonFile.text(MapFile.toJson(map)));
      return 0;
    }
    if (json != null) {
      JsonFile.write(Path.of(json), MapFile.toJson(map));
    }
    text.forEach(spec.commandLine().getOut()::println);
    return 0;
  }

  private NeckMap map(Neck neck) {
    if (shapes != null) {
      List<Shape> chain = DrillOptions.option("--shapes", shapes, DrillOptions::shapeList);
      return NeckMap.ofChain(neck, chain, start());
    }
    if (start != null || up != null || down != null) {
      String given = start != null ? "--start" : up != null ? "--up" : "--down";
      throw new BadInput(given + " needs --shapes: say which chain, such as --shapes major,dorian");
    }
    return NeckMap.ofAll(neck);
  }

  private Route route(Neck neck, NeckMap map) {
    return RouteBuilder.build(neck, map.shapes(), joins("--up", up), joins("--down", down), 1);
  }

  private OptionalInt start() {
    return start == null ? OptionalInt.empty() : OptionalInt.of(start);
  }

  private static List<JoinChoice> joins(String name, String given) {
    return given == null ? List.of() : DrillOptions.option(name, given, DrillOptions::joinList);
  }
}
