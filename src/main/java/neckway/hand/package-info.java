/** Where the hand was: places over a run, and what became of each shift. Pure. */
package neckway.hand;
