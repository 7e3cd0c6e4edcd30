package neckway.bench;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Reads spoilt files of every kind, each to its end, and prints a table. To be run with little
 * memory: java -Xmx512m.
 *
 * <pre>FuzzBench [--files N] [--seed S] [--only KIND] [--write FILE]</pre>
 */
public final class FuzzBench {
  private FuzzBench() {}

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int files = Integer.parseInt(StringBench.option(words, "--files", "1000"));
    long seed = Long.parseLong(StringBench.option(words, "--seed", "1"));
    String only = StringBench.option(words, "--only", "");
    PrintStream out = System.out;
    // the FLAC decoder has words of its own for what is spoilt
    System.setOut(new PrintStream(OutputStream.nullOutputStream()));
    MutatedFiles spoilt = new MutatedFiles(Files.createTempDirectory("spoilt"));
    StringBuilder table =
        new StringBuilder(
            "| format | files | read | refused | faults | slowest, s |\n"
                + "| --- | --- | --- | --- | --- | --- |\n");
    for (String kind : spoilt.kinds()) {
      if (only.isEmpty() || only.equals(kind)) {
        table.append(row(spoilt, kind, files, seed));
      }
    }
    out.print(table);
    String write = StringBench.option(words, "--write", "");
    if (!write.isEmpty()) {
      new MarkedPart(Path.of(write), "fuzz")
          .write(FuzzBench.class, String.join(" ", words), table.toString());
    }
  }

  private static String row(MutatedFiles spoilt, String kind, int files, long seed) {
    int read = 0;
    int refused = 0;
    int faults = 0;
    double slowest = 0;
    for (long s = seed; s < seed + files; s++) {
      long start = System.nanoTime();
      try {
        switch (spoilt.read(kind, s)) {
          case READ -> read++;
          case REFUSED -> refused++;
        }
      } catch (Throwable fault) {
        faults++;
        System.err.println(kind + " seed " + s + ": " + fault);
        for (int i = 0; i < Math.min(6, fault.getStackTrace().length); i++) {
          System.err.println("    " + fault.getStackTrace()[i]);
        }
      }
      slowest = Math.max(slowest, (System.nanoTime() - start) / 1e9);
    }
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d | %d | %d | %.1f |%n",
        kind,
        files,
        read,
        refused,
        faults,
        slowest);
  }
}
