package neckway.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.cli.option.ChannelOption;
import neckway.cli.option.HelpOption;
import neckway.cli.option.OverwriteOption;
import neckway.file.AtomicFile;
import neckway.file.JsonFile;
import neckway.file.OutputFiles;
import neckway.file.RemarksFile;
import neckway.file.ReviewReader;
import neckway.folder.TakeClips;
import neckway.report.Clips;
import neckway.report.Report;
import neckway.review.Remarks;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a report to hand back. */
@Command(name = "report")
final class ReportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private ChannelOption channel = new ChannelOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Parameters(paramLabel = "REVIEW.json")
  private Path file;

  @Option(names = "--take", paramLabel = "TAKE")
  private Path take;

  @Option(names = "--remarks", paramLabel = "FILE")
  private Path remarks;

  @Option(names = "--no-name")
  private boolean noName;

  @Option(names = "--out", paramLabel = "FILE", required = true)
  private Path target;

  @Override
  public Integer call() {
    overwrite
        .files()
        .reads("", Optional.of(file))
        .reads("--take", Optional.ofNullable(take))
        .reads("--remarks", Optional.ofNullable(remarks))
        .writes(
            "--out", Optional.of(target), isPdf() ? OutputFiles.Kind.PDF : OutputFiles.Kind.REPORT);
    JsonNode json = JsonFile.read(file);
    ReviewReader.DrillReviewed read = ReviewReader.read(json, file.toString());
    Remarks said = remarks == null ? Remarks.NONE : RemarksFile.read(remarks, read.review());
    JsonNode heard = json.path("take").path("file");
    Optional<String> name = heard.isTextual() ? Optional.of(heard.textValue()) : Optional.empty();
    Report.Names names = noName ? Report.Names.LEFT_OUT : Report.Names.TOLD;
    if (isPdf()) {
      AtomicFile.write(target, Report.pdf(read.drill(), read.review(), said, name, names));
    } else {
      Clips clips =
          take == null ? Clips.NONE : new TakeClips(take, channel.channel(), read.review());
      write(target, Report.html(read.drill(), read.review(), said, name, names, clips));
    }
    spec.commandLine().getOut().println(Wording.of("terminal.report.written", target));
    return 0;
  }

  private boolean isPdf() {
    return target.toString().toLowerCase(Locale.ROOT).endsWith(".pdf");
  }

  /** Writes a page beside its target and moves it into place. */
  static void write(Path target, String page) {
    AtomicFile.write(target, page.getBytes(StandardCharsets.UTF_8));
  }
}
