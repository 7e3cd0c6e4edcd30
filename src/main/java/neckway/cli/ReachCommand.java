package neckway.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import neckway.cli.option.DataOption;
import neckway.cli.option.DayOption;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.HelpOption;
import neckway.cli.option.JsonOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.option.Ranges;
import neckway.cli.option.TuningOption;
import neckway.cli.text.ReachText;
import neckway.cli.text.TerminalWidth;
import neckway.drill.Pulse;
import neckway.file.JsonFile;
import neckway.file.OutputFiles;
import neckway.file.ReachFile;
import neckway.log.RunLog;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.practice.PlayedRound;
import neckway.practice.Reach;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows what is open of the neck. */
@Command(
    name = "reach",
    description =
        "Shows what is open: every shape of a key and every join of neighbours, up and down, with"
            + " what the log says of it.")
final class ReachCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private DataOption data = new DataOption();
  @Mixin private TuningOption tuning = new TuningOption();
  @Mixin private DayOption day = new DayOption();
  @Mixin private JsonOption json = new JsonOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Option(
      names = "--key",
      paramLabel = "KEY",
      description = "The key. Left out: each key in the log.")
  private String key;

  @Option(
      names = "--target",
      paramLabel = "TEMPO",
      description = "The tempo to be reached, beats a minute of two notes. Left out: 100.")
  private double target = Reach.USUAL_TARGET;

  @Override
  public Integer call() {
    overwrite.files().writes("--json", json.file(), OutputFiles.Kind.REACH);
    Ranges.within("--target", target, Pulse.SLOWEST, Pulse.FASTEST);
    LocalDate today = day.day();
    List<Reach> reaches = reaches(today);
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

  private List<Reach> reaches(LocalDate today) {
    List<Key> named =
        key == null ? List.of() : List.of(DrillOptions.option("--key", key, Key::parse));
    if (!RunLog.isThere(data.folder())) {
      return named.stream().map(k -> reach(k, List.of(), today)).toList();
    }
    try (RunLog log = data.open(line -> spec.commandLine().getErr().println("neckway: " + line))) {
      List<Key> keys = named.isEmpty() ? log.keys(data.player()) : named;
      List<Reach> reaches = new ArrayList<>();
      for (Key each : keys) {
        reaches.add(reach(each, log.rounds(each, tuning.tuning(), data.player()), today));
      }
      return reaches;
    }
  }

  private Reach reach(Key of, List<PlayedRound> rounds, LocalDate today) {
    return Reach.of(new Neck(of, tuning.tuning(), Neck.USUAL_FRETS), rounds, target, today);
  }
}
