/** What commands print. */
package neckway.cli.text;
