/** What came of a take: verdicts, grid, timing, shifts and summary of its best attempt. Pure. */
package neckway.review;
