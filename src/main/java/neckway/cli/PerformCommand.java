package neckway.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.FretList;
import neckway.cli.option.OverwriteOption;
import neckway.cli.option.PlayerOptions;
import neckway.drill.PlayableDrill;
import neckway.file.AtomicFile;
import neckway.file.JsonFile;
import neckway.file.MistakesFile;
import neckway.file.OutputFiles;
import neckway.file.TruthFile;
import neckway.file.WriteFault;
import neckway.file.sound.WavWriter;
import neckway.neck.BadInput;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Renders a drill as a virtual player, with the truth of what was played beside it. */
@Command(name = "perform", mixinStandardHelpOptions = true, sortOptions = false)
final class PerformCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DrillOptions drillOptions = new DrillOptions();

  @Option(names = "--mistakes", paramLabel = "FILE")
  private Path mistakesFile;

  @Option(names = "--seed", paramLabel = "NUMBER")
  private long seed = 1;

  @Option(names = "--out", paramLabel = "TAKE.wav", required = true)
  private Path out;

  @Option(names = "--truth", paramLabel = "FILE")
  private Path truth;

  @Option(names = "--bits", paramLabel = "BITS")
  private int bits = 16;

  @Option(names = "--calibration")
  private boolean calibration;

  @Option(names = "--frets", paramLabel = "FRETS")
  private String frets = "0,3,7,12";

  @Mixin private PlayerOptions player = new PlayerOptions();
  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Override
  public Integer call() {
    WavWriter.Coding coding = coding();
    overwrite
        .files()
        .reads("--drill", drillOptions.file())
        .reads("--mistakes", Optional.ofNullable(mistakesFile))
        .writes("--out", Optional.of(out), OutputFiles.Kind.WAV)
        .writes("--truth", Optional.ofNullable(truth), OutputFiles.Kind.REVIEW);
    PlayerSettings settings = player.settings(seed);
    VirtualPlayer virtual = new VirtualPlayer(settings);
    Optional<PlayableDrill> drill = Optional.empty();
    Performance played;
    if (calibration) {
      played = virtual.calibration(tuning(), fretList(), seed);
    } else {
      PlayableDrill asked = drillOptions.drill();
      drill = Optional.of(asked);
      int lastStep = asked.route().steps().size() - 1;
      checkStep("--stop-after", settings.behaviour().stopAfter(), lastStep);
      checkStep("--again-after", settings.behaviour().againAfter(), lastStep);
      played = play(virtual, asked);
    }
    write(played, coding, drill, settings.guitar().detuneCents());
    say(played);
    return 0;
  }

  private static void checkStep(String option, OptionalInt step, int lastStep) {
    if (step.isPresent() && step.getAsInt() > lastStep) {
      throw new BadInput(
          Wording.of("terminal.perform.lastStep", option, step.getAsInt(), lastStep));
    }
  }

  /** Both files or neither: each is written beside its target, then moved into place. */
  private void write(
      Performance played,
      WavWriter.Coding coding,
      Optional<PlayableDrill> drill,
      double tuningCents) {
    try (WavWriter take = new WavWriter(out, played.sampleRate(), coding);
        AtomicFile beside = truth == null ? null : AtomicFile.beside(truth)) {
      take.write(played.samples(), 0, played.samples().length);
      if (beside != null) {
        String name = out.getFileName().toString();
        ObjectNode json = TruthFile.toJson(name, drill, played, tuningCents);
        beside.stream().write(JsonFile.text(json).getBytes(StandardCharsets.UTF_8));
      }
      take.finish();
      if (beside != null) {
        beside.commit();
      }
    } catch (IOException e) {
      throw WriteFault.of(truth, e);
    }
  }

  private Performance play(VirtualPlayer virtual, PlayableDrill drill) {
    List<Mistake> mistakes =
        mistakesFile == null ? List.of() : MistakesFile.read(mistakesFile, drill.route());
    try {
      return virtual.play(drill.route(), drill.pulse(), mistakes, seed);
    } catch (BadInput e) {
      throw mistakesFile == null ? e : e.in(mistakesFile.toString());
    }
  }

  private void say(Performance played) {
    PrintWriter to = spec.commandLine().getOut();
    double seconds = (double) played.samples().length / played.sampleRate();
    int notes = played.notes().size();
    String counted = Wording.counted("count.note", notes, notes);
    String length = Wording.fixed(seconds, 1);
    to.println(
        calibration
            ? Wording.of("terminal.perform.plucks", out, counted, length)
            : Wording.of(
                "terminal.perform.take",
                out,
                counted,
                length,
                Wording.fixed(played.firstBeat(), 3)));
  }

  private WavWriter.Coding coding() {
    return switch (bits) {
      case 16 -> WavWriter.Coding.PCM_16;
      case 24 -> WavWriter.Coding.PCM_24;
      case 32 -> WavWriter.Coding.FLOAT_32;
      default -> throw new BadInput(Wording.of("terminal.perform.bits", bits));
    };
  }

  private Tuning tuning() {
    return drillOptions.tuning();
  }

  private List<Integer> fretList() {
    return FretList.parse(frets);
  }
}
