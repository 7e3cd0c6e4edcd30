package neckway.file;

import java.nio.file.Files;
import java.nio.file.Path;
import neckway.neck.BadInput;
import neckway.words.Wording;

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
      throw new BadInput(Wording.of("files.input.noName"));
    }
    if (Files.notExists(file)) {
      throw new BadInput(Wording.of("files.input.none", file));
    }
    if (Files.isDirectory(file)) {
      throw new BadInput(Wording.of("files.folder", file));
    }
    if (!Files.exists(file) || !Files.isReadable(file)) {
      throw new BadInput(Wording.of("files.input.forbidden", file));
    }
    if (!Files.isRegularFile(file)) {
      throw new BadInput(Wording.of("files.input.device", file));
    }
  }
}
