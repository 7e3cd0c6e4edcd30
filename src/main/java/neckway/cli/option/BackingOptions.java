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
import picocli.CommandLine.Option;

/** What is played in place of the click: a vamp, or a recording of the player's own. */
public final class BackingOptions {
  private static final int PERCENT = 100;
  private static final double SLOWEST_SPEED = 0.25;

  /** The vamp begins again after so many bars at least, so that what rings on has died away. */
  private static final int LEAST_BARS = 4;

  private static final int MOST_MINUTES = 15;

  private static final String NO_BEAT =
      "no steady beat was found in it; give --backing-tempo and --backing-first-beat";

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
      throw new BadInput("--vamp together with --backing: leave one of them out");
    }
    needs(vamp, "--vamp", "--chords", chords);
    needs(vamp, "--vamp", "--feel", feel);
    needs(file != null, "--backing FILE", "--backing-tempo", tempo);
    needs(file != null, "--backing FILE", "--backing-first-beat", firstBeat);
    needs(file != null, "--backing FILE", "--backing-slower", slower);
    needs(isAsked(), "--vamp or --backing FILE", "--backing-volume", volume);
    needs(isAsked(), "--vamp or --backing FILE", "--clicks", clicks ? "" : null);
    if (tempo != null && !(tempo >= Pulse.SLOWEST && tempo <= Pulse.FASTEST)) {
      throw new BadInput(
          "--backing-tempo " + Ranges.plain(tempo) + ": give 20 to 400 beats a minute");
    }
    if (slower != null && !(slower >= SLOWEST_SPEED && slower <= 1)) {
      throw new BadInput("--backing-slower " + Ranges.plain(slower) + ": give 0.25 to 1");
    }
    if (firstBeat != null && !(firstBeat >= 0 && Double.isFinite(firstBeat))) {
      throw new BadInput(
          "--backing-first-beat " + firstBeat + ": give seconds from its beginning, such as 1.84");
    }
    if (volume != null && !(volume >= 0 && volume <= PERCENT)) {
      throw new BadInput("--backing-volume " + Ranges.plain(volume) + ": give 0 to 100 percent");
    }
  }

  private static void needs(boolean there, String what, String option, Object given) {
    if (given != null && !there) {
      throw new BadInput(option + ": give " + what + " with it");
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
          String.format(
              Locale.ROOT,
              "%s: --backing-first-beat %s lies beyond its end at %.2f s",
              file,
              Ranges.plain(first),
              sound.seconds()));
    }
    double speed = slower == null ? 1 : slower;
    PlayableDrill played = atTempo(drill, beats * speed);
    if (drill.pulse().tempo() != played.pulse().tempo()) {
      show.printf(
          Locale.ROOT,
          "The drill is played at the recording's %s beats a minute, not at %s.%n",
          Ranges.plain(played.pulse().tempo()),
          Ranges.plain(drill.pulse().tempo()));
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
            .orElseThrow(() -> new BadInput(file + ": " + NO_BEAT));
    double first = firstBeat == null ? found.firstBeatSeconds() : firstBeat;
    show.printf(
        Locale.ROOT,
        "Found in the recording, not known for certain: --backing-tempo %.2f --backing-first-beat"
            + " %.2f. Half or twice the tempo may be meant, two thirds of it where three notes go to"
            + " a beat, and bar one may lie on a later beat: give what is right.%n",
        found.tempo(),
        first);
    show.flush();
    return new Beat(found.tempo(), first);
  }

  private PlayableDrill atTempo(PlayableDrill drill, double beats) {
    if (!(beats >= Pulse.SLOWEST && beats <= Pulse.FASTEST)) {
      throw new BadInput(
          "--backing-slower "
              + (slower == null ? 1 : Ranges.plain(slower))
              + ": makes "
              + Ranges.plain(beats)
              + " beats a minute; that must be 20 to 400");
    }
    return drill.drill().withPulse(drill.pulse().withTempo(beats)).playable();
  }
}
