package neckway.player.settings;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * What the player does with the route as a whole.
 *
 * @param stopAfter the last step played; empty: to the end
 * @param againAfter breaks off after this step and begins again from the bottom; empty: does not
 * @param pauseSlots empty slots between breaking off and beginning again
 * @param lateSlots slots by which the whole take comes later than the click
 * @param transpose semitones by which the whole run is played elsewhere
 * @param randomMistakes how many mistakes are drawn by chance, besides those listed
 * @param crowdedMistakes two slips within two steps, drawn by chance
 * @param stranger plays something else than the route altogether; empty: the route
 */
public record Behaviour(
    OptionalInt stopAfter,
    OptionalInt againAfter,
    int pauseSlots,
    int lateSlots,
    int transpose,
    int randomMistakes,
    boolean crowdedMistakes,
    Optional<Stranger> stranger) {

  /** What is played instead of the route. */
  public enum Stranger {
    /** Random notes of the neck. */
    RANDOM,
    /** Nothing. */
    SILENT
  }

  /** The route from end to end. */
  public static Behaviour whole() {
    return new Behaviour(
        OptionalInt.empty(), OptionalInt.empty(), 0, 0, 0, 0, false, Optional.empty());
  }
}
