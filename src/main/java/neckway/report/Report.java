package neckway.report;

import java.util.List;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.review.Remarks;
import neckway.review.Review;
import neckway.review.words.Phrases;
import neckway.review.words.Sentence;
import neckway.review.words.Words;
import neckway.words.Wording;

/**
 * A report on a take, to be handed back to whoever played it: one page of HTML, well-formed as XML
 * too, with no script and with nothing that is fetched from elsewhere. What to do next comes first.
 */
public final class Report {
  /** How much is heard before a moment and after it, in slots. */
  private static final double BEFORE_SLOTS = 4;

  private static final double AFTER_SLOTS = 3;

  private static final double LEAST_BEFORE_SECONDS = 1.2;
  private static final double MOST_BEFORE_SECONDS = 2;
  private static final double LEAST_AFTER_SECONDS = 1;
  private static final double MOST_AFTER_SECONDS = 1.5;

  /** However many slips follow on one another, no more is heard at once. */
  private static final double LONGEST_SECONDS = 6;

  private final Told told;
  private final Optional<String> takeName;
  private final Names names;
  private final Clips clips;
  private final Markup out = new Markup();

  /** Whether names are told. */
  public enum Names {
    /** The drill's title and the take's file. */
    TOLD,
    /** Neither: the drill goes by its key and shapes. */
    LEFT_OUT
  }

  private Report(Told told, Optional<String> takeName, Names names, Clips clips) {
    this.told = told;
    this.takeName = takeName;
    this.names = names;
    this.clips = clips;
  }

  /**
   * What is worth hearing again.
   *
   * @param time seconds from the first sample of the take
   * @param words what was heard there
   * @param doubt whether it is unsure; else it is a slip
   */
  public record WorthHearing(double time, String words, boolean doubt) {}

  /** The doubts and the slips of a take, in the order of their time. */
  public static List<WorthHearing> worthHearing(PlayableDrill drill, Review review) {
    return Moments.of(new Told(drill, review, Remarks.NONE)).stream()
        .flatMap(group -> group.moments().stream())
        .map(m -> new WorthHearing(m.time(), m.words(), m.kind() == Moments.Kind.DOUBT))
        .toList();
  }

  /**
   * The whole page.
   *
   * @param takeName name of the take's file, where it is known
   * @param clips the sound, where it is at hand
   */
  public static String html(
      PlayableDrill drill,
      Review review,
      Remarks remarks,
      Optional<String> takeName,
      Names names,
      Clips clips) {
    Report report = new Report(new Told(drill, review, remarks), takeName, names, clips);
    report.page();
    return report.out + "\n";
  }

  /**
   * The same on paper, as a PDF file: two pages of A4, of which Letter paper has room for all, the
   * font embedded. There is nothing to hear in it.
   *
   * @param takeName name of the take's file, where it is known
   */
  public static byte[] pdf(
      PlayableDrill drill, Review review, Remarks remarks, Optional<String> takeName, Names names) {
    return PaperReport.of(html(drill, review, remarks, takeName, names, Clips.NONE));
  }

  private String title() {
    return names == Names.TOLD ? told.drill.spokenTitle() : told.drill.key() + ", " + shapes();
  }

  private String shapes() {
    List<String> shapes = told.drill.shapes().stream().map(Phrases::shape).toList();
    return shapes.size() == 1
        ? Wording.of("report.shape", shapes.get(0))
        : Wording.of("report.shapes", shapes.get(0), shapes.get(shapes.size() - 1));
  }

  private void page() {
    out.raw("<!DOCTYPE html>");
    out.open("html", "lang", Wording.of("report.language")).open("head");
    out.empty("meta", "charset", "utf-8");
    out.empty("meta", "name", "generator", "content", "Neckway report");
    out.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    out.empty(
        "meta",
        "http-equiv",
        "Content-Security-Policy",
        "content",
        "default-src 'none'; style-src 'unsafe-inline'; media-src data:");
    out.element("title", Wording.of("report.title", title()));
    out.open("style").raw(ReportStyle.CSS).close();
    out.close().open("body").open("main");
    head();
    next();
    what();
    if (told.fits()) {
      pictures();
    }
    moments();
    foot();
    out.close().close().close();
  }

  private void pictures() {
    section(Wording.of("report.notes"), () -> new TabPicture(told).write(out));
    section(Wording.of("report.neck"), () -> new NeckPicture(told).write(out));
    section(Wording.of("report.shifts"), () -> new ShiftTable(told).write(out));
    section(Wording.of("report.time"), () -> new TimePicture(told).write(out));
  }

  private void section(String title, Runnable content) {
    out.open("section").element("h2", title);
    content.run();
    out.close();
  }

  private void head() {
    out.open("header").element("h1", Wording.of("report.title", title()));
    String what =
        Wording.of(
            "report.what",
            told.drill.key(),
            shapes(),
            told.drill.start(),
            Math.round(told.review.grid().tempo()),
            Phrases.count(told.drill.pulse().notesPerBeat(), "note"),
            told.drill.rounds() > 1 ? Wording.of("report.what.rounds", told.drill.rounds()) : "");
    String take =
        names == Names.TOLD
            ? takeName.map(name -> " " + Wording.of("report.recording", name)).orElse("")
            : "";
    out.element("p", what + take, "class", "small").close();
  }

  private List<Sentence> sentences() {
    return Words.said(told.drill, told.review);
  }

  private void next() {
    List<Sentence> next = sentences().stream().filter(s -> s.part() == Sentence.Part.NEXT).toList();
    out.open("section", "class", "next");
    out.element("h2", Wording.of("report.next"));
    told.remarks
        .overall()
        .ifPresent(
            text ->
                out.open("p")
                    .element("strong", Wording.of("report.teacher") + " ")
                    .text(text)
                    .close());
    if (next.isEmpty() && told.remarks.overall().isEmpty()) {
      out.element("p", Wording.of("report.next.none"));
    }
    next.forEach(sentence -> sentence(sentence, "p"));
    out.close();
  }

  private void what() {
    out.open("section").element("h2", Wording.of("report.happened")).open("ul");
    sentences().stream()
        .filter(s -> s.part() != Sentence.Part.NEXT)
        .forEach(sentence -> sentence(sentence, "li"));
    out.close().close();
  }

  private void sentence(Sentence sentence, String element) {
    boolean disputed =
        sentence.steps().stream().anyMatch(step -> told.overruled(step).isPresent())
            || sentence.part() == Sentence.Part.SCORE && told.isDisputed();
    out.element(
        element, disputed ? Wording.of("report.disputed", sentence.text()) : sentence.text());
  }

  private void moments() {
    List<Moments.Group> all = Moments.of(told);
    if (all.isEmpty()) {
      return;
    }
    List<Moments.Group> heard = Moments.heard(all);
    List<Clips.Clip> cut = clips.cut(heard.stream().map(this::stretch).toList());
    out.open("section", "class", "listen");
    out.element("h2", Wording.of(cut.isEmpty() ? "report.moments" : "report.listen"));
    if (heard.size() < all.size()) {
      out.element(
          "p", Wording.of("report.moments.some", heard.size(), all.size()), "class", "small");
    }
    out.open("ol", "class", "moments");
    for (int i = 0; i < heard.size(); i++) {
      moment(heard.get(i), cut.isEmpty() ? Optional.empty() : Optional.of(cut.get(i)));
    }
    out.close().close();
  }

  private Clips.Stretch stretch(Moments.Group group) {
    double slot = told.review.grid().slotSeconds();
    double before =
        Math.max(LEAST_BEFORE_SECONDS, Math.min(MOST_BEFORE_SECONDS, BEFORE_SLOTS * slot));
    double after = Math.max(LEAST_AFTER_SECONDS, Math.min(MOST_AFTER_SECONDS, AFTER_SLOTS * slot));
    double from = Math.max(0, group.from() - before);
    return new Clips.Stretch(from, Math.min(from + LONGEST_SECONDS, group.to() + after));
  }

  private void moment(Moments.Group group, Optional<Clips.Clip> clip) {
    out.open("li");
    for (Moments.Moment each : group.moments()) {
      out.open("p")
          .element("span", Wording.of("report.at", Moments.time(each.time())), "class", "time");
      out.text(": " + each.words());
      if (each.kind() == Moments.Kind.DOUBT) {
        out.text(" ").element("strong", Wording.of("report.doubt"), "class", "doubt");
      }
      out.close();
    }
    clip.filter(c -> c.sound().length > 0)
        .ifPresent(
            c -> {
              out.open("div", "class", "sound");
              player(Wording.of("report.asPlayed"), c.sound(), c.sampleRate());
              player(Wording.of("report.halfSpeed"), c.slow(), c.sampleRate());
              out.close();
            });
    out.close();
  }

  private void player(String name, float[] sound, double sampleRate) {
    out.open("label").element("span", name);
    out.open(
        "audio",
        "controls",
        "controls",
        "preload",
        "metadata",
        "src",
        SmallWav.uri(sound, sampleRate));
    out.close().close();
  }

  private void foot() {
    out.element("footer", Wording.of("report.foot"));
  }
}
