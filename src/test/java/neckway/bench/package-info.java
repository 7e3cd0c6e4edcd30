/** The benchmark: takes with known truth, the measures, and the table that comes of them. */
package neckway.bench;
