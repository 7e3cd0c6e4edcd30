/** Sound that is known beforehand and leaks into the take, such as a backing: taken out again. */
package neckway.hear.beside;
