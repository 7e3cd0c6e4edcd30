package neckway.folder;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.GuitarFile;
import neckway.file.InputFile;
import neckway.file.JsonFile;
import neckway.file.ReviewFile;
import neckway.neck.BadInput;
import neckway.recording.Recording;
import neckway.recording.RecordingReviewer;
import neckway.recording.RecordingReviewer.Reviewed;
import neckway.string.GuitarProfile;
import neckway.words.Tongue;
import neckway.words.Wording;

/**
 * Reviews many recordings, several at once. One that cannot be read never stops the rest, what was
 * done before and has not changed is not done again, and what is done when it is stopped stays.
 */
public final class FolderReview {

  /**
   * What holds for all of them.
   *
   * @param drill of those for which none is named
   * @param drills more that may be meant, besides those that are named
   * @param guitar of those for which none is named
   */
  public record Terms(
      Optional<PlayableDrill> drill, List<PlayableDrill> drills, Optional<Path> guitar) {
    /** Each recording is of the drill named for it, or else of this one. */
    public Terms(Optional<PlayableDrill> drill, Optional<Path> guitar) {
      this(drill, List.of(), guitar);
    }
  }

  /** Told as it goes, by several threads. */
  public interface Listener {
    /** One more is done, one way or the other. */
    void done(int count, int of);

    /**
     * One was reviewed now.
     *
     * @param name of its files, made unique, without an ending
     */
    void reviewed(TakeJob job, Reviewed reviewed, String name);

    /**
     * One has not changed since it was reviewed.
     *
     * @param review the file where its review lies
     * @param name as above
     */
    default void unchanged(TakeJob job, Path review, String name) {}
  }

  /** How many could be read, and how many not. */
  public record Counted(int read, int not) {}

  private final Terms terms;
  private final Path into;
  private final List<TakeJob> jobs;
  private final List<PlayableDrill> listed = new ArrayList<>();
  private final Map<String, TakeRow> earlier;
  private final TakeTable table;

  /**
   * @param into the folder where tables and reviews go; it is made where it is not there
   * @throws BadInput where that cannot be made
   */
  public FolderReview(List<TakeJob> jobs, Path into, Terms terms) {
    this.jobs = jobs;
    this.into = into;
    this.terms = terms;
    try {
      Files.createDirectories(into);
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.takes.noInto", into), e);
    }
    table = new TakeTable(into);
    earlier = table.earlier();
    gatherDrills();
  }

  /** The drills that are named in the list; one that cannot be read is told with its own take. */
  private void gatherDrills() {
    listed.addAll(terms.drills());
    jobs.stream().flatMap(job -> job.drill().stream()).distinct().forEach(this::gather);
    if (listed.isEmpty() && terms.drill().isEmpty()) {
      throw new BadInput(Wording.of("machine.takes.noDrill"));
    }
  }

  private void gather(Path file) {
    try {
      listed.add(DrillFile.read(file));
    } catch (BadInput unreadable) {
      // whoever names it is told so
    }
  }

  /**
   * Reviews them all, on all processors.
   *
   * @param stopped asked often; once true, nothing new is begun
   */
  public Counted run(Listener listener, BooleanSupplier stopped) {
    List<String> names = names();
    ExecutorService workers =
        Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    List<Future<TakeRow>> rows = new ArrayList<>();
    Tongue spoken = Wording.tongue();
    Done done = new Done(listener, jobs.size());
    for (int i = 0; i < jobs.size(); i++) {
      TakeJob job = jobs.get(i);
      String name = names.get(i);
      rows.add(
          workers.submit(
              () -> {
                TakeRow row = Wording.in(spoken, () -> row(job, name, listener, stopped));
                done.oneMore();
                return row;
              }));
    }
    workers.shutdown();
    List<TakeRow> inOrder = rows.stream().map(FolderReview::get).toList();
    table.write(inOrder);
    int read = (int) inOrder.stream().filter(TakeRow::isRead).count();
    return new Counted(read, inOrder.size() - read);
  }

  /** Counts what is done. */
  private static final class Done {
    private final Listener listener;
    private final int of;
    private int count;

    Done(Listener listener, int of) {
      this.listener = listener;
      this.of = of;
    }

    synchronized void oneMore() {
      count++;
      listener.done(count, of);
    }
  }

  private static TakeRow get(Future<TakeRow> row) {
    try {
      return row.get();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Names of the files that come of each, without an ending; no two alike. */
  private List<String> names() {
    Set<String> taken = new HashSet<>(Set.of("table"));
    List<String> names = new ArrayList<>();
    for (TakeJob job : jobs) {
      String stem = TakeList.stem(job.file());
      String name = stem;
      for (int number = 2; !taken.add(name.toLowerCase(java.util.Locale.ROOT)); number++) {
        name = stem + "-" + number;
      }
      names.add(name);
    }
    return names;
  }

  private TakeRow row(TakeJob job, String name, Listener listener, BooleanSupplier stopped) {
    try {
      if (stopped.getAsBoolean()) {
        return TakeRow.not(job, Wording.of("machine.takes.stopped"));
      }
      InputFile.check(job.file());
      DrillGuess guess = guess(job);
      String digest = digest(job, guess.asked());
      String withOthers = guess.others().isEmpty() ? digest : digest(job, guess.all());
      Optional<TakeRow> before =
          Optional.ofNullable(earlier.getOrDefault(digest, earlier.get(withOthers)));
      if (before.isPresent() && Files.isRegularFile(reviewFile(name))) {
        listener.unchanged(job, reviewFile(name), name);
        return before.get();
      }
      Optional<DrillGuess.Heard> asGuessed = guess.hear(drill -> heard(job, drill, stopped));
      if (asGuessed.isEmpty()) {
        return TakeRow.not(job, Wording.of("machine.takes.stopped"));
      }
      DrillGuess.Heard heard = asGuessed.get();
      Reviewed reviewed = heard.reviewed();
      String take = job.file().getFileName().toString();
      JsonFile.write(
          reviewFile(name), ReviewFile.toJson(reviewed.review(), take, reviewed.drill()));
      listener.reviewed(job, reviewed, name);
      String of = heard.othersTried() ? withOthers : digest;
      return TakeRow.of(job, reviewed.drill(), heard.guessed(), reviewed.review(), of);
    } catch (BadInput e) {
      return TakeRow.not(job, e.getMessage());
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      return TakeRow.not(job, Wording.of("machine.takes.fault", e));
    }
  }

  private Path reviewFile(String name) {
    return into.resolve(name + ".review.json");
  }

  /** The drill that was asked for; where none was, all that it may be. */
  private DrillGuess guess(TakeJob job) {
    Optional<PlayableDrill> asked = job.drill().map(DrillFile::read).or(terms::drill);
    if (asked.isEmpty()) {
      return new DrillGuess(listed, List.of());
    }
    List<PlayableDrill> others =
        Stream.concat(listed.stream(), terms.drill().stream())
            .distinct()
            .filter(drill -> !drill.equals(asked.get()))
            // a guitar's profile is of one tuning
            .filter(drill -> drill.tuning().equals(asked.get().tuning()) || guitar(job).isEmpty())
            .toList();
    return new DrillGuess(List.of(asked.get()), others);
  }

  private Optional<Path> guitar(TakeJob job) {
    return job.guitar().or(terms::guitar);
  }

  private Optional<Reviewed> heard(TakeJob job, PlayableDrill drill, BooleanSupplier stopped) {
    Optional<GuitarProfile> guitar = guitar(job).map(f -> GuitarFile.read(f, drill.tuning()));
    Recording recording = new Recording(job.file(), drill, guitar, job.firstBeat(), job.channel());
    return RecordingReviewer.review(recording, (seconds, share) -> {}, stopped);
  }

  /** Of all that a review follows from. */
  private String digest(TakeJob job, List<PlayableDrill> drills) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      add(sha, job.file());
      Optional<Path> guitar = guitar(job);
      if (guitar.isPresent()) {
        InputFile.check(guitar.get());
        add(sha, guitar.get());
      }
      StringBuilder text = new StringBuilder(ProgramVersion.andLanguage());
      drills.forEach(drill -> text.append('\n').append(DrillFile.toJson(drill)));
      text.append('\n').append(job.firstBeat()).append(job.channel()).append(job.name());
      sha.update(text.toString().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(sha.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.unread", job.file()), e);
    }
  }

  private static void add(MessageDigest sha, Path file) throws IOException {
    try (InputStream in = new DigestInputStream(Files.newInputStream(file), sha)) {
      in.transferTo(java.io.OutputStream.nullOutputStream());
    }
  }
}
