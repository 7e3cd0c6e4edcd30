package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.GuitarOption;
import neckway.cli.text.Progress;
import neckway.drill.PlayableDrill;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.neck.BadInput;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;
import neckway.string.GuitarProfile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what happened in a recording. */
@Command(
    name = "review",
    mixinStandardHelpOptions = true,
    description =
        "Says what was played in a recording of a drill: each note, each shift, the time.")
final class ReviewCommand implements Callable<Integer> {
  private static final int BLOCK = 4096;

  @Spec private CommandSpec spec;
  @Mixin private DrillOptions drillOptions;
  @Mixin private GuitarOption guitarOption;

  @Parameters(paramLabel = "TAKE", description = "The recording: WAV, AIFF, AU, FLAC, MP3 or Ogg.")
  private Path take;

  @Option(
      names = "--first-beat",
      paramLabel = "SECONDS",
      description =
          "When the first note is due, from the beginning of the recording. Left out: found by the"
              + " click in it, or by the notes.")
  private Double firstBeat;

  @Option(
      names = "--channel",
      paramLabel = "SIDE",
      description = "left, right, mix, or auto: the ones that carry sound. Left out: auto.")
  private Channel channel = Channel.AUTO;

  @Option(
      names = "--json",
      paramLabel = "FILE",
      description = "Writes the review as a neckway-review/1 file; - for standard output.")
  private String json;

  @Override
  public Integer call() {
    if (firstBeat != null && !Double.isFinite(firstBeat)) {
      throw new BadInput("--first-beat " + firstBeat + ": give seconds, such as 2.0");
    }
    PlayableDrill drill = drillOptions.drill();
    Optional<GuitarProfile> guitar = guitarOption.guitar(drill);
    PrintWriter err = spec.commandLine().getErr();
    try (TakeReader reader = TakeReader.open(take, channel)) {
      Review review = listen(drill, guitar, reader, new Progress(err, take, reader));
      reader.warning().ifPresent(warning -> err.println("neckway: " + warning));
      tell(review, drill);
    }
    return 0;
  }

  private Review listen(
      PlayableDrill drill, Optional<GuitarProfile> guitar, TakeReader reader, Progress progress) {
    OptionalDouble first =
        firstBeat == null ? OptionalDouble.empty() : OptionalDouble.of(firstBeat);
    Run run = new Run(drill, guitar, reader.sampleRate(), first, Clock.MEASURED, verdict -> {});
    float[] block = new float[BLOCK];
    for (int got = reader.read(block); got > 0; got = reader.read(block)) {
      run.feed(block, 0, got);
      progress.at(run.seconds());
    }
    progress.done();
    return run.finish();
  }

  private void tell(Review review, PlayableDrill drill) {
    PrintWriter out = spec.commandLine().getOut();
    String name = Optional.ofNullable(take.getFileName()).map(Path::toString).orElse("");
    ReviewOutput.tell(out, json, review, name, drill);
  }
}
