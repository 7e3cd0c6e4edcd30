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
@Command(
    name = "vamp",
    sortOptions = false,
    description = "Renders chords, bass and drums in a drill's key and tempo to play over.",
    footer = {
      "%nChords are degrees of the key in Roman numerals, a bar each: capitals are major, small",
      "letters minor. Two with a comma between share a bar: \"I IV I,V I\". Or name a row:",
      "twelve-bar, minor-twelve-bar, two-five-one, or a shape, for chords in its own colour:",
      "major, dorian, phrygian, mixolydian, minor."
    })
final class VampCommand implements Callable<Integer> {
  private static final int MOST_BARS = 400;
  private static final double LONGEST_SECONDS = 3600;

  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private DrillOptions drillOptions = new DrillOptions();

  @Option(
      names = "--chords",
      paramLabel = "ROW",
      description =
          "The chords, such as \"I vi IV V\" or twelve-bar. Left out: a usual row of the key.")
  private String chords;

  @Option(
      names = "--feel",
      paramLabel = "METRE",
      description =
          "4/4 (straight), 4/4-swung, 12/8 (slow triplets) or 4/4-quiet. Left out: the drill's own. A drill of"
              + " another metre keeps its beats in a bar.")
  private String feel;

  @Option(
      names = "--bars",
      paramLabel = "BARS",
      description = "How many bars after the count-in, 1 to 400. Left out: as many as it takes.")
  private Integer bars;

  @Option(names = "--clicks", description = "Click on every beat too, not only the count-in.")
  private boolean clicks;

  @Option(
      names = "--out",
      paramLabel = "BACKING.wav",
      required = true,
      description = "Where the sound goes.")
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
