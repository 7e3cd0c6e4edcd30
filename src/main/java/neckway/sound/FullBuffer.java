package neckway.sound;

/**
 * How often an input's buffer ran over. A buffer that is found full has run over only if more comes
 * than it holds: the line of a device that is gone says that it is full for ever, and gives at most
 * what it holds.
 */
final class FullBuffer {
  private final int bufferBytes;
  private boolean full;
  private long bytesSince;

  FullBuffer(int bufferBytes) {
    this.bufferBytes = bufferBytes;
  }

  /** It was found full. */
  void found() {
    if (!full) {
      full = true;
      bytesSince = 0;
    }
  }

  /** Bytes were read from it; 1 where they show that it had run over, told once for each time. */
  int ranOver(int bytes) {
    bytesSince += bytes;
    if (full && bytesSince > bufferBytes) {
      full = false;
      return 1;
    }
    return 0;
  }
}
