package neckway.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.Place;
import neckway.neck.Step;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

final class SheetPageTests {
  static List<PlayableDrill> drills() {
    return SheetDrills.many();
  }

  /** Notes what is drawn and where. */
  private static final class NotedCanvas implements Canvas {
    private final Letters letters = new Letters();
    private final List<Rectangle2D> drawn = new ArrayList<>();
    private final List<String> texts = new ArrayList<>();

    @Override
    public void fill(Shape shape, Ink ink) {
      drawn.add(shape.getBounds2D());
    }

    @Override
    public void stroke(Shape shape, double width, Ink ink) {
      drawn.add(shape.getBounds2D());
    }

    @Override
    public void text(String text, double x, double baseline, double size, Ink ink) {
      drawn.add(new Rectangle2D.Double(x, baseline - size, letters.width(text, size), size));
      texts.add(text);
    }

    @Override
    public Letters letters() {
      return letters;
    }
  }

  /** A margin of ten millimetres, which any printer can print on: common practice, no source. */
  @ParameterizedTest
  @MethodSource("drills")
  void allOfItIsWithinWhatCanBePrinted(PlayableDrill drill) {
    NotedCanvas canvas = new NotedCanvas();
    SheetPage.draw(canvas, drill);
    isWithinWhatCanBePrinted(canvas);
  }

  /** German words are longer, and none of them is English. */
  @ParameterizedTest
  @MethodSource("drills")
  void soItIsInGerman(PlayableDrill drill) {
    NotedCanvas canvas = new NotedCanvas();
    Wording.in(
        Tongue.GERMAN,
        () -> {
          SheetPage.draw(canvas, drill);
          return canvas;
        });
    isWithinWhatCanBePrinted(canvas);
    assertThat(canvas.texts)
        .allSatisfy(
            text -> assertThat(text).doesNotContain(" the ", " is ", " and ", " of ", " to "));
    assertThat(String.join(" ", canvas.texts))
        .contains("Tempo", "-Takt", "Die Zahlen auf dem Hals sind Finger", "wehtut");
  }

  private static void isWithinWhatCanBePrinted(NotedCanvas canvas) {
    double margin = 10 / 25.4 * 72;
    Rectangle2D printed =
        new Rectangle2D.Double(
            margin, margin, Canvas.WIDTH - 2 * margin, Canvas.HEIGHT - 2 * margin);
    assertThat(canvas.drawn)
        .allSatisfy(
            box -> {
              assertThat(box.getMinX()).isGreaterThanOrEqualTo(printed.getMinX());
              assertThat(box.getMaxX()).isLessThanOrEqualTo(printed.getMaxX());
              assertThat(box.getMinY()).isGreaterThanOrEqualTo(printed.getMinY());
              assertThat(box.getMaxY()).isLessThanOrEqualTo(printed.getMaxY());
            });
  }

  @ParameterizedTest
  @MethodSource("drills")
  void theTabHasTheRoundsFretsInTheirOrder(PlayableDrill drill) {
    NotedCanvas canvas = new NotedCanvas();
    new TabFigure(canvas, drill, 0, 500).draw(0);
    List<String> figures = canvas.texts.stream().filter(text -> text.matches("\\d+")).toList();
    List<Step> round = drill.route().steps().subList(0, drill.route().stepsPerRound());
    List<String> expected = new ArrayList<>();
    round.forEach(
        step ->
            expected.addAll(List.of("" + step.place().fret(), Integer.toString(step.finger()))));
    assertThat(figures).isEqualTo(expected);
    assertThat(canvas.texts.stream().filter(text -> text.startsWith("to ")))
        .hasSize(drill.route().shifts().size() / drill.rounds());
  }

  @ParameterizedTest
  @MethodSource("drills")
  void theNeckHasEveryNoteWithItsFingers(PlayableDrill drill) {
    NotedCanvas canvas = new NotedCanvas();
    new NeckFigure(canvas, drill, 0, 0, 500).draw();
    Map<Place, String> fingers = new HashMap<>();
    drill.chain().stream()
        .flatMap(shape -> shape.notes().stream())
        .forEach(note -> fingers.merge(note.place(), "" + note.finger(), (a, b) -> a + "/" + b));
    List<Integer> frets = fingers.keySet().stream().map(Place::fret).sorted().toList();
    List<String> expected = new ArrayList<>(fingers.values());
    IntStream.rangeClosed(frets.get(0), frets.get(frets.size() - 1))
        .forEach(fret -> expected.add(Integer.toString(fret)));
    assertThat(canvas.texts.stream().filter(text -> text.matches("[\\d/]+")))
        .containsExactlyInAnyOrderElementsOf(expected);
  }

  @ParameterizedTest
  @MethodSource("drills")
  void thePdfIsOnePageOfA4WithItsFontAndNoPicture(PlayableDrill drill) throws Exception {
    try (PDDocument pdf = Loader.loadPDF(SheetPage.pdf(drill))) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(1);
      // A4 is 210 mm by 297 mm (ISO 216)
      assertThat(pdf.getPage(0).getMediaBox().getWidth() / 72 * 25.4).isBetween(209.9, 210.1);
      assertThat(pdf.getPage(0).getMediaBox().getHeight() / 72 * 25.4).isBetween(296.9, 297.1);
      PDResources resources = pdf.getPage(0).getResources();
      assertThat(resources.getFontNames()).isNotEmpty();
      for (COSName name : resources.getFontNames()) {
        assertThat(resources.getFont(name).isEmbedded()).isTrue();
      }
      assertThat(resources.getXObjectNames()).isEmpty();
      assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo(drill.title());
    }
  }

  @Test
  void thePdfsWordsCanBeFound() throws Exception {
    PlayableDrill drill = SheetDrills.of("G major", "major,dorian", 2, new Pulse(80, 2, 4, 4));
    try (PDDocument pdf = Loader.loadPDF(SheetPage.pdf(drill))) {
      String text = new PDFTextStripper().getText(pdf);
      assertThat(text)
          .contains("G major: major to Dorian", "80 beats a minute", "2 rounds")
          .contains("Begin slowly, at about 40 beats a minute", "stop if anything hurts");
    }
  }

  @Test
  void aGermanPdfSaysThatItIs() throws Exception {
    PlayableDrill drill =
        SheetDrills.of("G major", "major,dorian", 2, new Pulse(132.5, 2, 4, 4, 2 / 3.0, 0.5));
    byte[] file = Wording.in(Tongue.GERMAN, () -> SheetPage.pdf(drill));
    try (PDDocument pdf = Loader.loadPDF(file)) {
      assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("de");
      assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo("G major: Dur bis dorisch");
      assertThat(new PDFTextStripper().getText(pdf).replaceAll("\\s+", " "))
          .contains("Tempo 132,5", "2 Noten pro Schlag", "Swing 66,67 zu 33,33")
          .contains("Einsatz 0,5 Schläge nach dem ersten Schlag", "zu dorisch", "zu Dur");
    }
    assertThat(drill.title()).isEqualTo("G major: major to Dorian");
  }

  @Test
  void lettersThatTheFontLacksAndLongTitlesDoNoHarm() throws Exception {
    String odd = "\u5b57\uD83C\uDFB8\n\t" + "W".repeat(400);
    PlayableDrill drill =
        SheetDrills.of(odd, "G major", "major", "standard", 1, new Pulse(80, 2, 4, 4));
    try (PDDocument pdf = Loader.loadPDF(SheetPage.pdf(drill))) {
      assertThat(new PDFTextStripper().getText(pdf)).startsWith("????WWW");
    }
    NotedCanvas canvas = new NotedCanvas();
    SheetPage.draw(canvas, drill);
    assertThat(canvas.drawn).allMatch(box -> box.getMaxX() < Canvas.WIDTH);
  }

  /** The picture is as dark as the page, strip by strip. */
  @Test
  void thePictureIsTheSamePage() throws Exception {
    PlayableDrill drill = SheetDrills.many().get(0);
    BufferedImage picture = ImageIO.read(new ByteArrayInputStream(SheetPage.png(drill)));
    assertThat(picture.getWidth()).isEqualTo(1240);
    assertThat(picture.getHeight()).isEqualTo(1754);
    BufferedImage page;
    try (PDDocument pdf = Loader.loadPDF(SheetPage.pdf(drill))) {
      page = new PDFRenderer(pdf).renderImageWithDPI(0, 150);
    }
    double[] inPicture = darkness(picture);
    double[] inPage = darkness(page);
    assertThat(Arrays.stream(inPage).sum()).isGreaterThan(10_000);
    for (int strip = 0; strip < inPicture.length; strip++) {
      assertThat(inPicture[strip])
          .as("strip %d", strip)
          .isCloseTo(inPage[strip], within(0.1 * inPage[strip] + 10));
    }
  }

  /** In each strip of 50 rows, how many black dots would be as dark. */
  private static double[] darkness(BufferedImage image) {
    int rows = 50;
    double[] dark = new double[image.getHeight() / rows];
    for (int y = 0; y < dark.length * rows; y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        dark[y / rows] += 1 - image.getRaster().getSample(x, y, 0) / 255.0;
      }
    }
    return dark;
  }
}
