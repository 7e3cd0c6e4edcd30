package neckway.review.words;

/**
 * Something that spoilt notes of a take.
 *
 * @param cost how much, in notes played wrong: that of one is 1
 * @param step index of the step where it was met first
 * @param advice how to work on it: what follows "First: "
 */
record Cause(double cost, int step, String advice) {}
