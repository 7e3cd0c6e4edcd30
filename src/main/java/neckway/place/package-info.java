/** Notes to where on the neck. */
package neckway.place;
