package neckway.review;

import neckway.neck.Step;

/**
 * A step as the review gives it.
 *
 * @param step what was to be played
 * @param due when, seconds
 * @param verdict what became of it
 */
public record ReviewedStep(Step step, double due, StepVerdict verdict) {}
