package neckway.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.GuitarFile;
import neckway.file.sound.Channel;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * What a folder of recordings says of itself: its list, or else its drills, and its guitar.
 *
 * @param jobs the recordings of the list, or all of them by name
 * @param by where the drills come from
 * @param drills those of the files in the folder, by name; none where there is a list
 * @param guitar the one profile in the folder
 */
public record ClassFolder(
    List<TakeJob> jobs, By by, List<PlayableDrill> drills, Optional<Path> guitar) {
  /** A list in a folder has this name. */
  public static final String LIST = "list.csv";

  /** Where the drills come from. */
  public enum By {
    LIST,
    DRILL_FILES,
    /** The folder names none. */
    CHOICE
  }

  private static final Optional<PlayableDrill> NONE = Optional.empty();
  private static final String DRILL_ENDING = ".drill.json";
  private static final String GUITAR_ENDING = "guitar.json";

  /**
   * Looks into a folder.
   *
   * @param channel of the recordings of which no list says otherwise
   * @throws BadInput where there is no recording, or the list or a drill cannot be used
   */
  public static ClassFolder of(Path folder, Channel channel) {
    List<Path> guitars = files(folder, GUITAR_ENDING);
    // of several nobody knows whose they are; a list says
    Optional<Path> guitar = guitars.size() == 1 ? Optional.of(guitars.get(0)) : Optional.empty();
    Path list = folder.resolve(LIST);
    if (Files.isRegularFile(list)) {
      return new ClassFolder(TakeList.ofList(list, channel), By.LIST, List.of(), guitar);
    }
    List<TakeJob> jobs = TakeList.ofFolder(folder, channel);
    List<PlayableDrill> drills = files(folder, DRILL_ENDING).stream().map(DrillFile::read).toList();
    return new ClassFolder(jobs, drills.isEmpty() ? By.CHOICE : By.DRILL_FILES, drills, guitar);
  }

  private static List<Path> files(Path folder, String ending) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(
              file -> Files.isRegularFile(file) && file.getFileName().toString().endsWith(ending))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.folder.unread", folder), e);
    }
  }

  /**
   * What holds for all recordings.
   *
   * @param chosen the drill where the folder names none
   * @param guitar the profile to be used: the folder's, another one, or none
   * @throws BadInput where the guitar cannot be used for one of the drills
   */
  public FolderReview.Terms terms(Optional<PlayableDrill> chosen, Optional<Path> guitar) {
    Optional<PlayableDrill> usual =
        switch (by) {
          case LIST -> jobs.stream().anyMatch(job -> job.drill().isPresent()) ? NONE : chosen;
          case DRILL_FILES -> NONE;
          case CHOICE -> chosen;
        };
    guitar.ifPresent(
        file ->
            Stream.concat(drills.stream(), usual.stream())
                .forEach(drill -> GuitarFile.read(file, drill.tuning())));
    return new FolderReview.Terms(usual, drills, guitar);
  }
}
