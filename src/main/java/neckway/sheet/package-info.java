/** A drill on paper and for other programs: MIDI, MusicXML, PDF, picture. Writes no file itself. */
package neckway.sheet;
