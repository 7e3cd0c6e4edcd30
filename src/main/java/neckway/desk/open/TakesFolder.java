package neckway.desk.open;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import neckway.desk.Texts;
import neckway.live.LiveSetup;
import neckway.neck.BadInput;

/**
 * The takes in a folder, and which of them are old. Only files with the names that the window gives
 * its takes are looked at, so that nobody's other recordings are counted or deleted.
 */
final class TakesFolder {
  /** So old a take may be cleared (common practice, no source). */
  static final Duration OLD = Duration.ofDays(30);

  private static final Pattern NAME =
      Pattern.compile("\\d{4}-\\d{2}-\\d{2} \\d{6} .*\\d{2}( \\(cut off\\)( \\d+)?)?\\.wav");

  /**
   * A take.
   *
   * @param bytes on the disk
   * @param old whether it may be cleared: old, and not marked to be kept
   */
  record Take(Path file, long bytes, boolean old) {}

  private TakesFolder() {}

  /**
   * The takes of a folder; of one that is not there none.
   *
   * @param marked the files that are kept, absolute
   * @throws BadInput where the folder cannot be read
   */
  static List<Take> list(Path folder, Set<Path> marked, Instant now) {
    List<Take> takes = new ArrayList<>();
    if (!Files.isDirectory(folder)) {
      return takes;
    }
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(TakesFolder::isTake).sorted().toList()) {
        boolean old = Files.getLastModifiedTime(file).toInstant().plus(OLD).isBefore(now);
        Path whole = file.toAbsolutePath().normalize();
        takes.add(
            new Take(file, Files.size(file) + besideBytes(file), old && !marked.contains(whole)));
      }
    } catch (IOException e) {
      throw new BadInput(Texts.of("problem.takes-unread", folder), e);
    }
    return takes;
  }

  /** What was played beside it belongs to a take. */
  private static long besideBytes(Path take) throws IOException {
    Path beside = LiveSetup.backingFile(take);
    return Files.exists(beside) ? Files.size(beside) : 0;
  }

  private static boolean isTake(Path file) {
    return NAME.matcher(file.getFileName().toString()).matches()
        && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS);
  }

  /**
   * Deletes the sound of the old takes; their reviews stay.
   *
   * @return how many could not be deleted
   */
  static int clear(List<Take> takes) {
    int left = 0;
    for (Take take : takes) {
      if (take.old()) {
        try {
          Files.deleteIfExists(take.file());
          Files.deleteIfExists(LiveSetup.backingFile(take.file()));
        } catch (IOException inUse) {
          left++;
        }
      }
    }
    return left;
  }

  /** So many bytes as players say it. */
  static String size(long bytes) {
    double mega = bytes / 1e6;
    return mega < 1000
        ? Texts.fixed(mega, mega < 10 ? 1 : 0) + " MB"
        : Texts.fixed(mega / 1000, 1) + " GB";
  }
}
