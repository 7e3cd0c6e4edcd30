package neckway.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** Standard output, which keeps why it could not be written. */
final class StandardOutput extends OutputStream {
  private final OutputStream stream;
  private Optional<IOException> failure = Optional.empty();

  StandardOutput(OutputStream stream) {
    this.stream = stream;
  }

  /** The first failure, if there was one. */
  Optional<IOException> failure() {
    return failure;
  }

  /** Whether whoever read it wants no more, as the reader of a pipe that has seen enough. */
  boolean readerHasLeft() {
    return failure.map(IOException::getMessage).filter("Broken pipe"::equals).isPresent();
  }

  @Override
  public void write(int b) throws IOException {
    write(new byte[] {(byte) b}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int offset, int length) throws IOException {
    try {
      stream.write(bytes, offset, length);
    } catch (IOException e) {
      failure = failure.or(() -> Optional.of(e));
      throw e;
    }
  }

  @Override
  public void flush() throws IOException {
    try {
      stream.flush();
    } catch (IOException e) {
      failure = failure.or(() -> Optional.of(e));
      throw e;
    }
  }
}
