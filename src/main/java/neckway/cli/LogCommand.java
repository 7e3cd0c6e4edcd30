package neckway.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import neckway.cli.option.DataOption;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.HelpOption;
import neckway.cli.option.JsonOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.text.Page;
import neckway.cli.text.Wrapped;
import neckway.file.JsonFile;
import neckway.file.OutputFiles;
import neckway.file.ReviewReader;
import neckway.log.RunLog;
import neckway.log.RunSummary;
import neckway.log.RunTransfer;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lists the runs that were kept, and takes them in and out. */
@Command(
    name = "log",
    synopsisSubcommandLabel = "[COMMAND]",
    subcommands = {
      LogCommand.Show.class,
      LogCommand.Export.class,
      LogCommand.Import.class,
      LogCommand.Remove.class,
      LogCommand.Check.class
    })
final class LogCommand implements Callable<Integer> {
  private static final int MOST_LISTED = 20;

  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private DataOption data = new DataOption();
  @Mixin private JsonOption json = new JsonOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Option(names = "--last", paramLabel = "NUMBER")
  private Integer last;

  @Option(names = "--key", paramLabel = "KEY")
  private String key;

  @Override
  public Integer call() {
    overwrite.files().writes("--json", json.file(), OutputFiles.Kind.LOG);
    if (last != null && last < 1) {
      throw new BadInput(Wording.of("terminal.log.last", last));
    }
    Optional<Key> of =
        Optional.ofNullable(key).map(k -> DrillOptions.option("--key", k, Key::parse));
    boolean asJson = json.toStandardOutput() || json.file().isPresent();
    int most = last == null ? asJson ? Integer.MAX_VALUE : MOST_LISTED : last;
    List<RunLog.Listed> runs = listed(of, most);
    PrintWriter out = spec.commandLine().getOut();
    if (json.toStandardOutput()) {
      out.print(JsonFile.text(toJson(runs)));
      return 0;
    }
    runs.forEach(run -> out.println(line(run)));
    if (runs.isEmpty()) {
      Wrapped.print(out, Wording.of("terminal.log.none"));
    }
    json.file().ifPresent(file -> JsonFile.write(file, toJson(runs)));
    return 0;
  }

  private List<RunLog.Listed> listed(Optional<Key> of, int most) {
    if (!RunLog.isThere(data.folder())) {
      return List.of();
    }
    try (RunLog log = data.open(complaints(spec))) {
      return log.list(new RunLog.Wanted(of, data.player()), most);
    }
  }

  private static Consumer<String> complaints(CommandSpec spec) {
    return line -> spec.commandLine().getErr().println("neckway: " + line);
  }

  private static String line(RunLog.Listed run) {
    RunSummary said = run.said();
    if (said.key().isEmpty()) {
      return Wording.of("terminal.log.warmUp", day(run), run.id());
    }
    return Wording.of(
        "terminal.log.run",
        day(run),
        String.format("%-9s", said.key()),
        String.format("%-24s", said.shapes()),
        String.format("%3.0f", said.tempo()),
        said.summary().right(),
        said.summary().notes(),
        said.cleanRounds(),
        said.rounds(),
        run.id());
  }

  private static String day(RunLog.Listed run) {
    return DateTimeFormatter.ofPattern(Wording.of("terminal.log.day"), Locale.ROOT)
        .format(run.when());
  }

  private static ObjectNode toJson(List<RunLog.Listed> runs) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", "neckway-log/1");
    ArrayNode list = json.putArray("runs");
    for (RunLog.Listed run : runs) {
      RunSummary said = run.said();
      ObjectNode one = list.addObject();
      one.put("id", run.id());
      one.put("when", DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(run.when()));
      one.put("key", said.key());
      one.put("shapes", said.shapes());
      one.put("up", said.up());
      one.put("down", said.down());
      one.put("tempo", said.tempo());
      one.put("notesPerBeat", said.notesPerBeat());
      one.put("rounds", said.rounds());
      one.put("cleanRounds", said.cleanRounds());
      one.put("notes", said.summary().notes());
      one.put("right", said.summary().right());
      said.summary().swing().ifPresent(share -> one.put("swing", share));
    }
    return json;
  }

  /** Opens a log that must be there. */
  private static RunLog existing(DataOption data, CommandSpec spec) {
    if (!RunLog.isThere(data.folder())) {
      throw new BadInput(Wording.of("terminal.log.notThere", data.folder()));
    }
    return data.open(complaints(spec));
  }

  /** Shows one run. */
  @Command(name = "show")
  static final class Show implements Callable<Integer> {
    @Spec private CommandSpec spec;
    @Mixin private HelpOption help;
    @Mixin private DataOption data = new DataOption();

    @Parameters(paramLabel = "ID")
    private String id;

    @Override
    public Integer call() {
      try (RunLog log = existing(data, spec)) {
        PrintWriter out = spec.commandLine().getOut();
        if (log.line(id).isEmpty()) {
          throw new BadInput(Wording.of("terminal.log.noId", id));
        }
        Optional<ReviewReader.DrillReviewed> read = log.review(id);
        if (read.isEmpty()) {
          out.println(Wording.of("terminal.log.noReview"));
          return 0;
        }
        out.println(read.get().drill().spokenTitle());
        read.get().review().summary().words().forEach(words -> Wrapped.print(out, words));
        out.println();
        new Page(read.get().drill(), read.get().review()).print(out);
        return 0;
      }
    }
  }

  /** Takes all runs out into files. */
  @Command(name = "export")
  static final class Export implements Callable<Integer> {
    @Spec private CommandSpec spec;
    @Mixin private HelpOption help;
    @Mixin private DataOption data = new DataOption();

    @Parameters(paramLabel = "DIR")
    private Path folder;

    @Override
    public Integer call() {
      try (RunLog log = existing(data, spec)) {
        List<String> damaged = new ArrayList<>();
        int written = new RunTransfer(log).export(folder, damaged::add);
        spec.commandLine()
            .getOut()
            .println(Wording.counted("terminal.log.exported", written, written, folder));
        for (String id : damaged) {
          complaints(spec).accept(Wording.of("terminal.log.damaged", id));
        }
        return damaged.isEmpty() ? 0 : Complaints.UNUSABLE;
      }
    }
  }

  /** Takes runs in. */
  @Command(name = "import")
  static final class Import implements Callable<Integer> {
    private static final long PROGRESS_EVERY = 500;

    @Spec private CommandSpec spec;
    @Mixin private HelpOption help;
    @Mixin private DataOption data = new DataOption();

    @Parameters(paramLabel = "PATH", arity = "1..*")
    private List<Path> paths;

    @Override
    public Integer call() {
      PrintWriter out = spec.commandLine().getOut();
      PrintWriter err = spec.commandLine().getErr();
      try (RunLog log = data.open(complaints(spec))) {
        RunTransfer.Imported imported =
            new RunTransfer(log)
                .take(
                    paths,
                    new RunTransfer.Listener() {
                      @Override
                      public void stored(String id) {
                        out.println(id);
                      }

                      @Override
                      public void unusable(String line) {
                        err.println("neckway: " + line);
                      }

                      @Override
                      public void looked(long runs) {
                        if (runs % PROGRESS_EVERY == 0) {
                          err.println(Wording.of("terminal.log.looked", runs));
                        }
                      }
                    });
        out.println(Wording.of("terminal.log.imported", imported.kept(), imported.passedOver()));
        return imported.unusable() == 0 ? 0 : Complaints.UNUSABLE;
      }
    }
  }

  /** Removes runs. */
  @Command(name = "remove")
  static final class Remove implements Callable<Integer> {
    @Spec private CommandSpec spec;
    @Mixin private HelpOption help;
    @Mixin private DataOption data = new DataOption();

    @Parameters(paramLabel = "ID", arity = "0..*")
    private List<String> ids = List.of();

    @Option(names = "--all")
    private boolean all;

    @Override
    public Integer call() {
      if (all != ids.isEmpty()) {
        throw new BadInput(Wording.of("terminal.log.removeWhat"));
      }
      try (RunLog log = existing(data, spec)) {
        if (!all) {
          for (String id : ids) {
            if (log.line(id).isEmpty()) {
              throw new BadInput(Wording.of("terminal.log.noIdToRemove", id));
            }
          }
        }
        int removed = all ? log.removeAll() : log.remove(ids);
        spec.commandLine()
            .getOut()
            .println(Wording.counted("terminal.log.removed", removed, removed));
        return 0;
      }
    }
  }

  /** Checks the log. */
  @Command(name = "check")
  static final class Check implements Callable<Integer> {
    @Spec private CommandSpec spec;
    @Mixin private HelpOption help;
    @Mixin private DataOption data = new DataOption();

    @Override
    public Integer call() {
      try (RunLog log = existing(data, spec)) {
        List<String> wrong = log.check();
        int runs = log.count();
        PrintWriter out = spec.commandLine().getOut();
        wrong.forEach(out::println);
        if (wrong.isEmpty()) {
          out.println(Wording.of("terminal.log.sound", runs, log.file()));
        }
        return wrong.isEmpty() ? 0 : Complaints.UNUSABLE;
      }
    }
  }
}
