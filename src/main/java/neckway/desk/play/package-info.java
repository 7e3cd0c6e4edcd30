/** Playing: the sound check before a run, the run, its count-in, rounds and rests. */
package neckway.desk.play;
