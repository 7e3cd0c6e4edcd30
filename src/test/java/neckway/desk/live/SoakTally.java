package neckway.desk.live;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What a long practice came to, in the last minute and over all. */
final class SoakTally {
  private static final int WITHIN_MICROS = 20_000;
  private static final double QUIET_LOAD = 2;

  /** How a run's verdicts stand against the truth. */
  enum Outcome {
    SAME,
    /**
     * The virtual devices dropped part of the take, so that what was heard is not what was played.
     */
    SOUND_BROKEN,
    OTHER
  }

  /** Counts over some time. */
  private static final class Part {
    private final List<Integer> intervals = new ArrayList<>();
    private final List<Integer> waitFrames = new ArrayList<>();
    private final List<Integer> waitMicros = new ArrayList<>();
    private final int[] outcomes = new int[Outcome.values().length];
    private long verdicts;
    private long received;
    private long expected;
    private long overflows;
    private long lost;

    void add(Part other) {
      intervals.addAll(other.intervals);
      waitFrames.addAll(other.waitFrames);
      waitMicros.addAll(other.waitMicros);
      Arrays.setAll(outcomes, i -> outcomes[i] + other.outcomes[i]);
      verdicts += other.verdicts;
      received += other.received;
      expected += other.expected;
      overflows += other.overflows;
      lost += other.lost;
    }

    String frames() {
      if (intervals.isEmpty()) {
        return "no frames";
      }
      long within = intervals.stream().filter(i -> i <= WITHIN_MICROS).count();
      return text(
          "%d frames: %.2f %% within 20 ms, median %.1f, 95 %% %.1f, longest %.0f ms",
          intervals.size(),
          100.0 * within / intervals.size(),
          quantile(intervals, 0.5) / 1e3,
          quantile(intervals, 0.95) / 1e3,
          quantile(intervals, 1) / 1e3);
    }

    String rest() {
      String waits =
          waitFrames.isEmpty()
              ? "no waits"
              : text(
                  "%d waits: median %d, 95 %% %d, most %d frames; median %.1f, 95 %% %.1f ms",
                  waitFrames.size(),
                  quantile(waitFrames, 0.5),
                  quantile(waitFrames, 0.95),
                  quantile(waitFrames, 1),
                  quantile(waitMicros, 0.5) / 1e3,
                  quantile(waitMicros, 0.95) / 1e3);
      return text(
          "capture %d of %d expected, %d overflows, %d lost; runs %d, of them as the truth %d,"
              + " sound broken %d, otherwise %d; %d verdicts; %s",
          received,
          expected,
          overflows,
          lost,
          Arrays.stream(outcomes).sum(),
          outcomes[0],
          outcomes[1],
          outcomes[2],
          verdicts,
          waits);
    }

    private static int quantile(List<Integer> values, double share) {
      int[] sorted = values.stream().mapToInt(i -> i).sorted().toArray();
      return sorted[(int) Math.min(sorted.length - 1, share * sorted.length)];
    }
  }

  private final Part all = new Part();
  private final Part quiet = new Part();
  private Part now = new Part();
  private int minutes;
  private int quietMinutes;

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  /** A run is over. */
  void run(Map<String, String> counts, Outcome outcome) {
    for (String each : list(counts, "intervals")) {
      now.intervals.add(Integer.valueOf(each));
    }
    for (String each : list(counts, "waits")) {
      String[] parts = each.split(":");
      now.waitFrames.add(Integer.valueOf(parts[0]));
      now.waitMicros.add(Integer.valueOf(parts[1]));
    }
    now.outcomes[outcome.ordinal()]++;
    now.verdicts += Long.parseLong(counts.get("verdicts"));
    now.received += Long.parseLong(counts.get("received"));
    now.expected += Long.parseLong(counts.get("expected"));
    now.overflows += Long.parseLong(counts.get("overflows"));
    now.lost += Long.parseLong(counts.get("lost"));
  }

  private static List<String> list(Map<String, String> counts, String name) {
    String values = counts.get(name);
    return values.isEmpty() ? List.of() : List.of(values.split(","));
  }

  /** What the window holds. */
  String held(Map<String, String> held) {
    return text(
        "heap %.1f MB, rest %.1f MB, %s threads, %s files",
        Double.parseDouble(held.get("heapMb")),
        Double.parseDouble(held.get("restMb")),
        held.get("threads"),
        held.get("files"));
  }

  /** The line of the minute that is over; load is the average of that minute. */
  String minute(double passed, Map<String, String> held) {
    double load = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    String line =
        text(
            "minute %.1f, load %.2f; %s; %s; %s",
            passed, load, now.frames(), held(held), now.rest());
    all.add(now);
    minutes++;
    if (load < QUIET_LOAD) {
      quiet.add(now);
      quietMinutes++;
    }
    now = new Part();
    return line;
  }

  /** The lines of the whole. */
  String end(double passed) {
    all.add(now);
    return text(
        "after %.1f minutes:%nall: %s; %s%n%d of %d minutes with load below 2: %s; %s",
        passed, all.frames(), all.rest(), quietMinutes, minutes, quiet.frames(), quiet.rest());
  }
}
