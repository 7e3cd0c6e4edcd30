package neckway.review;

import java.util.Optional;
import java.util.OptionalDouble;
import neckway.hand.ShiftVerdict;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;

/**
 * A shift as the review gives it.
 *
 * @param planned what was to be done
 * @param verdict what became of it
 * @param string where it was made, if it was heard to be
 * @param p probability of the verdict; empty where there is none
 * @param lateMs time from the note before to the landing note, less the median time between notes
 * @param decided seconds of the take that had been heard when it was known
 */
public record ReviewedShift(
    PlannedShift planned,
    ShiftVerdict verdict,
    Optional<GuitarString> string,
    OptionalDouble p,
    OptionalDouble lateMs,
    OptionalDouble decided) {}
