/** In which language sentences are said, and the sentences themselves. Pure. */
package neckway.words;
