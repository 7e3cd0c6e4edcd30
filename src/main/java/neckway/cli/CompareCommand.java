package neckway.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.cli.option.HelpOption;
import neckway.cli.option.JsonOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.text.ComparisonText;
import neckway.cli.text.TerminalWidth;
import neckway.file.ComparisonFile;
import neckway.file.JsonFile;
import neckway.file.OutputFiles;
import neckway.file.ReviewReader;
import neckway.neck.BadInput;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Sets takes of one drill side by side. */
@Command(name = "compare")
final class CompareCommand implements Callable<Integer> {
  private static final int MOST = 20;

  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private JsonOption json = new JsonOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Parameters(paramLabel = "REVIEW.json", arity = "1..*")
  private List<Path> files;

  @Override
  public Integer call() {
    if (files.size() < 2 || files.size() > MOST) {
      throw new BadInput(Wording.counted("terminal.compare.number", files.size(), files.size()));
    }
    OutputFiles outputs = overwrite.files();
    files.forEach(file -> outputs.reads("", Optional.of(file)));
    outputs.writes("--json", json.file(), OutputFiles.Kind.COMPARISON);
    List<ComparisonFile.Named> takes = takes();
    ObjectNode compared = ComparisonFile.toJson(takes);
    PrintWriter out = spec.commandLine().getOut();
    if (json.toStandardOutput()) {
      out.print(JsonFile.text(compared));
      return 0;
    }
    ComparisonText.of(takes, TerminalWidth.columns()).forEach(out::println);
    json.file().ifPresent(file -> JsonFile.write(file, compared));
    return 0;
  }

  private List<ComparisonFile.Named> takes() {
    List<ComparisonFile.Named> takes = new ArrayList<>();
    for (Path file : files) {
      ReviewReader.DrillReviewed read = ReviewReader.read(JsonFile.read(file), file.toString());
      if (!takes.isEmpty() && !takes.get(0).read().drill().route().equals(read.drill().route())) {
        throw new BadInput(Wording.of("terminal.compare.anotherDrill", file, files.get(0)));
      }
      takes.add(new ComparisonFile.Named(file.toString(), read));
    }
    return takes;
  }
}
