package neckway.follow;

/**
 * A step that was heard in its time, but not by its own pitch: played, for all that is known.
 *
 * @param attempt from 0
 * @param step index into the route's steps
 */
public record UnnamedStep(int attempt, int step) {}
