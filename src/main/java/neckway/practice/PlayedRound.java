package neckway.practice;

import java.time.Instant;
import java.time.LocalDate;
import java.util.OptionalDouble;

/**
 * One round of a run, as far as one exercise goes.
 *
 * @param exercise what was exercised
 * @param when the run was played
 * @param day the same where the player was
 * @param clean whether it was played without a fault
 * @param tempo beats a minute, as of two notes a beat
 * @param lateMs how late the landing came, where there was one and it was heard
 */
public record PlayedRound(
    Exercise exercise,
    Instant when,
    LocalDate day,
    boolean clean,
    double tempo,
    OptionalDouble lateMs) {}
