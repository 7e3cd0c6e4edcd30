package neckway.file;

import java.nio.file.Files;
import java.nio.file.Path;
import neckway.neck.BadInput;

/** A file that is to be read. */
public final class InputFile {
  private InputFile() {}

  /**
   * Sees before it is opened that a file can be read: a pipe that nobody writes to would never
   * answer.
   *
   * @throws BadInput where it is missing, no plain file, or may not be read
   */
  public static void check(Path file) {
    if (file.toString().isBlank()) {
      throw new BadInput("no file is named; name one");
    }
    if (Files.notExists(file)) {
      throw new BadInput(file + ": there is no such file; check the name and the folder");
    }
    if (Files.isDirectory(file)) {
      throw new BadInput(file + ": is a folder; name a file in it");
    }
    if (!Files.exists(file) || !Files.isReadable(file)) {
      throw new BadInput(file + ": may not be read; change its permissions");
    }
    if (!Files.isRegularFile(file)) {
      throw new BadInput(file + ": is a pipe or a device, no plain file; save it as a file first");
    }
  }
}
