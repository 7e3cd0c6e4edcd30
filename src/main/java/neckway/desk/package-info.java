/** The window: views that bind, and view models that decide and need no screen. */
package neckway.desk;
