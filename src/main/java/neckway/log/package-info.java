/** Runs that are kept: the store, and what goes in and out of it. */
package neckway.log;
