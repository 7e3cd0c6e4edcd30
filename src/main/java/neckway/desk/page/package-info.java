/**
 * The sheet of paper: a route as tab, inked as it is played; what stands on it, and its drawing.
 */
package neckway.desk.page;
