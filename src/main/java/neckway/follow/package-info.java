/**
 * Which step was it: notes and a route to verdicts, given once and kept. Pure; knows no strings.
 */
package neckway.follow;
