/** What the fingerboard is: pitch, tuning, key, shape, fingering, join, route. Pure, no I/O. */
package neckway.neck;
