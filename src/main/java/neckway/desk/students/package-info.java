/**
 * A teacher's class: the recordings of a folder, what is unsure in them, the teacher's verdicts.
 */
package neckway.desk.students;
