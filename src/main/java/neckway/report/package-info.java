/** A report on a take, to be handed back: one page of HTML that needs nothing else. Pure. */
package neckway.report;
