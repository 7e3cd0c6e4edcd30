/** Drill, review and sound files. */
package neckway.file;
