/** Choosing a drill: the neck, its stands and joins, and hearing how the route should sound. */
package neckway.desk.choose;
