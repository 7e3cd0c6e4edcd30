package neckway.desk.live;

import com.sun.management.UnixOperatingSystemMXBean;
import java.lang.management.ManagementFactory;

/** What this process holds, after a full collection. */
final class Held {
  private static final double MEGABYTE = 1 << 20;

  private Held() {}

  /** Heap and the rest in MB, threads, open files: {@code name=value} with tabs between. */
  static String now() {
    System.gc();
    System.gc();
    var memory = ManagementFactory.getMemoryMXBean();
    long files =
        ManagementFactory.getOperatingSystemMXBean() instanceof UnixOperatingSystemMXBean unix
            ? unix.getOpenFileDescriptorCount()
            : 0;
    return String.join(
        "\t",
        "heapMb=" + memory.getHeapMemoryUsage().getUsed() / MEGABYTE,
        "restMb=" + memory.getNonHeapMemoryUsage().getUsed() / MEGABYTE,
        "threads=" + ManagementFactory.getThreadMXBean().getThreadCount(),
        "files=" + files);
  }
}
