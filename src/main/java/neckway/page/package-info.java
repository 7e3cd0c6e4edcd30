/** What stands on the page of a run, for terminal and window alike. Pure. */
package neckway.page;
