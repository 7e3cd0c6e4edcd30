package neckway.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.band.Backing;
import neckway.band.ChordRow;
import neckway.band.Feel;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.HelpOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.option.Ranges;
import neckway.cli.text.Figures;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.OutputFiles;
import neckway.file.sound.WavWriter;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Renders chords, bass and drums to play a drill over. */
@Command(name = "vamp", sortOptions = false)
final class VampCommand implements Callable<Integer> {
  private static final int MOST_BARS = 400;
  private static final double LONGEST_SECONDS = 3600;

  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private DrillOptions drillOptions = new DrillOptions();

  @Option(names = "--chords", paramLabel = "ROW")
  private String chords;

  @Option(names = "--feel", paramLabel = "METRE")
  private String feel;

  @Option(names = "--bars", paramLabel = "BARS")
  private Integer bars;

  @Option(names = "--clicks")
  private boolean clicks;

  @Option(names = "--out", paramLabel = "BACKING.wav", required = true)
  private Path out;

  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Override
  public Integer call() {
    overwrite
        .files()
        .reads("--drill", drillOptions.file())
        .writes("--out", Optional.of(out), OutputFiles.Kind.WAV);
    PlayableDrill drill = drillOptions.drill();
    Key key = drill.key();
    ChordRow row =
        chords == null
            ? ChordRow.usual(key)
            : DrillOptions.option("--chords", chords, text -> ChordRow.parse(text, key));
    Feel asked =
        feel == null ? Feel.under(drill.pulse()) : DrillOptions.option("--feel", feel, Feel::parse);
    int count = bars(drill);
    Backing.Clicks which = clicks ? Backing.Clicks.ALL : Backing.Clicks.COUNT_IN;
    Backing backing = Backing.of(row, asked, drill.pulse(), count, which);
    try (WavWriter take = new WavWriter(out, backing.sampleRate(), WavWriter.Coding.PCM_16)) {
      take.write(backing.samples(), 0, backing.samples().length);
      take.finish();
    }
    Pulse pulse = drill.pulse();
    double seconds = (double) backing.samples().length / backing.sampleRate();
    spec.commandLine()
        .getOut()
        .println(
            Wording.of(
                "terminal.vamp.written",
                out,
                Wording.counted("terminal.vamp.bars", count, count),
                key,
                Figures.plain(pulse.tempo()),
                Wording.fixed(pulse.countIn() * pulse.beatSeconds(), 3),
                row.sheet(key),
                Wording.fixed(seconds, 1)));
    return 0;
  }

  private int bars(PlayableDrill drill) {
    Pulse pulse = drill.pulse();
    double barSeconds = pulse.beatsPerBar() * pulse.beatSeconds();
    int count;
    if (bars == null) {
      double notes = pulse.slots().offset() + drill.route().steps().size();
      double beats = Math.ceil(notes / pulse.notesPerBeat());
      count = (int) Math.max(1, Math.ceil(beats / pulse.beatsPerBar()));
    } else {
      Ranges.within("--bars", bars, 1, MOST_BARS);
      count = bars;
    }
    if (count * barSeconds > LONGEST_SECONDS) {
      throw new BadInput(
          bars == null
              ? Wording.of("terminal.vamp.longDrill")
              : Wording.of("terminal.vamp.longBars", bars));
    }
    return count;
  }
}
