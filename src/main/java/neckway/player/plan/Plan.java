package neckway.player.plan;

import java.util.List;

/** What is going to be played, before any sound is made. */
public record Plan(
    double firstBeat,
    double lengthSeconds,
    List<PlayedNote> notes,
    List<PlayedShift> shifts,
    List<Mistake> mistakes,
    int attempt,
    List<Integer> skipped) {}
