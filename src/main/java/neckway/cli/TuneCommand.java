package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.cli.option.DrillOptions;
import neckway.cli.text.TunerLine;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.hear.Tuner;
import neckway.live.LiveSession;
import neckway.neck.Tuning;
import neckway.sound.Capture;
import neckway.sound.Devices;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A tuner in the terminal. */
@Command(
    name = "tune",
    mixinStandardHelpOptions = true,
    description =
        "A tuner: pluck one string and let it ring. It shows the note, the cents off it and the"
            + " string of the tuning that it is nearest to. Ctrl-C ends it.")
final class TuneCommand implements Callable<Integer> {
  private static final int BLOCK = 1024;

  @Spec private CommandSpec spec;

  @Option(
      names = "--input",
      paramLabel = "NAME",
      description = "The sound input, or a part of its name. Left out: the first one.")
  private String input;

  @Option(
      names = "--tuning",
      paramLabel = "NOTES",
      description =
          "The open strings from the lowest, such as \"D2 A2 D3 G3 B3 E4\". Left out: standard.")
  private String tuning;

  @Option(
      names = "--take",
      paramLabel = "FILE",
      description = "Reads a recording instead of listening.")
  private Path take;

  @Option(
      names = "--channel",
      paramLabel = "SIDE",
      description = "Of a recording: left, right, mix, or auto. Left out: auto.")
  private Channel channel = Channel.AUTO;

  @Override
  public Integer call() {
    Tuning strings =
        tuning == null ? Tuning.STANDARD : DrillOptions.option("--tuning", tuning, Tuning::parse);
    PrintWriter out = spec.commandLine().getOut();
    if (take == null) {
      live(new TunerLine(out, strings, System.console() != null));
    } else {
      recorded(new TunerLine(out, strings, false));
    }
    return 0;
  }

  private void recorded(TunerLine line) {
    try (TakeReader reader = TakeReader.open(take, channel)) {
      Tuner tuner = new Tuner(reader.sampleRate());
      float[] block = new float[BLOCK];
      long frames = 0;
      for (int got = reader.read(block); got > 0; got = reader.read(block)) {
        frames = hear(tuner, block, got, frames, reader.sampleRate(), line);
      }
      line.end();
      reader
          .warning()
          .ifPresent(warning -> spec.commandLine().getErr().println("neckway: " + warning));
    }
  }

  private void live(TunerLine line) {
    Interrupt interrupt = Interrupt.watch();
    try (Capture in = new Capture(Devices.openInput(Optional.ofNullable(input)))) {
      Tuner tuner = new Tuner(in.sampleRate());
      float[] block = new float[BLOCK];
      long frames = 0;
      in.start();
      while (!interrupt.asked() && !in.gone()) {
        int got = in.read(block);
        frames = hear(tuner, block, got, frames, in.sampleRate(), line);
        if (got == 0) {
          LiveSession.pause();
        }
      }
      line.end();
      if (in.gone() && !interrupt.asked()) {
        spec.commandLine()
            .getErr()
            .println("neckway: the sound input is gone; check the device and start again");
      }
    } finally {
      interrupt.unwatch();
    }
  }

  private static long hear(
      Tuner tuner, float[] block, int length, long frames, double rate, TunerLine line) {
    int step = 64;
    for (int i = 0; i < length; i += step) {
      int now = Math.min(step, length - i);
      if (tuner.process(block, i, now)) {
        double seconds = (frames + i + now) / rate;
        if (tuner.steady()) {
          line.tone(seconds, tuner.pitchHz());
        } else {
          line.nothing();
        }
      }
    }
    return frames + length;
  }
}
