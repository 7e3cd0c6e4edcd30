package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import neckway.cli.option.ChannelOption;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.GuitarOption;
import neckway.cli.option.JsonOption;
import neckway.cli.option.KeepOptions;
import neckway.cli.option.OverwriteOption;
import neckway.cli.option.SeveralOptions;
import neckway.cli.text.Progress;
import neckway.drill.PlayableDrill;
import neckway.file.OutputFiles;
import neckway.folder.ClassFolder;
import neckway.folder.FolderReview;
import neckway.folder.TakeJob;
import neckway.neck.BadInput;
import neckway.recording.Beside;
import neckway.recording.Recording;
import neckway.recording.RecordingReviewer;
import neckway.review.Review;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what happened in a recording. */
@Command(name = "review", mixinStandardHelpOptions = true)
final class ReviewCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private ChannelOption channelOption = new ChannelOption();
  @Mixin private DrillOptions drillOptions;
  @Mixin private GuitarOption guitarOption;
  @Mixin private KeepOptions log = new KeepOptions();
  @Mixin private JsonOption json = new JsonOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Mixin private SeveralOptions several = new SeveralOptions();

  @Parameters(paramLabel = "TAKE", arity = "0..*")
  private List<Path> takes = List.of();

  @Option(names = "--first-beat", paramLabel = "SECONDS")
  private Double firstBeat;

  @Option(names = "--beside", paramLabel = "BACKING")
  private Path beside;

  @Option(names = "--beside-starts", paramLabel = "SECONDS")
  private Double besideStarts;

  @Option(names = "--beside-once")
  private boolean besideOnce;

  @Override
  public Integer call() {
    if (several.areSeveral(takes)) {
      return reviewSeveral();
    }
    if (takes.isEmpty()) {
      throw new BadInput(Wording.of("terminal.review.noRecording"));
    }
    several.checkSingle();
    Path take = takes.get(0);
    overwrite
        .files()
        .reads(Wording.of("terminal.theTake"), Optional.of(take))
        .reads("--drill", drillOptions.file())
        .reads("--guitar", guitarOption.file())
        .reads("--beside", Optional.ofNullable(beside))
        .writes("--json", json.file(), OutputFiles.Kind.REVIEW);
    if (firstBeat != null && !Double.isFinite(firstBeat)) {
      throw new BadInput(Wording.of("terminal.review.firstBeat", firstBeat));
    }
    if (besideStarts != null && beside == null) {
      throw new BadInput(Wording.of("terminal.review.besideStarts", besideStarts));
    }
    if (besideOnce && (beside == null || firstBeat == null)) {
      throw new BadInput(Wording.of("terminal.review.besideOnce"));
    }
    PlayableDrill drill = drillOptions.drill();
    Recording recording =
        new Recording(
            take,
            drill,
            guitarOption.guitar(drill),
            seconds(firstBeat),
            channelOption.channel(),
            Optional.ofNullable(beside).map(this::beside));
    PrintWriter err = spec.commandLine().getErr();
    Progress progress = new Progress(err, take);
    RecordingReviewer.Reviewed reviewed =
        RecordingReviewer.review(recording, progress::at, () -> false).orElseThrow();
    progress.done();
    reviewed.warning().ifPresent(warning -> err.println("neckway: " + warning));
    if (log.isAsked()) {
      log.keep(reviewed.drill(), reviewed.review(), take, guitarOption.file(), err);
    }
    tell(take, reviewed.review(), reviewed.drill());
    return 0;
  }

  private static OptionalDouble seconds(Double given) {
    return given == null ? OptionalDouble.empty() : OptionalDouble.of(given);
  }

  private Beside beside(Path file) {
    return new Beside(
        file, seconds(besideStarts), besideOnce ? Beside.How.AS_IT_CAME : Beside.How.WHOLE);
  }

  private int reviewSeveral() {
    if (json.toStandardOutput() || json.file().isPresent()) {
      throw new BadInput(Wording.of("terminal.review.several.json"));
    }
    if (firstBeat != null) {
      throw new BadInput(Wording.of("terminal.review.several.firstBeat"));
    }
    if (beside != null) {
      throw new BadInput(Wording.of("terminal.review.several.beside"));
    }
    Optional<PlayableDrill> drill =
        drillOptions.isNamed() ? Optional.of(drillOptions.drill()) : Optional.empty();
    PrintWriter err = spec.commandLine().getErr();
    List<TakeJob> jobs;
    FolderReview.Terms terms;
    if (drill.isEmpty() && several.isFolderAlone(takes)) {
      ClassFolder folder = ClassFolder.of(takes.get(0), channelOption.channel());
      jobs = folder.jobs();
      terms = folder.terms(drill, guitarOption.file().or(folder::guitar));
      told(folder, terms).forEach(line -> err.println("neckway: " + line));
    } else {
      jobs = several.jobs(takes, channelOption.channel());
      terms = new FolderReview.Terms(drill, guitarOption.file());
    }
    return SeveralReviews.run(
        jobs,
        several.into(),
        terms,
        spec.commandLine().getOut(),
        err,
        (job, reviewed) -> {
          if (log.isAsked()) {
            log.keep(job, reviewed.drill(), reviewed.review(), guitarOption.file(), err);
          }
        });
  }

  /** What was taken from a folder without being named. */
  private static List<String> told(ClassFolder folder, FolderReview.Terms terms) {
    List<String> lines = new ArrayList<>();
    switch (folder.by()) {
      case LIST -> lines.add(Wording.of("terminal.review.byList", ClassFolder.LIST));
      case DRILL_FILES -> lines.add(Wording.of("terminal.review.byDrills"));
      case CHOICE -> {
        // nothing to tell
      }
    }
    terms.guitar().ifPresent(guitar -> lines.add(Wording.of("terminal.review.withGuitar", guitar)));
    return lines;
  }

  private void tell(Path take, Review review, PlayableDrill drill) {
    PrintWriter out = spec.commandLine().getOut();
    String name = Optional.ofNullable(take.getFileName()).map(Path::toString).orElse("");
    ReviewOutput.tell(out, json, review, name, drill);
  }
}
