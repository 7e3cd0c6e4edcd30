package neckway.sheet;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.Pitch;
import neckway.neck.Step;
import neckway.words.Wording;

/**
 * A drill as MusicXML 4.0 (W3C Music Notation Community Group, 2021), one part on one tab staff:
 * each note with pitch, string, fret and finger, all rounds, the last bar filled with rests.
 */
public final class MusicXmlSheet {
  private static final String DOCTYPE =
      "<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\""
          + " \"http://www.musicxml.org/dtds/partwise.dtd\">";
  private static final String PART = "P1";

  /** Swing is told to a hundredth. */
  private static final int PARTS_OF_A_PAIR = 100;

  private final PlayableDrill drill;
  private final List<Step> steps;
  private final RoutePlaces places;
  private final NoteValue value;
  private final int notesPerBeat;
  private final int notesPerBar;
  private final int offset;
  private final XMLStreamWriter xml;

  private MusicXmlSheet(PlayableDrill drill, XMLStreamWriter xml) {
    this.drill = drill;
    this.xml = xml;
    steps = drill.route().steps();
    places = new RoutePlaces(drill);
    notesPerBeat = drill.pulse().notesPerBeat();
    notesPerBar = notesPerBeat * drill.pulse().beatsPerBar();
    offset = drill.pulse().slots().offset();
    value = NoteValue.of(notesPerBeat);
  }

  /** The whole file, in UTF-8. */
  public static byte[] of(PlayableDrill drill) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      String utf8 = StandardCharsets.UTF_8.name();
      XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(bytes, utf8);
      xml.writeStartDocument(utf8, "1.0");
      new MusicXmlSheet(drill, xml).score();
      xml.writeEndDocument();
      xml.close();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("XML in memory cannot be written", e);
    }
    return bytes.toByteArray();
  }

  private void score() throws XMLStreamException {
    xml.writeDTD("\n" + DOCTYPE + "\n");
    xml.writeStartElement("score-partwise");
    xml.writeAttribute("version", "4.0");
    open("work");
    leaf("work-title", drill.spokenTitle());
    close();
    open("identification");
    open("encoding");
    leaf("software", "Neckway");
    close();
    close();
    open("part-list");
    open("score-part", "id", PART);
    leaf("part-name", Wording.of("music.sheet.guitar"));
    close();
    close();
    open("part", "id", PART);
    int bars = (offset + steps.size() + notesPerBar - 1) / notesPerBar;
    for (int bar = 0; bar < bars; bar++) {
      measure(bar, bar == bars - 1);
    }
    close();
    close();
  }

  private void measure(int bar, boolean last) throws XMLStreamException {
    open("measure", "number", Integer.toString(bar + 1));
    if (bar == 0) {
      attributes();
      tempo();
    }
    for (int slot = bar * notesPerBar; slot < (bar + 1) * notesPerBar; slot++) {
      if (slot >= offset && slot - offset < steps.size()) {
        note(steps.get(slot - offset));
      } else {
        rest(slot);
      }
    }
    if (last) {
      open("barline", "location", "right");
      leaf("bar-style", "light-heavy");
      close();
    }
    close();
  }

  private void attributes() throws XMLStreamException {
    open("attributes");
    leaf("divisions", notesPerBeat);
    open("key");
    leaf("fifths", drill.key().signs());
    leaf("mode", drill.key().minor() ? "minor" : "major");
    close();
    open("time");
    leaf("beats", drill.pulse().beatsPerBar());
    leaf("beat-type", 4);
    close();
    open("clef");
    leaf("sign", "TAB");
    leaf("line", Math.max(1, drill.tuning().count() - 1));
    close();
    open("staff-details");
    leaf("staff-lines", drill.tuning().count());
    int line = 1;
    for (Pitch open : drill.tuning().lowToHigh()) {
      open("staff-tuning", "line", Integer.toString(line));
      pitch("tuning-", open);
      close();
      line++;
    }
    close();
    close();
  }

  private void tempo() throws XMLStreamException {
    Pulse pulse = drill.pulse();
    String tempo = PracticeWords.plain(pulse.tempo());
    open("direction", "placement", "above");
    open("direction-type");
    open("metronome");
    leaf("beat-unit", "quarter");
    leaf("per-minute", tempo);
    close();
    close();
    if (pulse.swing() == Pulse.STRAIGHT) {
      xml.writeEmptyElement("sound");
      xml.writeAttribute("tempo", tempo);
    } else {
      swing(tempo);
    }
    close();
  }

  /** The notes are written straight, and this says how they are to sound. */
  private void swing(String tempo) throws XMLStreamException {
    int first = (int) Math.round(PARTS_OF_A_PAIR * drill.pulse().swing());
    open("sound", "tempo", tempo);
    open("swing");
    leaf("first", first);
    leaf("second", PARTS_OF_A_PAIR - first);
    leaf("swing-type", value.type());
    leaf("swing-style", PracticeWords.swing(drill.pulse()));
    close();
    close();
  }

  private void note(Step step) throws XMLStreamException {
    int index = step.index();
    if (places.landing(index).isPresent()) {
      open("direction", "placement", "above");
      open("direction-type");
      leaf("words", places.to(places.landing(index).get()));
      close();
      close();
    }
    open("note");
    open("pitch");
    pitch("", drill.key().spell(step.midi()));
    close();
    lengthOf();
    beams(index);
    open("notations");
    tuplet(index + offset);
    if (index > 0 && places.slidesOn(index - 1)) {
      slide("stop");
    }
    if (places.slidesOn(index)) {
      slide("start");
    }
    open("technical");
    leaf("fingering", step.finger());
    leaf("string", step.place().string().number());
    leaf("fret", step.place().fret());
    close();
    close();
    close();
  }

  private void rest(int slot) throws XMLStreamException {
    open("note");
    xml.writeEmptyElement("rest");
    lengthOf();
    if (value.isTuplet() && (beginsBeat(slot) || endsBeat(slot))) {
      open("notations");
      tuplet(slot);
      close();
    }
    close();
  }

  private void lengthOf() throws XMLStreamException {
    leaf("duration", 1);
    leaf("voice", 1);
    leaf("type", value.type());
    if (value.isTuplet()) {
      open("time-modification");
      leaf("actual-notes", value.actual());
      leaf("normal-notes", value.normal());
      close();
    }
  }

  /** Notes of one beat hang on one beam, or several. */
  private void beams(int index) throws XMLStreamException {
    int slot = index + offset;
    boolean first = beginsBeat(slot) || index == 0;
    boolean last = endsBeat(slot) || index == steps.size() - 1;
    if (first && last) {
      return;
    }
    for (int beam = 1; beam <= value.beams(); beam++) {
      open("beam", "number", Integer.toString(beam));
      xml.writeCharacters(first ? "begin" : last ? "end" : "continue");
      close();
    }
  }

  private void tuplet(int slot) throws XMLStreamException {
    if (value.isTuplet() && beginsBeat(slot)) {
      tuplet("start");
    } else if (value.isTuplet() && endsBeat(slot)) {
      tuplet("stop");
    }
  }

  private void tuplet(String type) throws XMLStreamException {
    xml.writeEmptyElement("tuplet");
    xml.writeAttribute("type", type);
  }

  private void slide(String type) throws XMLStreamException {
    xml.writeEmptyElement("slide");
    xml.writeAttribute("type", type);
    xml.writeAttribute("number", "1");
    xml.writeAttribute("line-type", "solid");
  }

  private boolean beginsBeat(int slot) {
    return slot % notesPerBeat == 0;
  }

  private boolean endsBeat(int slot) {
    return slot % notesPerBeat == notesPerBeat - 1;
  }

  private void pitch(String prefix, Pitch pitch) throws XMLStreamException {
    leaf(prefix + "step", String.valueOf(pitch.letter()));
    if (pitch.accidental() != 0) {
      leaf(prefix + "alter", pitch.accidental());
    }
    leaf(prefix + "octave", pitch.octave());
  }

  private void open(String name) throws XMLStreamException {
    xml.writeCharacters("\n");
    xml.writeStartElement(name);
  }

  private void open(String name, String attribute, String given) throws XMLStreamException {
    open(name);
    xml.writeAttribute(attribute, given);
  }

  private void leaf(String name, int number) throws XMLStreamException {
    leaf(name, Integer.toString(number));
  }

  private void leaf(String name, String text) throws XMLStreamException {
    xml.writeStartElement(name);
    xml.writeCharacters(text);
    xml.writeEndElement();
  }

  private void close() throws XMLStreamException {
    xml.writeEndElement();
  }
}
