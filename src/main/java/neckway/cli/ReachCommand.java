package neckway.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.HelpOption;
import neckway.cli.option.JsonOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.option.ReachOptions;
import neckway.cli.text.ReachText;
import neckway.cli.text.TerminalWidth;
import neckway.file.JsonFile;
import neckway.file.OutputFiles;
import neckway.file.ReachFile;
import neckway.neck.Key;
import neckway.practice.Reach;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows what is open of the neck. */
@Command(name = "reach")
final class ReachCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private ReachOptions options = new ReachOptions();
  @Mixin private JsonOption json = new JsonOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Option(names = "--key", paramLabel = "KEY")
  private String key;

  @Override
  public Integer call() {
    overwrite.files().writes("--json", json.file(), OutputFiles.Kind.REACH);
    List<Reach> reaches = reaches();
    JsonNode all = toJson(reaches);
    PrintWriter out = spec.commandLine().getOut();
    if (json.toStandardOutput()) {
      out.print(JsonFile.text(all));
      return 0;
    }
    int width = TerminalWidth.columns();
    if (reaches.isEmpty()) {
      ReachText.nothing(width).forEach(out::println);
    }
    for (int i = 0; i < reaches.size(); i++) {
      if (i > 0) {
        out.println();
      }
      ReachText.of(reaches.get(i), width).forEach(out::println);
    }
    json.file().ifPresent(file -> JsonFile.write(file, all));
    return 0;
  }

  /** One key as an object, several as a list of them. */
  private static JsonNode toJson(List<Reach> reaches) {
    if (reaches.size() == 1) {
      return ReachFile.toJson(reaches.get(0));
    }
    ArrayNode list = JsonNodeFactory.instance.arrayNode();
    reaches.forEach(reach -> list.add(ReachFile.toJson(reach)));
    return list;
  }

  private List<Reach> reaches() {
    List<Key> named =
        key == null ? List.of() : List.of(DrillOptions.option("--key", key, Key::parse));
    return options.of(
        played -> named.isEmpty() ? played : named,
        line -> spec.commandLine().getErr().println("neckway: " + line));
  }
}
