package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.calls.Call;
import neckway.calls.CalledRun;
import neckway.calls.Caller;
import neckway.cli.option.BackingOptions;
import neckway.cli.option.CallsOptions;
import neckway.cli.option.DataOption;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.GuitarOption;
import neckway.cli.option.JsonOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.text.Figures;
import neckway.cli.text.LiveText;
import neckway.drill.PlayableDrill;
import neckway.file.OutputFiles;
import neckway.file.RoundTripFile;
import neckway.live.LiveResult;
import neckway.live.LiveRun;
import neckway.live.LiveSetup;
import neckway.log.RunKeeper;
import neckway.neck.BadInput;
import neckway.review.Review;
import neckway.sound.ClickClock;
import neckway.sound.ClickTrack;
import neckway.sound.Devices;
import neckway.sound.RoundTrip;
import neckway.string.GuitarProfile;
import neckway.words.Wording;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Follows a drill live. */
@Command(name = "listen", mixinStandardHelpOptions = true)
final class ListenCommand implements Callable<Integer> {
  private static final int PERCENT = 100;

  @Spec private CommandSpec spec;
  @Mixin private DrillOptions drillOptions;
  @Mixin private GuitarOption guitarOption;
  @Mixin private BackingOptions backing = new BackingOptions();
  @Mixin private CallsOptions calls = new CallsOptions();
  @Mixin private DataOption data = new DataOption();
  @Mixin private JsonOption json = new JsonOption();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Option(names = "--input", paramLabel = "NAME")
  private String input;

  @Option(names = "--output", paramLabel = "NAME")
  private String output;

  @Option(names = "--save", paramLabel = "TAKE.wav")
  private Path save;

  @Option(names = "--click-volume", paramLabel = "PERCENT")
  private double clickPercent = PERCENT * ClickTrack.USUAL_GAIN;

  @Option(names = "--measure-round-trip")
  private boolean measure;

  @Option(names = "--no-log")
  private boolean unkept;

  @Option(names = "--devices")
  private boolean devices;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    if (devices) {
      out.println(Wording.of("terminal.devices.inputs", named(Devices.inputs())));
      out.println(Wording.of("terminal.devices.outputs", named(Devices.outputs())));
      return 0;
    }
    if (!(clickPercent >= 0 && clickPercent <= PERCENT * ClickTrack.MAX_GAIN)) {
      throw new BadInput(Wording.of("terminal.listen.clickVolume", clickPercent));
    }
    if (measure) {
      measureRoundTrip(out);
      return 0;
    }
    backing.check();
    calls.check(drillOptions.startsWithFirstNote(), backing.isAsked());
    OutputFiles files =
        overwrite
            .files()
            .reads("--drill", drillOptions.file())
            .reads("--guitar", guitarOption.file())
            .reads("--backing", backing.file())
            .writes("--save", Optional.ofNullable(save), OutputFiles.Kind.WAV)
            .writes("--json", json.file(), OutputFiles.Kind.REVIEW);
    if (backing.isAsked()) {
      files.writes(
          Wording.of("terminal.listen.besideSave"),
          Optional.ofNullable(save).map(LiveSetup::backingFile),
          OutputFiles.Kind.WAV);
    }
    drillOptions.allowFirstNote();
    if (backing.isAsked() && drillOptions.startsWithFirstNote()) {
      throw new BadInput(Wording.of("terminal.listen.firstNoteAndBacking"));
    }
    CommandLine line = spec.commandLine();
    PrintWriter told = json.toStandardOutput() ? line.getErr() : out;
    BackingOptions.Backed backed = backing.backed(drillOptions.drill(), told);
    Optional<Caller> caller =
        calls.isAsked()
            ? Optional.of(
                calls.caller(
                    backed.drill(), data, said -> line.getErr().println("neckway: " + said)))
            : Optional.empty();
    PlayableDrill drill = caller.map(Caller::drill).orElse(backed.drill());
    guitarOption.takeIn();
    Optional<GuitarProfile> guitar = guitarOption.guitar(drill);
    LiveSetup setup =
        new LiveSetup(
            drill,
            guitar,
            name(input),
            name(output),
            drillOptions.startsWithFirstNote() ? LiveSetup.Start.FIRST_NOTE : LiveSetup.Start.CLICK,
            () -> clickPercent / PERCENT,
            LiveSetup.Rounds.ONE,
            Optional.ofNullable(save)
                .map(file -> new LiveSetup.Takes(round -> file, LiveSetup.Keep.ALL)),
            backed.backing(),
            calls.heard());
    Interrupt interrupt = Interrupt.watch();
    try {
      return listen(setup, caller.map(Caller::calls).orElse(List.of()), interrupt);
    } finally {
      interrupt.unwatch();
    }
  }

  private void measureRoundTrip(PrintWriter out) {
    out.println(Wording.of("terminal.trip.clicks"));
    String from = Devices.inputName(name(input));
    String to = Devices.outputName(name(output));
    RoundTrip trip = RoundTrip.measure(name(input), name(output), clickPercent / PERCENT);
    RoundTripFile file = new RoundTripFile();
    file.keep(
        new RoundTripFile.Pair(
            from,
            to,
            trip.sampleRate(),
            1000 * trip.extraSeconds(),
            1000 * trip.spreadSeconds(),
            trip.clicks()));
    out.println(
        Wording.of(
            "terminal.trip.heard",
            trip.clicks(),
            Wording.fixed(1000 * trip.extraSeconds(), 2),
            Wording.fixed(1000 * trip.spreadSeconds(), 2),
            file.path()));
  }

  private int listen(LiveSetup setup, List<Call> called, Interrupt interrupt) {
    boolean quiet = json.toStandardOutput();
    CommandLine line = spec.commandLine();
    PrintWriter show = quiet ? line.getErr() : line.getOut();
    boolean terminal = !quiet && System.console() != null;
    LiveText text = new LiveText(setup, called, show, line.getErr(), terminal);
    OffsetDateTime begun = OffsetDateTime.now().truncatedTo(ChronoUnit.SECONDS);
    LiveRun.run(setup, text, interrupt::asked);
    LiveResult result = text.result().orElseThrow();
    guitarOption.keep(result.lessons(), line.getErr());
    Optional<CalledRun> run =
        called.isEmpty()
            ? Optional.empty()
            : Optional.of(
                CalledRun.of(setup.drill(), called, result.review()).upTo(result.review()));
    keep(setup, result, run, begun);
    closingWords(show, result);
    String name = save == null ? "" : save.getFileName().toString();
    if (run.isPresent()) {
      show.println(Wording.of("terminal.listen.sameCalls", calls.seed()));
      ReviewOutput.tellCalled(line.getOut(), json, result.review(), name, run.get());
      return save == null || result.take().isPresent() ? 0 : Complaints.UNUSABLE;
    }
    ReviewOutput.tell(line.getOut(), json, result.review(), name, setup.drill());
    return save == null || result.take().isPresent() ? 0 : Complaints.UNUSABLE;
  }

  /** A log that cannot be written costs nobody the review of the run. */
  private void keep(
      LiveSetup setup, LiveResult result, Optional<CalledRun> called, OffsetDateTime begun) {
    if (unkept) {
      return;
    }
    PrintWriter err = spec.commandLine().getErr();
    RunKeeper keeper =
        new RunKeeper(data.folder(), data.player(), line -> err.println("neckway: " + line));
    try {
      if (called.isPresent()) {
        Review told = called.get().told(result.review());
        keeper.keepCalled(called.get(), told, begun, result.take(), guitarOption.file());
        return;
      }
      keeper.keep(
          result.backing().isPresent() ? RunKeeper.Kind.BACKING : RunKeeper.Kind.PRACTICE,
          setup.drill(),
          result.review(),
          begun,
          RunKeeper.Source.LIVE,
          result.take(),
          guitarOption.file());
    } catch (BadInput e) {
      err.println("neckway: " + Wording.of("terminal.listen.notKept", e.getMessage()));
    }
  }

  private void closingWords(PrintWriter show, LiveResult result) {
    String firstBeat =
        result.clock().map(ListenCommand::firstBeatByClick).orElse("terminal.firstBeat.note");
    show.println(Wording.of(firstBeat, Wording.fixed(result.review().grid().firstBeat(), 4)));
    result.take().ifPresent(take -> show.println(Wording.of("terminal.listen.saved", take)));
    result.backing().ifPresent(played -> backingWords(show, result, played));
    result.soundMissed().ifPresent(told -> spec.commandLine().getErr().println("neckway: " + told));
    show.println();
    show.flush();
  }

  private static void backingWords(PrintWriter show, LiveResult result, LiveResult.Backing played) {
    if (!played.takenOut()) {
      show.println(Wording.of("terminal.listen.backingUnheard"));
    }
    if (result.take().isPresent() && played.file().isPresent()) {
      show.println(
          Wording.of(
              "terminal.listen.again",
              played.file().get(),
              Figures.plain(result.review().grid().tempo()),
              result.take().get(),
              String.format(Locale.ROOT, "%.4f", result.review().grid().firstBeat())));
    }
  }

  /** The key of the sentence that says when the first beat is. */
  private static String firstBeatByClick(ClickClock.Source source) {
    return switch (source) {
      case HEARD -> "terminal.firstBeat.heard";
      case STORED -> "terminal.firstBeat.stored";
      case UNMEASURED -> "terminal.firstBeat.unmeasured";
    };
  }

  private static String named(List<String> devices) {
    return devices.isEmpty() ? Wording.of("terminal.devices.none") : String.join(", ", devices);
  }

  private static Optional<String> name(String given) {
    return Optional.ofNullable(given);
  }
}
