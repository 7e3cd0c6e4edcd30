/** How a review is said: the sentences a teacher would say. Pure. */
package neckway.review.words;
