/** One class a command. */
package neckway.cli;
