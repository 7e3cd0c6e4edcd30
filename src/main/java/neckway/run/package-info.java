/**
 * One take going through ear, follower, strings, hand and review; live and recorded alike. Pure.
 */
package neckway.run;
