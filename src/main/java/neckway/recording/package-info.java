/** A recording heard from its beginning to its end, and reviewed. */
package neckway.recording;
