package neckway.cli.option;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.file.sound.Channel;
import neckway.folder.TakeJob;
import neckway.folder.TakeList;
import neckway.neck.BadInput;
import neckway.words.Wording;
import picocli.CommandLine.Option;

/** Several recordings at once, and where what comes of them goes. */
public final class SeveralOptions {
  @Option(names = "--list", paramLabel = "LIST.csv")
  private Path list;

  @Option(names = "--into", paramLabel = "DIR")
  private Path into;

  /** Whether several are asked for: a list, a folder, or more than one file. */
  public boolean areSeveral(List<Path> takes) {
    return list != null || takes.size() > 1 || takes.size() == 1 && Files.isDirectory(takes.get(0));
  }

  /** Whether a folder is asked for and nothing else. */
  public boolean isFolderAlone(List<Path> takes) {
    return list == null && takes.size() == 1 && Files.isDirectory(takes.get(0));
  }

  /**
   * The folder where what comes of them goes.
   *
   * @throws BadInput where none is named
   */
  public Path into() {
    if (into == null) {
      throw new BadInput(Wording.of("options.into.missing"));
    }
    return into;
  }

  /** The list, where one is named. */
  public Optional<Path> list() {
    return Optional.ofNullable(list);
  }

  /**
   * Sees that a single recording has none of these.
   *
   * @throws BadInput where it has
   */
  public void checkSingle() {
    if (into != null) {
      throw new BadInput(Wording.of("options.into.single", into));
    }
  }

  /**
   * The recordings: those of the list, then those named, a folder's by name.
   *
   * @throws BadInput where there are none
   */
  public List<TakeJob> jobs(List<Path> takes, Channel channel) {
    List<TakeJob> jobs = new ArrayList<>();
    if (list != null) {
      jobs.addAll(TakeList.ofList(list, channel));
    }
    for (Path take : takes) {
      if (Files.isDirectory(take)) {
        jobs.addAll(TakeList.ofFolder(take, channel));
      } else {
        jobs.add(TakeList.job(take, channel));
      }
    }
    return jobs;
  }
}
