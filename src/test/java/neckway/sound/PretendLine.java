package neckway.sound;

import java.io.ByteArrayOutputStream;
import java.lang.reflect.Proxy;
import java.util.concurrent.CountDownLatch;
import java.util.function.IntSupplier;
import java.util.function.IntUnaryOperator;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/** Lines of Java Sound that do what a test tells them. */
final class PretendLine {
  private static final AudioFormat FORMAT = new AudioFormat(48_000, 16, 1, true, false);

  static final int BUFFER_BYTES = 2 * 4096;

  private PretendLine() {}

  /**
   * An input.
   *
   * @param read told how many bytes are wanted, answers how many there are
   */
  static TargetDataLine input(IntUnaryOperator read) {
    return input(() -> 0, read);
  }

  /**
   * An input whose buffer is not always empty.
   *
   * @param available answers how many bytes wait in it
   */
  static TargetDataLine input(IntSupplier available, IntUnaryOperator read) {
    return line(TargetDataLine.class, available, read);
  }

  /**
   * An output.
   *
   * @param write told how many bytes are offered, answers how many are taken
   */
  static SourceDataLine output(IntUnaryOperator write) {
    return line(SourceDataLine.class, () -> 0, write);
  }

  /** An output that takes sound somewhat faster than it is played, and keeps it. */
  static SourceDataLine keeping(ByteArrayOutputStream kept) {
    SourceDataLine taking =
        output(
            length -> {
              sleepMillis(2);
              return length;
            });
    return (SourceDataLine)
        Proxy.newProxyInstance(
            SourceDataLine.class.getClassLoader(),
            new Class<?>[] {SourceDataLine.class},
            (self, method, args) -> {
              if (method.getName().equals("write")) {
                kept.write((byte[]) args[0], (int) args[1], (int) args[2]);
              }
              return method.invoke(taking, args);
            });
  }

  /**
   * A line each of whose calls but the simplest is answered under one lock, as Java Sound's are.
   */
  private static <T extends DataLine> T line(
      Class<T> kind, IntSupplier available, IntUnaryOperator transfer) {
    Object lock = new Object();
    Object proxy =
        Proxy.newProxyInstance(
            kind.getClassLoader(),
            new Class<?>[] {kind},
            (self, method, args) -> {
              switch (method.getName()) {
                case "getFormat":
                  return FORMAT;
                case "getBufferSize":
                  return BUFFER_BYTES;
                case "isOpen":
                  return true;
                default:
                  synchronized (lock) {
                    return switch (method.getName()) {
                      case "read", "write" -> transfer.applyAsInt((int) args[2]);
                      case "available" -> available.getAsInt();
                      case "getLongFramePosition" -> 0L;
                      default -> null;
                    };
                  }
              }
            });
    return kind.cast(proxy);
  }

  /** Never comes back, as a call to a hung server does. */
  static int forEver() {
    try {
      new CountDownLatch(1).await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return 0;
  }

  static void sleepMillis(int millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
