package neckway.desk.open;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import neckway.desk.Texts;
import neckway.desk.open.TakesFolder.Take;
import neckway.log.RunLog;
import neckway.neck.BadInput;

/** How much disk the takes use, and clearing the old ones but for those that are marked. */
public final class TakesModel {
  /**
   * What there is.
   *
   * @param folder of the takes
   * @param files how many
   * @param bytes of all
   * @param oldFiles how many may be cleared
   * @param oldBytes of those
   */
  record Use(Path folder, int files, long bytes, int oldFiles, long oldBytes) {}

  private final Supplier<Path> folder;
  private final RunBook book;
  private final Executor work;
  private final Executor window;
  private final Consumer<String> say;
  private final ReadOnlyObjectWrapper<Use> use =
      new ReadOnlyObjectWrapper<>(this, "use", new Use(Path.of(""), 0, 0, 0, 0));

  /**
   * @param folder of the takes, as it is set now
   * @param work where files are looked at
   * @param window where what was found is shown
   */
  public TakesModel(
      Supplier<Path> folder, RunBook book, Executor work, Executor window, Consumer<String> say) {
    this.folder = folder;
    this.book = book;
    this.work = work;
    this.window = window;
    this.say = say;
  }

  /** What there was when it was looked at last. */
  ReadOnlyObjectProperty<Use> use() {
    return use.getReadOnlyProperty();
  }

  /** Looks again. */
  public void refresh() {
    Path at = folder.get();
    work.execute(() -> tried(() -> shown(at, list(at))));
  }

  /** Deletes the old takes that are not marked. */
  public void clear() {
    Path at = folder.get();
    work.execute(
        () ->
            tried(
                () -> {
                  List<Take> takes = list(at);
                  long old = takes.stream().filter(Take::old).count();
                  int left = TakesFolder.clear(takes);
                  String line =
                      left > 0
                          ? Texts.of("takes.left", left)
                          : Texts.of(old == 1 ? "takes.cleared.one" : "takes.cleared", old);
                  window.execute(() -> say.accept(line));
                  shown(at, list(at));
                }));
  }

  private void tried(Runnable looking) {
    try {
      looking.run();
    } catch (BadInput e) {
      window.execute(() -> say.accept(e.getMessage()));
    }
  }

  private List<Take> list(Path at) {
    return TakesFolder.list(at, marked(), Instant.now());
  }

  /** A log that cannot be read stops clearing, since nobody knows which takes are marked. */
  private Set<Path> marked() {
    if (!RunLog.isThere(book.folder())) {
      return Set.of();
    }
    try (RunLog log = RunLog.open(book.folder(), line -> {})) {
      return log.markedTakes().stream()
          .map(take -> take.toAbsolutePath().normalize())
          .collect(Collectors.toSet());
    }
  }

  private void shown(Path at, List<Take> takes) {
    List<Take> old = takes.stream().filter(Take::old).toList();
    Use now =
        new Use(
            at,
            takes.size(),
            takes.stream().mapToLong(Take::bytes).sum(),
            old.size(),
            old.stream().mapToLong(Take::bytes).sum());
    window.execute(() -> use.set(now));
  }
}
