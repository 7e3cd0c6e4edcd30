/** What is open of the neck, and what to play next. */
package neckway.practice;
