package neckway.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.xml.bind.JAXBElement;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import javax.xml.xpath.XPath;
import javax.xml.xpath.XPathConstants;
import javax.xml.xpath.XPathFactory;
import neckway.drill.PlayableDrill;
import neckway.neck.Pitch;
import neckway.neck.Step;
import org.audiveris.proxymusic.Fret;
import org.audiveris.proxymusic.Notations;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.ScorePartwise;
import org.audiveris.proxymusic.Technical;
import org.audiveris.proxymusic.util.Marshalling;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.w3c.dom.bootstrap.DOMImplementationRegistry;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * What is written is held against the schema of MusicXML 4.0 as it is published (W3C Music Notation
 * Community Group, 2021; the copy in ProxyMusic's jar) and read by ProxyMusic and by XPath.
 */
final class MusicXmlSheetTests {
  private static final String MUSICXML_SCHEMA = "META-INF/jaxb/xsd/musicxml.xsd";

  /** The attributes of XML itself (XML 1.0, 2.10 and 2.12) that the schema refers to. */
  private static final String XML_ATTRIBUTES =
      """
      <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema"
          targetNamespace="http://www.w3.org/XML/1998/namespace">
        <xs:attribute name="lang" type="xs:language"/>
        <xs:attribute name="space" type="xs:NCName"/>
      </xs:schema>
      """;

  /** Those of XLink 1.0 that it refers to; a sheet has none of them. */
  private static final String XLINK_ATTRIBUTES =
      """
      <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema"
          targetNamespace="http://www.w3.org/1999/xlink">
        <xs:attribute name="href" type="xs:anyURI"/>
        <xs:attribute name="type" type="xs:string"/>
        <xs:attribute name="role" type="xs:string"/>
        <xs:attribute name="title" type="xs:string"/>
        <xs:attribute name="show" type="xs:string"/>
        <xs:attribute name="actuate" type="xs:string"/>
      </xs:schema>
      """;

  private static final XPath XPATH = XPathFactory.newInstance().newXPath();
  private static Schema schema;

  static List<PlayableDrill> drills() {
    return SheetDrills.many();
  }

  private static Document read(byte[] xml) throws Exception {
    DocumentBuilder builder = DocumentBuilderFactory.newDefaultNSInstance().newDocumentBuilder();
    // the document type is named by its public address, which is not asked for
    builder.setEntityResolver((name, address) -> new InputSource(new StringReader("")));
    return builder.parse(new ByteArrayInputStream(xml));
  }

  private static synchronized Schema schema() throws Exception {
    if (schema == null) {
      SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
      DOMImplementationLS load =
          (DOMImplementationLS) DOMImplementationRegistry.newInstance().getDOMImplementation("LS");
      factory.setResourceResolver(
          (type, namespace, name, address, base) -> {
            LSInput input = load.createLSInput();
            input.setStringData(
                namespace.equals(XMLConstants.XML_NS_URI) ? XML_ATTRIBUTES : XLINK_ATTRIBUTES);
            return input;
          });
      ClassLoader loader = Marshalling.class.getClassLoader();
      schema = factory.newSchema(new StreamSource(loader.getResourceAsStream(MUSICXML_SCHEMA)));
    }
    return schema;
  }

  private static boolean isValid(Document document) throws Exception {
    try {
      schema().newValidator().validate(new DOMSource(document));
      return true;
    } catch (SAXException e) {
      return false;
    }
  }

  private static List<String> texts(Node from, String path) throws Exception {
    NodeList nodes = (NodeList) XPATH.evaluate(path, from, XPathConstants.NODESET);
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      texts.add(nodes.item(i).getTextContent());
    }
    return texts;
  }

  @ParameterizedTest
  @MethodSource("drills")
  void itIsValid(PlayableDrill drill) throws Exception {
    schema().newValidator().validate(new DOMSource(read(MusicXmlSheet.of(drill))));
  }

  @Test
  void theSchemaFindsAFault() throws Exception {
    Document document = read(MusicXmlSheet.of(SheetDrills.many().get(0)));
    assertThat(isValid(document)).isTrue();
    document.getElementsByTagName("fret").item(0).setTextContent("five");
    assertThat(isValid(document)).isFalse();
  }

  @ParameterizedTest
  @MethodSource("drills")
  void eachNoteIsTheRoutes(PlayableDrill drill) throws Exception {
    Document document = read(MusicXmlSheet.of(drill));
    List<Step> steps = drill.route().steps();
    assertThat(texts(document, "//technical/string"))
        .isEqualTo(steps.stream().map(s -> s.place().string().toString()).toList());
    assertThat(texts(document, "//technical/fret"))
        .isEqualTo(steps.stream().map(s -> Integer.toString(s.place().fret())).toList());
    assertThat(texts(document, "//technical/fingering"))
        .isEqualTo(steps.stream().map(s -> Integer.toString(s.finger())).toList());
    NodeList pitches = (NodeList) XPATH.evaluate("//note/pitch", document, XPathConstants.NODESET);
    assertThat(pitches.getLength()).isEqualTo(steps.size());
    for (int i = 0; i < steps.size(); i++) {
      String alter = XPATH.evaluate("alter", pitches.item(i));
      Pitch pitch =
          new Pitch(
              XPATH.evaluate("step", pitches.item(i)).charAt(0),
              alter.isEmpty() ? 0 : Integer.parseInt(alter),
              Integer.parseInt(XPATH.evaluate("octave", pitches.item(i))));
      assertThat(pitch.midi()).isEqualTo(steps.get(i).midi());
    }
  }

  @ParameterizedTest
  @MethodSource("drills")
  void everyBarIsFullAndEveryTupletEnds(PlayableDrill drill) throws Exception {
    Document document = read(MusicXmlSheet.of(drill));
    int divisions = Integer.parseInt(texts(document, "//divisions").get(0));
    NodeList bars = (NodeList) XPATH.evaluate("//measure", document, XPathConstants.NODESET);
    for (int bar = 0; bar < bars.getLength(); bar++) {
      double length =
          (double) XPATH.evaluate("sum(note/duration)", bars.item(bar), XPathConstants.NUMBER);
      assertThat(length).isEqualTo(divisions * drill.pulse().beatsPerBar());
      assertThat(texts(bars.item(bar), "note/notations/tuplet[@type='start']"))
          .hasSameSizeAs(texts(bars.item(bar), "note/notations/tuplet[@type='stop']"));
    }
    assertThat(texts(document, "//beam[.='begin']"))
        .hasSameSizeAs(texts(document, "//beam[.='end']"));
    assertThat(texts(document, "//slide[@type='start']"))
        .hasSameSizeAs(texts(document, "//slide[@type='stop']"));
    assertThat(texts(document, "//words")).hasSize(drill.route().shifts().size());
  }

  @ParameterizedTest
  @MethodSource("drills")
  void theHeadNamesTitleKeyMetreTempoAndTuning(PlayableDrill drill) throws Exception {
    Document document = read(MusicXmlSheet.of(drill));
    assertThat(texts(document, "//work-title")).containsExactly(drill.title());
    assertThat(texts(document, "//fifths")).containsExactly("" + drill.key().signs());
    assertThat(texts(document, "//time/beats")).containsExactly("" + drill.pulse().beatsPerBar());
    assertThat(Double.parseDouble(XPATH.evaluate("//sound/@tempo", document)))
        .isEqualTo(drill.pulse().tempo());
    assertThat(texts(document, "//clef/sign")).containsExactly("TAB");
    assertThat(texts(document, "//tuning-octave"))
        .isEqualTo(drill.tuning().lowToHigh().stream().map(p -> "" + p.octave()).toList());
    assertThat(texts(document, "//tuning-step"))
        .isEqualTo(drill.tuning().lowToHigh().stream().map(p -> "" + p.letter()).toList());
  }

  @Test
  void anotherProgramsReaderFindsTheFrets() throws Exception {
    PlayableDrill drill = SheetDrills.many().get(1);
    ScorePartwise score =
        (ScorePartwise) Marshalling.unmarshal(new ByteArrayInputStream(MusicXmlSheet.of(drill)));
    assertThat(score.getVersion()).isEqualTo("4.0");
    List<Integer> frets = new ArrayList<>();
    for (ScorePartwise.Part.Measure bar : score.getPart().get(0).getMeasure()) {
      bar.getNoteOrBackupOrForward().stream()
          .filter(Note.class::isInstance)
          .flatMap(note -> ((Note) note).getNotations().stream())
          .map(Notations::getTiedOrSlurOrTuplet)
          .flatMap(List::stream)
          .filter(Technical.class::isInstance)
          .flatMap(t -> ((Technical) t).getUpBowOrDownBowOrHarmonic().stream())
          .map(JAXBElement::getValue)
          .filter(Fret.class::isInstance)
          .forEach(fret -> frets.add(((Fret) fret).getValue().intValue()));
    }
    assertThat(frets).isEqualTo(drill.route().steps().stream().map(s -> s.place().fret()).toList());
  }
}
