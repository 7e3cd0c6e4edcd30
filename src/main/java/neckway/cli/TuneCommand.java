package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.cli.option.ChannelOption;
import neckway.cli.option.TuningOption;
import neckway.cli.text.TunerLine;
import neckway.file.sound.TakeReader;
import neckway.hear.Tuner;
import neckway.neck.Tuning;
import neckway.recording.TakeFeed;
import neckway.sound.Capture;
import neckway.sound.Devices;
import neckway.sound.Pump;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A tuner in the terminal. */
@Command(name = "tune", mixinStandardHelpOptions = true)
final class TuneCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private ChannelOption channelOption = new ChannelOption();
  @Mixin private TuningOption tuningOption = new TuningOption();

  @Option(names = "--input", paramLabel = "NAME")
  private String input;

  @Option(names = "--take", paramLabel = "FILE")
  private Path take;

  @Override
  public Integer call() {
    Tuning strings = tuningOption.tuning();
    PrintWriter out = spec.commandLine().getOut();
    if (take == null) {
      live(new TunerLine(out, strings, System.console() != null));
    } else {
      recorded(new TunerLine(out, strings, false));
    }
    return 0;
  }

  private void recorded(TunerLine line) {
    try (TakeReader reader = TakeReader.open(take, channelOption.channel())) {
      Ear ear = new Ear(reader.sampleRate(), line);
      TakeFeed.feed(reader, ear::hear);
      line.end();
      reader
          .warning()
          .ifPresent(warning -> spec.commandLine().getErr().println("neckway: " + warning));
    }
  }

  private void live(TunerLine line) {
    Interrupt interrupt = Interrupt.watch();
    try (Capture in = new Capture(Devices.openInput(Optional.ofNullable(input)))) {
      Ear ear = new Ear(in.sampleRate(), line);
      in.start();
      Pump.End end =
          Pump.run(
              in,
              (samples, length) -> {
                ear.hear(samples, 0, length);
                return true;
              },
              interrupt::asked);
      line.end();
      if (end == Pump.End.GONE) {
        spec.commandLine().getErr().println("neckway: " + Wording.of("terminal.tuner.gone"));
      }
    } finally {
      interrupt.unwatch();
    }
  }

  /** Shows the tone of what it is given. */
  private static final class Ear {
    private static final int STEP = 64;

    private final Tuner tuner;
    private final double sampleRate;
    private final TunerLine line;
    private long frames;

    Ear(double sampleRate, TunerLine line) {
      this.sampleRate = sampleRate;
      this.line = line;
      tuner = new Tuner(sampleRate);
    }

    void hear(float[] samples, int offset, int length) {
      for (int i = 0; i < length; i += STEP) {
        int now = Math.min(STEP, length - i);
        frames += now;
        if (tuner.process(samples, offset + i, now)) {
          tell(frames / sampleRate);
        }
      }
    }

    private void tell(double seconds) {
      if (tuner.steady()) {
        line.tone(seconds, tuner.pitchHz());
      } else {
        line.nothing();
      }
    }
  }
}
