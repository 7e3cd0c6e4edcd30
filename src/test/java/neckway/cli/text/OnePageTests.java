package neckway.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import neckway.cli.text.PrintedPage.Printed;
import neckway.desk.SilentOutput;
import neckway.desk.Texts;
import neckway.desk.page.PageLegend;
import neckway.desk.page.PageWords;
import neckway.desk.read.ReadTake;
import neckway.desk.read.ReadingModel;
import neckway.follow.Verdict;
import neckway.page.PageJson;
import neckway.page.PageModel;
import neckway.page.PageSign;
import neckway.page.PageStep;
import neckway.page.PagedTake;
import neckway.page.TimeFigure.Measure;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Sentence, terminal and window say the same of a take: on the takes of {@code test-audio} and on
 * fifty of the virtual player.
 */
class OnePageTests {
  private static final int PERFORMED = 50;
  private static final int WIDTH = 80;
  private static final Pattern LANDED =
      Pattern.compile("landed (?:(\\d+) ms|([\\d.]+) seconds|(a second)) late");
  private static final Pattern WRONG =
      Pattern.compile("sounded like (?:fret (\\d+)|([A-G][#b]*-?\\d)|the open string)");

  private static final List<PagedTake> TAKES = new ArrayList<>();

  @BeforeAll
  static void play() {
    Stream.of(
            "clean-run", "late-landing", "loud-room", "missed-shift", "moved-shift", "three-slips")
        .map(PagedTake::recorded)
        .forEach(TAKES::add);
    TAKES.add(withItsStrayTwice(TAKES.get(2)));
    TAKES.add(PagedTake.recordedOnItsGuitar("moved-shift"));
    TAKES.addAll(PagedTake.performed(PERFORMED));
  }

  /** No player here plays two stray notes after one step: the one there is is told again. */
  private static PagedTake withItsStrayTwice(PagedTake take) {
    Review of = take.review();
    List<ReviewedNote> notes = new ArrayList<>(of.notes());
    int stray =
        IntStream.range(0, notes.size())
            .filter(i -> notes.get(i).verdict() == Verdict.EXTRA)
            .findFirst()
            .orElseThrow();
    notes.add(stray, notes.get(stray));
    Review review =
        new Review(
            of.take(),
            of.guitar(),
            of.clock(),
            of.grid(),
            notes,
            of.attempts(),
            of.reviewed(),
            of.steps(),
            of.shifts(),
            of.summary());
    PageModel live = new PageModel(take.drill());
    live.review(review);
    return new PagedTake("a stray twice", take.drill(), review, live, steps(live));
  }

  /** What the terminal draws. */
  private static PageModel terminal(PagedTake take) {
    return new Page(take.drill(), take.review(), WIDTH).model();
  }

  /** What the window draws. */
  private static PageModel window(PagedTake take) {
    ReadingModel reading =
        new ReadingModel(new SilentOutput(), () -> 1, Runnable::run, Runnable::run);
    reading.open(
        ReadTake.played(take.drill(), take.review(), Optional.empty(), OptionalInt.empty()));
    return reading.page().get();
  }

  private static List<PageStep> steps(PageModel page) {
    return IntStream.range(0, page.steps()).mapToObj(page::at).toList();
  }

  private static String printed(PagedTake take) {
    StringWriter out = new StringWriter();
    new Page(take.drill(), take.review(), WIDTH).print(new PrintWriter(out, true));
    return out.toString();
  }

  /** The take whose shift up is told to land a quarter of a second late. */
  @Test
  void aLateLandingIsOneNumberInSentenceTerminalAndWindow() {
    PagedTake take = TAKES.get(1);
    assertThat(take.review().summary().words()).anyMatch(s -> s.contains("landed 220 ms late"));
    int landing = take.review().shifts().get(0).planned().landingStep();
    assertThat(new PageWords().spoken(window(take), landing))
        .contains("220 ms late")
        .doesNotContain("early");
    assertThat(PrintedPage.read(printed(take)).get(landing).ms()).isEqualTo("+220");
  }

  @Test
  void bothFacesDrawTheSamePage() {
    for (PagedTake take : TAKES) {
      ArrayNode terminal = PageJson.of(terminal(take));
      assertThat(PageJson.of(window(take))).as(take.name()).isEqualTo(terminal);
      PageModel filledThenRead = take.live();
      filledThenRead.review(take.review());
      assertThat(PageJson.of(filledThenRead)).as(take.name()).isEqualTo(terminal);
    }
  }

  /** All but what needs the whole take: how late a shift landed, and that one was not reached. */
  @Test
  void thePageIsFilledInAsItWillBeRead() {
    int compared = 0;
    for (PagedTake take : TAKES) {
      List<PageStep> read = steps(terminal(take));
      boolean lastTry = take.review().reviewed() == take.review().attempts() - 1;
      for (int i = 0; lastTry && i < read.size(); i++) {
        PageStep live = take.asPlayed().get(i);
        String at = take.name() + ", step " + i;
        assertThat(live.sign()).as(at).isEqualTo(read.get(i).sign());
        assertThat(live.heard()).as(at).isEqualTo(read.get(i).heard());
        assertThat(live.strays()).as(at).isEqualTo(read.get(i).strays());
        if (read.get(i).time().filter(t -> t.measure() == Measure.LANDED_LATE).isEmpty()) {
          assertThat(live.timeLabel()).as(at).isEqualTo(read.get(i).timeLabel());
          compared++;
        }
        if (!read.get(i).landingSign().startsWith(".")) {
          assertThat(live.landings()).as(at).isEqualTo(read.get(i).landings());
        }
      }
    }
    assertThat(compared).isGreaterThan(1000);
  }

  @Test
  void thePrintedPageReadsBackAsTheModel() {
    for (PagedTake take : TAKES) {
      List<Printed> model =
          steps(terminal(take)).stream()
              .map(
                  s ->
                      new Printed(
                          s.played().place().string().number(),
                          s.sign(),
                          s.plannedSign().isEmpty()
                              ? ""
                              : s.due().place().string() + s.plannedSign(),
                          s.landingSign(),
                          s.heardLabel(),
                          s.strayLabel(),
                          s.timeLabel()))
              .toList();
      String page = printed(take);
      assertThat(PrintedPage.read(page)).as(take.name()).isEqualTo(model);
      assertThat(page.lines()).allMatch(line -> line.length() <= WIDTH);
    }
  }

  @Test
  void theWindowSaysOfEachStepWhatItsLabelsSay() {
    PageWords words = new PageWords();
    for (PagedTake take : TAKES) {
      PageModel page = window(take);
      for (PageStep step : steps(page)) {
        String said = words.spoken(page, step.due().index());
        assertThat(SpokenStep.read(said))
            .as(take.name() + ": " + said)
            .isEqualTo(
                new SpokenStep(
                    step.due().index(),
                    step.played().place().string().number(),
                    step.sign(),
                    step.plannedSign(),
                    step.heardLabel(),
                    step.strayLabel(),
                    step.timeLabel()));
      }
    }
  }

  /** The figures under late landings are those of the sentence, where it is said. */
  @Test
  void theSentenceAboutLateLandingsHasThePagesFigures() {
    int said = 0;
    for (PagedTake take : TAKES) {
      List<String> inSentence =
          found(take, LANDED).map(OnePageTests::landedMs).map(ms -> "+" + ms).sorted().toList();
      List<String> onPage =
          steps(terminal(take)).stream()
              .filter(s -> s.time().filter(t -> t.measure() == Measure.LANDED_LATE).isPresent())
              .map(PageStep::timeLabel)
              .sorted()
              .toList();
      assertThat(inSentence).as(take.name()).isEqualTo(onPage);
      said += inSentence.size();
    }
    assertThat(said).isGreaterThan(5);
  }

  private static long landedMs(MatchResult said) {
    if (said.group(1) != null) {
      return Long.parseLong(said.group(1));
    }
    return said.group(2) != null ? Math.round(1000 * Double.parseDouble(said.group(2))) : 1000;
  }

  /**
   * A sentence names up to three wrong notes, in the order of the page; the same one of several
   * rounds is named once.
   */
  @Test
  void theSentenceNamesWrongNotesAsThePageDoes() {
    int named = 0;
    for (PagedTake take : TAKES) {
      List<String> inSentence = found(take, WRONG).map(OnePageTests::heardLabel).toList();
      List<String> onPage =
          steps(terminal(take)).stream()
              .filter(step -> !step.heardLabel().isEmpty())
              .map(step -> inRound(take, step) + " " + step.heardLabel())
              .distinct()
              .limit(3)
              .map(placeAndLabel -> placeAndLabel.split(" ")[1])
              .toList();
      assertThat(inSentence).as(take.name()).isEqualTo(onPage);
      named += inSentence.size();
    }
    assertThat(named).isGreaterThan(10);
  }

  /** "4" for a fret, "0" for the open string, "C#4" for a note. */
  private static String heardLabel(MatchResult said) {
    if (said.group(1) != null) {
      return said.group(1);
    }
    return said.group(2) != null ? said.group(2) : "0";
  }

  /** Steps from the bottom of its round; the last note of all is above none. */
  private static int inRound(PagedTake take, PageStep step) {
    int index = step.due().index();
    int half = take.drill().route().stepsPerRound() - 1;
    boolean last = index == take.drill().route().steps().size() - 1;
    return last ? half : index % half;
  }

  private static Stream<MatchResult> found(PagedTake take, Pattern pattern) {
    return pattern.matcher(String.join(" ", take.review().summary().words())).results();
  }

  /** A sign is in the legend if and only if it is on the page. */
  @Test
  void theLegendHasTheSignsThatStandThereAndNoOther() {
    for (PagedTake take : TAKES) {
      List<PageStep> steps = steps(terminal(take));
      String page = printed(take);
      String legend = page.substring(page.lastIndexOf("|\n") + 2);
      legend = legend.substring(legend.indexOf("\n\n")).replaceAll("\\s+", " ");
      for (String[] each : SIGNS) {
        boolean stands = steps.stream().anyMatch(s -> shape(s).contains(each[0]));
        assertThat(legend.contains(each[1])).as(take.name() + ": " + each[1]).isEqualTo(stands);
      }
    }
  }

  /** The window's legend has the same signs in the same order, each once. */
  @Test
  void theWindowsLegendHasTheSignsThatStandThereAndNoOther() {
    Map<PageSign, String> words = new EnumMap<>(PageSign.class);
    for (PagedTake take : TAKES) {
      PageModel page = window(take);
      List<PageSign> signs = PageSign.on(page);
      String[] told = PageLegend.of(page).split(Pattern.quote(Texts.of("page.legend.between")));
      assertThat(told).as(take.name()).hasSameSizeAs(signs);
      for (int i = 0; i < told.length; i++) {
        words.putIfAbsent(signs.get(i), told[i]);
        assertThat(told[i]).isEqualTo(words.get(signs.get(i)));
      }
    }
    assertThat(words).containsOnlyKeys(PageSign.values());
    assertThat(words.values()).doesNotHaveDuplicates();
  }

  /** A sign as it shows in a step's shape, and in the legend. */
  private static final String[][] SIGNS = {
    {"sign=7;", "7 right"},
    {"sign=7x", "7x wrong"},
    {"sign=(7)", "(7) left out"},
    {"sign=7?", "7? played"},
    {"\";", "7\" struck twice"},
    {"sign=.7", ".7 not reached"},
    {"planned=:7", ":7 planned here"},
    {"sign=:7?", ":7? right, but"},
    {"stray=N", "stray: "},
    {"stray=N+", "E4+1: "},
    {"landing=^4", "^4: "},
    {"landing=^?", "^?: "},
    {"landing=.^", ".^: "},
    {"ms=0", "ms: "},
    {"ms=?", "?: cannot"},
    {"LANDED_LATE", "how late it landed"}
  };

  /** What stands at a step with its figures and names made alike. */
  private static String shape(PageStep step) {
    return "sign="
        + step.sign().replaceAll("\\d+", "7")
        + ";planned="
        + step.plannedSign().replaceAll("\\d+", "7")
        + ";stray="
        + step.strayLabel().replaceAll("^[A-G][b#]*\\d", "N")
        + ";landing="
        + step.landingSign().replace('v', '^').replaceAll("\\d", "4")
        + ";ms="
        + step.timeLabel().replaceAll("[+-]?\\d+", "0")
        + ";"
        + step.time().map(t -> t.measure().name()).orElse("");
  }

  /** The takes have in them all that can stand on a page, else the tests above prove little. */
  @Test
  void theTakesHaveEachSign() {
    Set<String> there = new TreeSet<>();
    for (PagedTake take : TAKES) {
      for (PageStep step : steps(terminal(take))) {
        for (String[] each : SIGNS) {
          if (shape(step).contains(each[0])) {
            there.add(each[1]);
          }
        }
      }
    }
    assertThat(there)
        .containsExactlyInAnyOrder(Stream.of(SIGNS).map(s -> s[1]).toArray(String[]::new));
    assertThat(TAKES).anyMatch(t -> t.review().attempts() > 1);
    assertThat(TAKES).anyMatch(t -> t.drill().rounds() > 1);
    assertThat(TAKES)
        .anyMatch(t -> steps(terminal(t)).stream().anyMatch(s -> s.heardLabel().matches("\\d+")))
        .anyMatch(
            t -> steps(terminal(t)).stream().anyMatch(s -> s.heardLabel().matches("[A-G].*")));
  }
}
