/** Reading: what a run or a recording was, in sentences, on its page and in close-up. */
package neckway.desk.read;
