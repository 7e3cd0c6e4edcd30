/** Many recordings reviewed one after another: a class of students, a list, and a table. */
package neckway.folder;
