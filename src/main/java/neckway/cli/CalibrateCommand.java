package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.calibration.Calibrated;
import neckway.calibration.Calibration;
import neckway.calibration.Finding;
import neckway.calibration.Pluck;
import neckway.calibration.Plucks;
import neckway.cli.option.ChannelOption;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.FretList;
import neckway.cli.option.OverwriteOption;
import neckway.cli.option.TuningOption;
import neckway.cli.text.ProfileTable;
import neckway.cli.text.Progress;
import neckway.cli.text.Wrapped;
import neckway.file.GuitarFile;
import neckway.file.OutputFiles;
import neckway.file.sound.TakeReader;
import neckway.neck.BadInput;
import neckway.neck.Tuning;
import neckway.recording.TakeFeed;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Learns a guitar's strings from a recording of the calibration sequence. */
@Command(name = "calibrate", mixinStandardHelpOptions = true)
final class CalibrateCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private ChannelOption channelOption = new ChannelOption();
  @Mixin private TuningOption tuningOption = new TuningOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Parameters(paramLabel = "TAKE")
  private Path take;

  @Option(names = "--frets", paramLabel = "FRETS")
  private String frets = "0,3,7,12";

  @Option(names = "--out", paramLabel = "FILE")
  private Path out;

  @Override
  public Integer call() {
    overwrite
        .files()
        .reads(Wording.of("terminal.theTake"), Optional.of(take))
        .writes("--out", Optional.ofNullable(out), OutputFiles.Kind.GUITAR);
    Tuning strings = tuningOption.tuning();
    List<Integer> asked = FretList.parse(frets);
    Calibration calibration =
        DrillOptions.option("--frets", frets, given -> new Calibration(strings, asked));
    Calibrated learnt;
    try {
      learnt = calibration.learn(listen());
    } catch (BadInput e) {
      throw e.getMessage().startsWith(take.toString()) ? e : e.in(take.toString());
    }
    if (out != null) {
      GuitarFile.write(out, learnt.profile(), strings);
    }
    PrintWriter to = spec.commandLine().getOut();
    ProfileTable.print(to, learnt.profile(), strings);
    if (!learnt.findings().isEmpty()) {
      to.println();
    }
    for (Finding finding : learnt.findings()) {
      Wrapped.print(to, finding.words());
    }
    if (out != null) {
      to.println();
      Wrapped.print(to, Wording.of("terminal.calibrate.written", out));
    }
    return 0;
  }

  private List<Pluck> listen() {
    PrintWriter err = spec.commandLine().getErr();
    try (TakeReader reader = TakeReader.open(take, channelOption.channel())) {
      Progress progress = new Progress(err, take);
      Plucks plucks = new Plucks(reader.sampleRate());
      TakeFeed.feed(reader, plucks::feed, progress::at, () -> false);
      progress.done();
      reader.warning().ifPresent(warning -> err.println("neckway: " + warning));
      return plucks.finish();
    }
  }
}
