/** What to call next in an open drill, and how the calls were followed. Pure. */
package neckway.calls;
