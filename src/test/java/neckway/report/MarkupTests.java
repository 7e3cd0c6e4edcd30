package neckway.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.StringReader;
import javax.xml.parsers.DocumentBuilderFactory;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

/** Held against the Java library's own XML reader. */
final class MarkupTests {
  @Property(tries = 300)
  void anyTextIsTextAndNothingElse(@ForAll String text) throws Exception {
    String written = new Markup().open("p", "title", text).text(text).close().toString();
    Element read =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(written)))
            .getDocumentElement();
    assertThat(read.getChildNodes().getLength()).isLessThanOrEqualTo(1);
    assertThat(read.getTextContent().length()).isLessThanOrEqualTo(text.length());
    assertThat(read.getAttributes().getLength()).isEqualTo(1);
  }

  @Test
  void whatIsNotClosedIsAFault() {
    Markup markup = new Markup().open("p");
    assertThatThrownBy(markup::toString).isInstanceOf(IllegalStateException.class);
  }
}
