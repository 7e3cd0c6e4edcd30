package neckway.cli.option;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.band.Backing;
import neckway.band.BeatFinder;
import neckway.band.ChordRow;
import neckway.band.Feel;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.sound.WholeSound;
import neckway.live.LiveBacking;
import neckway.neck.BadInput;
import neckway.sound.Levelling;
import neckway.words.Wording;
import picocli.CommandLine.Option;

/** What is played in place of the click: a vamp, or a recording of the player's own. */
public final class BackingOptions {
  private static final int PERCENT = 100;
  private static final double SLOWEST_SPEED = 0.25;

  /** The vamp begins again after so many bars at least, so that what rings on has died away. */
  private static final int LEAST_BARS = 4;

  private static final int MOST_MINUTES = 15;

  @Option(names = "--vamp")
  private boolean vamp;

  @Option(names = "--chords", paramLabel = "ROW")
  private String chords;

  @Option(names = "--feel", paramLabel = "METRE")
  private String feel;

  @Option(names = "--backing", paramLabel = "FILE")
  private Path file;

  @Option(names = "--backing-tempo", paramLabel = "BEATS")
  private Double tempo;

  @Option(names = "--backing-first-beat", paramLabel = "SECONDS")
  private Double firstBeat;

  @Option(names = "--backing-slower", paramLabel = "SPEED")
  private Double slower;

  @Option(names = "--backing-volume", paramLabel = "PERCENT")
  private Double volume;

  @Option(names = "--clicks")
  private boolean clicks;

  /**
   * A drill and what is played with it.
   *
   * @param drill at the tempo of the backing
   */
  public record Backed(PlayableDrill drill, Optional<LiveBacking> backing) {}

  /** The recording, if one is named. */
  public Optional<Path> file() {
    return Optional.ofNullable(file);
  }

  /** Whether something is played in place of the click. */
  public boolean isAsked() {
    return vamp || file != null;
  }

  /**
   * Checks the options against each other.
   *
   * @throws BadInput where they do not go together
   */
  public void check() {
    if (vamp && file != null) {
      throw new BadInput(Wording.of("options.together", "--vamp", "--backing"));
    }
    needs(vamp, "--vamp", "--chords", chords);
    needs(vamp, "--vamp", "--feel", feel);
    needs(file != null, "--backing FILE", "--backing-tempo", tempo);
    needs(file != null, "--backing FILE", "--backing-first-beat", firstBeat);
    needs(file != null, "--backing FILE", "--backing-slower", slower);
    String either = Wording.of("options.either", "--vamp", "--backing FILE");
    needs(isAsked(), either, "--backing-volume", volume);
    needs(isAsked(), either, "--clicks", clicks ? "" : null);
    if (tempo != null && !(tempo >= Pulse.SLOWEST && tempo <= Pulse.FASTEST)) {
      throw new BadInput(Wording.of("options.tempo", "--backing-tempo", Ranges.plain(tempo)));
    }
    if (slower != null) {
      Ranges.within("--backing-slower", slower, SLOWEST_SPEED, 1);
    }
    if (firstBeat != null && !(firstBeat >= 0 && Double.isFinite(firstBeat))) {
      throw new BadInput(Wording.of("options.backing.firstBeat", firstBeat));
    }
    if (volume != null && !(volume >= 0 && volume <= PERCENT)) {
      throw new BadInput(Wording.of("options.backing.volume", Ranges.plain(volume)));
    }
  }

  private static void needs(boolean there, String what, String option, Object given) {
    if (given != null && !there) {
      throw new BadInput(Wording.of("options.needs", option, what));
    }
  }

  /**
   * The drill with what is played.
   *
   * @param drill as it was asked for
   * @param show told what the drill's tempo became, and what was found
   * @throws BadInput where the recording cannot be used
   */
  public Backed backed(PlayableDrill drill, PrintWriter show) {
    if (vamp) {
      return new Backed(drill, Optional.of(vamp(drill)));
    }
    return file == null ? new Backed(drill, Optional.empty()) : recording(drill, show);
  }

  private LiveBacking vamp(PlayableDrill drill) {
    ChordRow row =
        chords == null
            ? ChordRow.usual(drill.key())
            : DrillOptions.option("--chords", chords, text -> ChordRow.parse(text, drill.key()));
    Feel asked = feel == null ? Feel.STRAIGHT : DrillOptions.option("--feel", feel, Feel::parse);
    int times = (LEAST_BARS + row.bars().size() - 1) / row.bars().size();
    int bars = times * row.bars().size();
    Backing backing = Backing.goingRound(row, asked, drill.pulse(), bars);
    return new LiveBacking(
        backing.samples(),
        backing.sampleRate(),
        0,
        OptionalDouble.of((double) bars * drill.pulse().beatsPerBar()),
        this::gain,
        which());
  }

  private double gain() {
    return volume == null ? LiveBacking.USUAL_GAIN : volume / PERCENT;
  }

  private LiveBacking.Clicks which() {
    return clicks ? LiveBacking.Clicks.ALL : LiveBacking.Clicks.COUNT_IN;
  }

  private Backed recording(PlayableDrill drill, PrintWriter show) {
    WholeSound sound = WholeSound.read(file, MOST_MINUTES);
    Beat beat = beat(sound, show);
    double first = beat.firstSeconds();
    double beats = beat.tempo();
    if (first >= sound.seconds()) {
      throw new BadInput(
          Wording.of(
              "options.backing.beyond",
              file,
              Ranges.plain(first),
              Wording.fixed(sound.seconds(), 2)));
    }
    double speed = slower == null ? 1 : slower;
    PlayableDrill played = atTempo(drill, beats * speed);
    if (drill.pulse().tempo() != played.pulse().tempo()) {
      show.println(
          Wording.of(
              "options.backing.tempo",
              Ranges.said(played.pulse().tempo()),
              Ranges.said(drill.pulse().tempo())));
    }
    float[] level = Levelling.levelled(sound.samples(), sound.sampleRate());
    return new Backed(
        played,
        Optional.of(
            LiveBacking.once(level, sound.sampleRate(), first, speed, this::gain, which())));
  }

  /** Tempo and first beat of the recording, as given or as found. */
  private record Beat(double tempo, double firstSeconds) {}

  private Beat beat(WholeSound sound, PrintWriter show) {
    if (tempo != null && firstBeat != null) {
      return new Beat(tempo, firstBeat);
    }
    OptionalDouble given = tempo == null ? OptionalDouble.empty() : OptionalDouble.of(tempo);
    BeatFinder.Found found =
        new BeatFinder(sound.samples(), sound.sampleRate())
            .find(given)
            .orElseThrow(() -> new BadInput(Wording.of("options.backing.noBeat", file)));
    double first = firstBeat == null ? found.firstBeatSeconds() : firstBeat;
    show.println(
        Wording.of(
            "options.backing.found",
            String.format(Locale.ROOT, "%.2f", found.tempo()),
            String.format(Locale.ROOT, "%.2f", first)));
    show.flush();
    return new Beat(found.tempo(), first);
  }

  private PlayableDrill atTempo(PlayableDrill drill, double beats) {
    if (!(beats >= Pulse.SLOWEST && beats <= Pulse.FASTEST)) {
      throw new BadInput(
          Wording.of(
              "options.backing.makes",
              slower == null ? "1" : Ranges.plain(slower),
              Ranges.said(beats)));
    }
    return drill.drill().withPulse(drill.pulse().withTempo(beats)).playable();
  }
}
