package neckway.log;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import neckway.file.AtomicFile;
import neckway.file.InputFile;
import neckway.file.ReviewFile;
import neckway.file.ReviewReader;
import neckway.file.WriteFault;
import neckway.neck.BadInput;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.words.Wording;

/** Takes runs out of a log into files, and into a log out of files. */
public final class RunTransfer {
  private static final int BATCH = 100;
  private static final String LINES = "runs.jsonl";

  private final RunLog log;

  public RunTransfer(RunLog log) {
    this.log = log;
  }

  /**
   * Writes runs.jsonl, runs.csv, notes.csv and shifts.csv into a folder, the oldest run first. Each
   * file is written beside its target and then moved into place. The tables follow RFC 4180.
   *
   * @return how many runs were written
   * @throws BadInput where that cannot be done
   */
  public int export(Path folder, Consumer<String> unreadable) {
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw WriteFault.of(folder, e);
    }
    int[] written = new int[1];
    try (AtomicFile lines = AtomicFile.beside(folder.resolve(LINES));
        AtomicFile runs = AtomicFile.beside(folder.resolve("runs.csv"));
        AtomicFile notes = AtomicFile.beside(folder.resolve("notes.csv"));
        AtomicFile shifts = AtomicFile.beside(folder.resolve("shifts.csv"))) {
      Writer toLines = writer(lines);
      Csv toRuns =
          new Csv(
              writer(runs),
              "id,when,key,shapes,up,down,tempo,notesPerBeat,rounds,cleanRounds,notes,right,wrong,"
                  + "extra,repeat,skipped,offMsMedian,offMsSpread,swing");
      Csv toNotes =
          new Csv(writer(notes), "id,attempt,step,time,midi,cents,verdict,slot,offMs,timing");
      Csv toShifts =
          new Csv(
              writer(shifts),
              "id,round,direction,plannedString,plannedFinger,verdict,string,p,lateMs");
      log.each(
          run -> {
            written[0]++;
            try {
              toLines.write(RunLine.of(run) + "\n");
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
            if (run.review().isPresent()) {
              tables(run, toRuns, toNotes, toShifts);
            }
          },
          unreadable);
      toLines.flush();
      for (Csv table : List.of(toRuns, toNotes, toShifts)) {
        table.flush();
      }
      for (AtomicFile file : List.of(lines, runs, notes, shifts)) {
        file.commit();
      }
    } catch (IOException e) {
      throw WriteFault.of(folder, e);
    } catch (UncheckedIOException e) {
      throw WriteFault.of(folder, e.getCause());
    }
    return written[0];
  }

  private static Writer writer(AtomicFile file) {
    return new OutputStreamWriter(file.stream(), StandardCharsets.UTF_8);
  }

  private void tables(KeptRun run, Csv runs, Csv notes, Csv shifts) {
    ReviewReader.DrillReviewed read = log.read(run);
    Review review = read.review();
    RunSummary said = RunSummary.of(read.drill(), review);
    runs.row(
        run.id(),
        RunLine.text(run.when()),
        said.key(),
        said.shapes(),
        said.up(),
        said.down(),
        said.tempo(),
        said.notesPerBeat(),
        said.rounds(),
        said.cleanRounds(),
        said.summary().notes(),
        said.summary().right(),
        said.summary().wrong(),
        said.summary().extra(),
        said.summary().repeat(),
        said.summary().skipped(),
        said.summary().offMsMedian(),
        said.summary().offMsSpread(),
        said.summary().swing());
    for (ReviewedNote note : review.notes()) {
      notes.row(
          run.id(),
          note.attempt(),
          note.step(),
          note.time(),
          note.midi(),
          note.cents(),
          note.verdict().word(),
          note.slot(),
          note.offMs(),
          note.timing().word());
    }
    for (ReviewedShift shift : review.shifts()) {
      shifts.row(
          run.id(),
          shift.planned().round(),
          shift.planned().direction().name().toLowerCase(Locale.ROOT),
          shift.planned().string().number(),
          shift.planned().finger(),
          shift.verdict().word(),
          shift.string().map(s -> s.number()),
          shift.p(),
          shift.lateMs());
    }
  }

  /** What came of an import. */
  public record Imported(int kept, int passedOver, int unusable) {}

  /** Told of an import as it goes on. */
  public interface Listener {
    /** A run is safely stored. */
    void stored(String id);

    /** Something cannot be used, in one line; the rest goes on. */
    void unusable(String line);

    /** So many runs were looked at. */
    void looked(long runs);
  }

  /**
   * Takes in lines of runs, reviews, and folders of either. What is there already is passed over.
   *
   * @throws BadInput where a path cannot be read at all
   */
  public Imported take(List<Path> paths, Listener listener) {
    Intake intake = new Intake(listener);
    for (Path path : paths) {
      for (Path file : files(path)) {
        if (file.toString().toLowerCase(Locale.ROOT).endsWith(".jsonl")) {
          lines(file, intake);
        } else {
          review(file, intake);
        }
      }
    }
    intake.store();
    return intake.imported();
  }

  private static List<Path> files(Path path) {
    if (!Files.isDirectory(path)) {
      InputFile.check(path);
      return List.of(path);
    }
    try (Stream<Path> all = Files.list(path)) {
      return all.filter(f -> f.toString().toLowerCase(Locale.ROOT).matches(".*\\.jsonl?"))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.log.lookedInto", path), e);
    }
  }

  private static void lines(Path file, Intake intake) {
    try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      int number = 0;
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        number++;
        if (!line.isBlank()) {
          String where = Wording.of("machine.line", file, number);
          String text = line;
          intake.run(() -> RunLine.read(RunLine.parse(text, where), where));
        }
      }
    } catch (IOException e) {
      intake.unusable(Wording.of("machine.log.readOn", file));
    }
  }

  private static void review(Path file, Intake intake) {
    intake.run(
        () -> {
          JsonNode json = RunLine.parse(readable(file), file.toString());
          if (json.has("review") && json.has("id")) {
            return RunLine.read(json, file.toString());
          }
          if (!ReviewFile.FORMAT.equals(json.path("format").textValue())) {
            throw new BadInput(Wording.of("machine.log.neither", file));
          }
          // when a review was written is when it was played, as near as a file tells
          OffsetDateTime when = RunKeeper.changed(file);
          ObjectNode about = JsonNodeFactory.instance.objectNode();
          String id = UUID.randomUUID().toString();
          about.put("id", id).put("when", RunLine.text(when)).putNull("guitar");
          about.put("source", "take");
          return new KeptRun(id, when, about, Optional.of((ObjectNode) json));
        });
  }

  private static String readable(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.log.noText", file), e);
    }
  }

  /** Stores runs in batches. */
  private final class Intake {
    private final Listener listener;
    private final List<RunRow> waiting = new ArrayList<>();
    private int kept;
    private int passedOver;
    private int unusable;
    private long looked;

    Intake(Listener listener) {
      this.listener = listener;
    }

    void run(Supplier<KeptRun> reading) {
      listener.looked(++looked);
      try {
        waiting.add(log.row(reading.get()));
      } catch (BadInput e) {
        unusable(e.getMessage());
      }
      if (waiting.size() >= BATCH) {
        store();
      }
    }

    void unusable(String line) {
      unusable++;
      listener.unusable(line);
    }

    void store() {
      List<RunRow> batch = List.copyOf(waiting);
      waiting.clear();
      if (batch.isEmpty()) {
        return;
      }
      for (Optional<String> id : log.putAll(batch)) {
        if (id.isPresent()) {
          kept++;
          listener.stored(id.get());
        } else {
          passedOver++;
        }
      }
    }

    Imported imported() {
      return new Imported(kept, passedOver, unusable);
    }
  }
}
