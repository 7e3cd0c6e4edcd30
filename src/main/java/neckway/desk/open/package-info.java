/** What is open of the neck, what to play next, and what is kept of runs. */
package neckway.desk.open;
