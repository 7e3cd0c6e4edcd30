/** Options that commands share. */
package neckway.cli.option;
