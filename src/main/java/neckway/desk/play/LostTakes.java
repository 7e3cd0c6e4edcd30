package neckway.desk.play;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Takes that a crash or a power cut left unfinished: each is a whole WAV file under a part's name.
 */
public final class LostTakes {
  private static final String PART = ".part.wav";
  private static final String RESCUED = " (cut off)";
  private static final int MOST_OF_ONE_NAME = 99;

  /** What was written to so lately may be a take that another window is still taking. */
  static final Duration STILL_GROWING = Duration.ofSeconds(5);

  private LostTakes() {}

  /**
   * Gives unfinished takes of a folder names of their own; a folder that is not there has none.
   *
   * @return their new names
   */
  public static List<Path> rescue(Path folder, Instant now) {
    List<Path> rescued = new ArrayList<>();
    if (!Files.isDirectory(folder)) {
      return rescued;
    }
    try (Stream<Path> files = Files.list(folder)) {
      for (Path part : files.filter(f -> f.toString().endsWith(PART)).sorted().toList()) {
        Instant written = Files.getLastModifiedTime(part).toInstant();
        if (written.plus(STILL_GROWING).isBefore(now)) {
          rescued.add(Files.move(part, free(part)));
        }
      }
    } catch (IOException e) {
      // what could not be renamed is still there under its part's name, and is tried again
    }
    return rescued;
  }

  /**
   * Moves takes from the folder where they were kept before to where they are kept now. A name that
   * is taken there already stays where it is.
   *
   * @return how many were moved
   */
  public static int moved(Path before, Path now) {
    int moved = 0;
    if (!Files.isDirectory(before) || before.equals(now)) {
      return moved;
    }
    try (Stream<Path> files = Files.list(before)) {
      Files.createDirectories(now);
      for (Path take : files.filter(f -> f.toString().endsWith(".wav")).sorted().toList()) {
        Path to = now.resolve(take.getFileName().toString());
        if (!Files.exists(to)) {
          Files.move(take, to);
          moved++;
        }
      }
    } catch (IOException e) {
      // what could not be moved is still there, and is tried again
    }
    return moved;
  }

  private static Path free(Path part) {
    String name = part.getFileName().toString();
    String stem = name.substring(0, name.length() - PART.length()) + RESCUED;
    Path free = part.resolveSibling(stem + ".wav");
    for (int n = 2; Files.exists(free) && n <= MOST_OF_ONE_NAME; n++) {
      free = part.resolveSibling(stem + " " + n + ".wav");
    }
    return free;
  }
}
