package neckway.file;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import neckway.neck.BadInput;
import neckway.words.Wording;

/** Why a file cannot be written, and what helps. */
public final class WriteFault {
  private WriteFault() {}

  /** The complaint about it: what the system said, in words that say how to mend it. */
  public static BadInput of(Path file, Throwable why) {
    return new BadInput(file + ": " + words(why), why);
  }

  /** The same without the file's name. */
  public static String words(Throwable why) {
    String said = String.valueOf(why.getMessage());
    if (why instanceof AccessDeniedException || why instanceof ReadOnlyFileSystemException) {
      return Wording.of("files.write.forbidden");
    }
    if (why instanceof NoSuchFileException) {
      return Wording.of("files.write.nothing");
    }
    if (why instanceof IOException && said.contains("No space left on device")) {
      return Wording.of("files.write.full");
    }
    return Wording.of("files.write.failed", said);
  }
}
