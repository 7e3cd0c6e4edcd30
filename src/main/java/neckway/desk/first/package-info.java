/** What is asked at the very first start, one question at a time, each to be skipped. */
package neckway.desk.first;
