/** The live run: devices, take file and follower joined, for the terminal and the window alike. */
package neckway.live;
