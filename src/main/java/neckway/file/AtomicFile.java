package neckway.file;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * A file that is written beside its target and moved into place: whatever fails, an older file
 * stays as it was. Closed without {@link #commit()}, nothing is left behind.
 *
 * <p>A target that is no plain file, such as a pipe or a device, is written to directly.
 */
public final class AtomicFile implements Closeable {
  private final Path shown;
  private final Path target;
  private final Path written;
  private final OutputStream stream;
  private boolean committed;

  private AtomicFile(Path shown, Path target, Path written, OutputStream stream) {
    this.shown = shown;
    this.target = target;
    this.written = written;
    this.stream = stream;
  }

  /**
   * Opens a file beside the target.
   *
   * @throws BadInput if it cannot be written there; the line says why
   */
  public static AtomicFile beside(Path target) {
    try {
      Path real = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
      if (Files.isDirectory(real)) {
        throw new BadInput(Wording.of("files.folder", target));
      }
      if (Files.exists(real) && !Files.isRegularFile(real)) {
        return new AtomicFile(target, real, real, Files.newOutputStream(real));
      }
      if (Files.exists(real) && !Files.isWritable(real)) {
        throw new BadInput(Wording.of("files.readOnly", target));
      }
      Path folder = real.getParent();
      if (folder == null || !Files.isDirectory(folder)) {
        throw new BadInput(Wording.of("files.noFolder", target));
      }
      Path written = folder.resolve("." + real.getFileName() + "." + UUID.randomUUID() + ".part");
      OutputStream stream = Files.newOutputStream(written, StandardOpenOption.CREATE_NEW);
      return new AtomicFile(target, real, written, new BufferedOutputStream(stream));
    } catch (IOException e) {
      throw WriteFault.of(target, e);
    }
  }

  /**
   * Writes a whole file.
   *
   * @throws BadInput if it cannot be written; the line says why
   */
  public static void write(Path target, byte[] content) {
    try (AtomicFile file = beside(target)) {
      file.stream().write(content);
      file.commit();
    } catch (IOException e) {
      throw WriteFault.of(target, e);
    }
  }

  /** Where the content goes. */
  public OutputStream stream() {
    return stream;
  }

  /**
   * Ends the file and moves it into place.
   *
   * @throws BadInput if that cannot be done; the line says why
   */
  public void commit() {
    try {
      stream.close();
      if (!written.equals(target)) {
        move();
      }
      committed = true;
    } catch (IOException e) {
      throw WriteFault.of(shown, e);
    }
  }

  private void move() throws IOException {
    try {
      Files.move(written, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(written, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  @Override
  public void close() throws IOException {
    if (committed) {
      return;
    }
    try {
      stream.close();
    } finally {
      if (!written.equals(target)) {
        Files.deleteIfExists(written);
      }
    }
  }
}
