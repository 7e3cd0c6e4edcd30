/** The application: the frame with every view in it. */
package neckway.desk.app;
