/** What is to be played: a drill, its pulse, and the route that comes of both. Pure. */
package neckway.drill;
