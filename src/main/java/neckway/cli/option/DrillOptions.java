package neckway.cli.option;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.DrillFile;
import neckway.neck.BadInput;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.words.Wording;
import picocli.CommandLine.Option;

/** A drill on the command line: a file, or its parts one by one. */
public final class DrillOptions {
  private static final String FIRST_NOTE = "first-note";

  private boolean firstNoteAllowed;

  @Option(names = "--drill", paramLabel = "FILE")
  private Path file;

  @Option(names = "--key", paramLabel = "KEY")
  private String key;

  @Option(names = "--shapes", paramLabel = "NAMES")
  private String shapes;

  @Option(names = "--start", paramLabel = "FRET")
  private List<String> start = List.of();

  @Option(names = "--up", paramLabel = "STRINGS")
  private String up;

  @Option(names = "--down", paramLabel = "STRINGS")
  private String down;

  @Option(names = "--tempo", paramLabel = "BEATS")
  private Double tempo;

  @Option(names = "--notes-per-beat", paramLabel = "NOTES")
  private Integer notesPerBeat;

  @Option(names = "--swing", paramLabel = "SHARE")
  private Double swing;

  @Option(names = "--offset-beats", paramLabel = "BEATS")
  private Double offsetBeats;

  @Option(names = "--rounds", paramLabel = "TIMES")
  private Integer rounds;

  @Option(names = "--tuning", paramLabel = "NOTES")
  private String tuning;

  /**
   * The drill that was asked for; its route can be played.
   *
   * @throws BadInput naming the option or the file and the mend
   */
  public PlayableDrill drill() {
    if (file == null) {
      return fromParts();
    }
    String twice = firstPart();
    if (twice != null) {
      throw new BadInput(Wording.of("options.drill.twice", twice));
    }
    return DrillFile.read(file);
  }

  /** The open strings alone, where no drill is needed: of the file, as named, or standard. */
  public Tuning tuning() {
    if (file != null) {
      return drill().tuning();
    }
    return tuning == null ? Tuning.STANDARD : option("--tuning", tuning, Tuning::parse);
  }

  private PlayableDrill fromParts() {
    if (key == null && shapes != null) {
      throw new BadInput(Wording.of("options.drill.noKey", shapes));
    }
    if (key != null && shapes == null) {
      throw new BadInput(Wording.of("options.drill.noShapes", key));
    }
    if (key == null) {
      throw new BadInput(Wording.of("options.drill.none"));
    }
    Pulse usual = Drill.USUAL_PULSE;
    double beats = tempo == null ? usual.tempo() : tempo;
    if (!(beats >= Pulse.SLOWEST && beats <= Pulse.FASTEST)) {
      throw new BadInput(Wording.of("options.tempo", "--tempo", Ranges.plain(beats)));
    }
    int notes = notesPerBeat == null ? usual.notesPerBeat() : notesPerBeat;
    Ranges.within("--notes-per-beat", notes, 1, Pulse.MOST_NOTES_PER_BEAT);
    Drill drill =
        new Drill(
            Optional.empty(),
            tuning == null ? Tuning.STANDARD : option("--tuning", tuning, Tuning::parse),
            Neck.USUAL_FRETS,
            option("--key", key, Key::parse),
            option("--shapes", shapes, DrillOptions::shapeList),
            startFret(),
            up == null ? List.of() : option("--up", up, DrillOptions::joinList),
            down == null ? List.of() : option("--down", down, DrillOptions::joinList),
            rounds == null ? 1 : rounds,
            pulse(beats, notes));
    return option(Wording.of("options.drill"), drill, Drill::playable);
  }

  private Pulse pulse(double beats, int notes) {
    Pulse usual = Drill.USUAL_PULSE;
    double share =
        swing == null
            ? usual.swing()
            : Ranges.within("--swing", swing, Pulse.STRAIGHT, Pulse.MOST_SWING);
    double offset =
        offsetBeats == null
            ? usual.offsetBeats()
            : Ranges.within("--offset-beats", offsetBeats, 0, Pulse.LATEST_OFFSET);
    Pulse pulse = new Pulse(beats, notes, usual.beatsPerBar(), usual.countIn(), share, offset);
    option("--swing", pulse, Pulse::checkedSwing);
    return option("--offset-beats", pulse, Pulse::checkedOffset);
  }

  /** Whether {@code --start first-note} was given; only listening knows what that is. */
  public boolean startsWithFirstNote() {
    return start.contains(FIRST_NOTE);
  }

  /** Lets {@code --start first-note} stand beside the fret. */
  public void allowFirstNote() {
    firstNoteAllowed = true;
  }

  private OptionalInt startFret() {
    OptionalInt fret = OptionalInt.empty();
    for (String given : start) {
      if (given.equals(FIRST_NOTE) && firstNoteAllowed) {
        continue;
      }
      if (!given.matches("\\d{1,3}")) {
        throw new BadInput(
            Wording.of(
                firstNoteAllowed ? "options.start.orFirstNote" : "options.start.fret", given));
      }
      if (fret.isPresent()) {
        throw new BadInput(Wording.of("options.start.twice"));
      }
      fret = OptionalInt.of(Integer.parseInt(given));
    }
    return fret;
  }

  private String firstPart() {
    Object[][] parts = {
      {"--key", key},
      {"--shapes", shapes},
      {"--start", startFret().isPresent() ? "" : null},
      {"--up", up},
      {"--down", down},
      {"--tempo", tempo},
      {"--notes-per-beat", notesPerBeat},
      {"--swing", swing},
      {"--offset-beats", offsetBeats},
      {"--rounds", rounds},
      {"--tuning", tuning}
    };
    return Arrays.stream(parts)
        .filter(part -> part[1] != null)
        .map(part -> (String) part[0])
        .findFirst()
        .orElse(null);
  }

  /** Reads an option's text and puts the option in front of a complaint. */
  public static <T, R> R option(String name, T given, Function<T, R> reading) {
    try {
      return reading.apply(given);
    } catch (BadInput e) {
      throw e.in(name);
    }
  }

  /** Shapes with commas between. */
  public static List<Shape> shapeList(String names) {
    return Arrays.stream(names.strip().split("\\s*,\\s*")).map(Shape::parse).toList();
  }

  /** Joins with commas between: 3, or 4,2, or with fingers 3/1. */
  public static List<JoinChoice> joinList(String joins) {
    return Arrays.stream(joins.strip().split("\\s*,\\s*")).map(DrillOptions::join).toList();
  }

  private static JoinChoice join(String join) {
    if (!join.matches("\\d{1,3}(/[1-4])?")) {
      throw new BadInput(Wording.of("options.join", join));
    }
    String[] parts = join.split("/");
    int string = Integer.parseInt(parts[0]);
    return parts.length == 1
        ? JoinChoice.on(string)
        : JoinChoice.on(string, Integer.parseInt(parts[1]));
  }

  /** Whether a drill is named, as a file or by its parts. */
  public boolean isNamed() {
    return file != null || firstPart() != null;
  }

  /** The drill file, where one is named. */
  public Optional<Path> file() {
    return Optional.ofNullable(file);
  }
}
