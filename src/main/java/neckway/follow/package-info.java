/** Notes and a route to verdicts: the state machine, the pulse, timing, shifts, summary. Pure. */
package neckway.follow;
