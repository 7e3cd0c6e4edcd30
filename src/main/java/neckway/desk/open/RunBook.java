package neckway.desk.open;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import neckway.calls.CalledRun;
import neckway.drill.PlayableDrill;
import neckway.log.RunKeeper;
import neckway.log.RunLog;
import neckway.neck.BadInput;
import neckway.review.Review;

/**
 * The runs of this window in the log: each is kept as it ends, and can be taken out again. May be
 * used by several threads; each opens the log for itself.
 */
public final class RunBook {
  /** As many as can be read again. */
  private static final int MOST = 200;

  /**
   * A run that ended in this window.
   *
   * @param kind what it was played to
   * @param called what was called in it; empty where nothing was
   * @param begun when
   * @param take where its sound is, if that was saved
   * @param guitar the profile of the guitar, if it was learnt
   */
  public record Ended(
      RunKeeper.Kind kind,
      Optional<CalledRun> called,
      PlayableDrill drill,
      Review review,
      OffsetDateTime begun,
      Optional<Path> take,
      Optional<Path> guitar) {}

  private record Entry(Ended run, Optional<String> id) {}

  private final Path folder;
  private final Optional<String> player;
  private final boolean keeps;
  private final List<Entry> entries = new ArrayList<>();

  /**
   * @param folder where the log lies
   * @param player whose runs they are
   * @param keeps whether runs are kept at all
   */
  public RunBook(Path folder, Optional<String> player, boolean keeps) {
    this.folder = folder;
    this.player = player;
    this.keeps = keeps;
  }

  /** Where the log lies; it need not be there yet. */
  public Path folder() {
    return folder;
  }

  public Optional<String> player() {
    return player;
  }

  /**
   * Keeps a run, unless runs are not kept.
   *
   * @param complaints told in one line where the log was damaged
   * @throws BadInput where it cannot be stored
   */
  public void keep(Ended run, Consumer<String> complaints) {
    if (keeps) {
      Optional<String> id = stored(run, complaints);
      if (id.isPresent()) {
        put(new Entry(run, id));
      }
    }
  }

  /**
   * Keeps a warm-up, unless runs are not kept.
   *
   * @throws BadInput where it cannot be stored
   */
  void keepWarmUp(OffsetDateTime begun, Consumer<String> complaints) {
    if (keeps) {
      new RunKeeper(folder, player, complaints).keepWarmUp(begun);
    }
  }

  private Optional<String> stored(Ended run, Consumer<String> complaints) {
    RunKeeper keeper = new RunKeeper(folder, player, complaints);
    if (run.called().isPresent()) {
      return keeper.keepCalled(
          run.called().get(), run.review(), run.begun(), run.take(), run.guitar());
    }
    return keeper.keep(
        run.kind(),
        run.drill(),
        run.review(),
        run.begun(),
        RunKeeper.Source.LIVE,
        run.take(),
        run.guitar());
  }

  private synchronized void put(Entry entry) {
    entries.removeIf(e -> e.run().review() == entry.run().review());
    entries.add(entry);
    if (entries.size() > MOST) {
      entries.remove(0);
    }
  }

  private synchronized Optional<Entry> entry(Review review) {
    return entries.stream().filter(e -> e.run().review() == review).findFirst();
  }

  /** The id of a run of this window, while it is in the log. */
  public Optional<String> id(Review review) {
    return entry(review).flatMap(Entry::id);
  }

  /** Whether a run of this window was kept, and may have been taken out again. */
  public boolean knows(Review review) {
    return entry(review).isPresent();
  }

  /**
   * Takes a run out of the log again, or puts it back.
   *
   * @param counted whether it is to be in the log
   * @throws BadInput where the log cannot be written
   */
  public void count(Review review, boolean counted, Consumer<String> complaints) {
    Optional<Entry> known = entry(review);
    if (known.isEmpty() || known.get().id().isPresent() == counted) {
      return;
    }
    Ended run = known.get().run();
    if (counted) {
      put(new Entry(run, stored(run, complaints)));
      return;
    }
    try (RunLog log = RunLog.open(folder, complaints)) {
      log.remove(List.of(known.get().id().orElseThrow()));
    }
    put(new Entry(run, Optional.empty()));
  }

  /**
   * Marks a run's take, so that it is not cleared with the old ones, or takes the mark away.
   *
   * @throws BadInput where the log cannot be written
   */
  public void mark(Review review, boolean marked, Consumer<String> complaints) {
    Optional<String> id = id(review);
    if (id.isPresent()) {
      try (RunLog log = RunLog.open(folder, complaints)) {
        log.mark(id.get(), marked);
      }
    }
  }
}
