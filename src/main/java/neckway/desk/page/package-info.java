/**
 * Draws the sheet of paper: a route as tab, inked as it is played. What stands on it is asked of
 * {@link neckway.page}.
 */
package neckway.desk.page;
