package neckway.live;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.DoubleSupplier;
import neckway.drill.PlayableDrill;
import neckway.string.GuitarProfile;

/**
 * What a live run needs.
 *
 * @param drill what it is held against
 * @param guitar the guitar played, if it was learnt
 * @param input name of the input or a part of it; empty: the first
 * @param output the same of the output; opened only where something clicks
 * @param start what the first note is held against
 * @param clickGain share of full scale, 0 to 0.5; asked while it clicks, on the thread that plays
 * @param rounds how many there are
 * @param takes where each round's take is saved; empty: nowhere
 * @param backing what is played in place of the click; empty: it clicks
 * @param callTones whether calls sound, where the drill has any
 */
public record LiveSetup(
    PlayableDrill drill,
    Optional<GuitarProfile> guitar,
    Optional<String> input,
    Optional<String> output,
    Start start,
    DoubleSupplier clickGain,
    Rounds rounds,
    Optional<Takes> takes,
    Optional<LiveBacking> backing,
    CallTones callTones) {
  /** What a round begins with. */
  public enum Start {
    /** A click counts in and goes on. */
    CLICK,
    /** Nothing clicks: the first note heard is the first beat. */
    FIRST_NOTE
  }

  /**
   * How many rounds there are.
   *
   * @param repeat whether they follow each other, on the same running click, until stopped
   * @param restBars whole bars between the end of one round and the first note of the next, at
   *     least; 1 or more
   */
  public record Rounds(boolean repeat, int restBars) {
    /** One alone. */
    public static final Rounds ONE = new Rounds(false, 1);

    public Rounds {
      if (restBars < 1) {
        throw new IllegalArgumentException("rest of " + restBars + " bars");
      }
    }
  }

  /** Names the file of each round's take. */
  @FunctionalInterface
  public interface Files {
    /**
     * @param round from 0
     * @return a file in a folder that exists
     */
    Path file(int round);
  }

  /** Which takes are kept. */
  public enum Keep {
    /** Each in which anything was captured. */
    ALL,
    /** Each but one that was stopped before a note was heard. */
    UNLESS_GIVEN_UP
  }

  /**
   * Where takes are saved.
   *
   * @param files their names
   * @param keep which of them
   */
  public record Takes(Files files, Keep keep) {}

  /** Where what is played beside a take is kept: {@code NAME.backing.wav}. */
  public static Path backingFile(Path take) {
    return PlayedOut.file(take);
  }

  /** How calls sound. */
  public enum CallTones {
    /** Two pitches: rising for up, falling for down, level to stay. */
    SOUNDING,
    /** Whispered: "up D", "stay", "down A". */
    SPOKEN,
    /** Not at all; they are shown. */
    SILENT
  }

  /** One with the click alone. */
  public LiveSetup(
      PlayableDrill drill,
      Optional<GuitarProfile> guitar,
      Optional<String> input,
      Optional<String> output,
      Start start,
      DoubleSupplier clickGain,
      Rounds rounds,
      Optional<Takes> takes) {
    this(
        drill,
        guitar,
        input,
        output,
        start,
        clickGain,
        rounds,
        takes,
        Optional.empty(),
        CallTones.SOUNDING);
  }

  /** The same with a backing in place of the click. */
  public LiveSetup with(LiveBacking played) {
    return new LiveSetup(
        drill,
        guitar,
        input,
        output,
        start,
        clickGain,
        rounds,
        takes,
        Optional.of(played),
        callTones);
  }

  public LiveSetup {
    if (start == Start.FIRST_NOTE && backing.isPresent()) {
      throw new IllegalArgumentException("a backing counts in");
    }
    if (start == Start.FIRST_NOTE && rounds.repeat()) {
      throw new IllegalArgumentException("rounds follow each other on the click only");
    }
  }
}
