package neckway.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import neckway.bench.Benchmark.Family;
import neckway.bench.Totals.Spread;

/** Lays the figures out as a page of tables. */
final class BenchmarkTable {
  /** Rights that a take of random notes may have by chance, and any other stranger. */
  private static final int RANDOM_RIGHTS = 8;

  private static final int STRANGER_RIGHTS = 1;

  private final List<String> rows = new ArrayList<>();
  private final List<String> strangers = new ArrayList<>();
  private final List<String> others = new ArrayList<>();
  private final List<String> speed = new ArrayList<>();
  private final Set<String> remarks = new LinkedHashSet<>();
  private int mainTakes;

  void main(Family clean, Family dirty) {
    mainTakes = clean.totals().takes + dirty.totals().takes;
    Totals c = clean.totals();
    Totals d = dirty.totals();
    row("notes played", "", text(c.wide.truth()), "", text(d.wide.truth()), "", "");
    row(
        "note F1, onset 50 ms and 50 cents, maximum matching",
        ">= 0.999",
        f1(c.wide.f1()),
        ">= 0.985",
        f1(d.wide.f1()),
        aubio(clean, EarRun.WIDE),
        aubio(dirty, EarRun.WIDE));
    row(
        "the same at 10 ms",
        ">= 0.995",
        f1(c.narrow.f1()),
        ">= 0.96",
        f1(d.narrow.f1()),
        aubio(clean, EarRun.NARROW),
        aubio(dirty, EarRun.NARROW));
    spread("onset error, median / 95 %, ms", "1.5 / 5", c.onsetMs, "3 / 10", d.onsetMs);
    row(
        "mistakes made and found (kind and step)",
        ">= 0.98",
        found(c),
        ">= 0.93",
        found(d),
        "",
        "");
    row(
        "mistakes said that were not made, per 1,000 notes",
        "<= 1",
        String.format("%.2f", c.inventedPerThousand()),
        "<= 5",
        String.format("%.2f", d.inventedPerThousand()),
        "",
        "");
    row(
        "decided less time of right notes from E2 up, median / 95 %, ms",
        "<= 28 / 45",
        c.rightDelayMs.toString(),
        "<= 36 / 75",
        d.rightDelayMs.toString(),
        delay(clean),
        delay(dirty));
    row(
        "the same below E2, 95 %, ms",
        "<= 75", c.lowRightDelayMs.toString(), "<= 75", d.lowRightDelayMs.toString(), "", "");
    row(
        "the same of slips, median / 95 %, slots of the pulse",
        "<= 1", c.slipDelaySlots.toString(), "<= 1", d.slipDelaySlots.toString(), "", "");
    spread("`offMs` error, median / 95 %, ms", "1.5 / 5", c.offErrorMs, "3 / 10", d.offErrorMs);
  }

  void legato(Family f) {
    row(
        "note F1 with slid and hammered notes",
        ">= 0.98",
        f1(f.totals().wide.f1()),
        "",
        "",
        aubio(f, EarRun.WIDE),
        "");
  }

  void stitched(List<Family> clean, List<Family> dirty) {
    if (clean.isEmpty()) {
      say(
          "Recorded notes are not at "
              + RecordedNotes.folder()
              + " (NECKWAY_GUITARS names their folder): nothing was stitched.");
      return;
    }
    NoteMatching.Score sum = new NoteMatching.Score(0, 0, 0);
    for (int i = 0; i < clean.size(); i++) {
      Family c = clean.get(i);
      Family d = dirty.get(i);
      sum = sum.plus(c.totals().wide);
      row(
          "note F1 on runs stitched, " + c.name(),
          ">= 0.998",
          f1(c.totals().wide.f1()),
          "",
          f1(d.totals().wide.f1()),
          aubio(c, EarRun.WIDE),
          aubio(d, EarRun.WIDE));
    }
    row("the same, all of them", ">= 0.998", f1(sum.f1()), "", "", "", "");
  }

  void crowded(Family f) {
    row("two slips within two steps: found", ">= 0.9", found(f.totals()), "", "", "", "");
  }

  void firstBeat(Totals click, Totals notes) {
    String target = "<= 6 / 20";
    String name = "no first beat given: phase error, median / 95 %, ms";
    row(name + ", a click leaking in", target, click.phaseErrorMs.toString(), "", "", "", "");
    row(name + ", no click", target, notes.phaseErrorMs.toString(), "", "", "", "");
    String lessBias = notes.phaseErrorLessBiasMs.toString();
    row("the same, the player's own bias taken off", target, lessBias, "", "", "", "");
    say("Where the first beat was found, click leaking in: " + click.gridSources + " takes.");
  }

  void stranger(String kind, List<Long> right) {
    int allowed = kind.startsWith("random") ? RANDOM_RIGHTS : STRANGER_RIGHTS;
    long over = right.stream().filter(r -> r > allowed).count();
    long most = right.stream().mapToLong(Long::longValue).max().orElse(0);
    long sum = right.stream().mapToLong(Long::longValue).sum();
    strangers.add(
        String.format(
            "| %s | %d | %d | %d | %d of at most %d |",
            kind, right.size(), sum, most, over, allowed));
  }

  void other(Family f) {
    Totals t = f.totals();
    others.add(
        String.format(
            "| %s | %d | %s | %s | %s | %.2f | %s |",
            f.name(),
            t.wide.truth(),
            f1(t.wide.f1()),
            f1(t.narrow.f1()),
            t.onsetMs,
            t.inventedPerThousand(),
            aubio(f, EarRun.WIDE)));
  }

  void speed(Speed s, Optional<Family> withAubio) {
    speed.add(
        String.format(
            "| review, times real time on one core once warm | >= 150 | %.0f | %s |",
            s.timesRealTime(),
            withAubio.isPresent() ? String.format("%.0f", s.aubioTimesRealTime()) : ""));
    speed.add(
        String.format(
            "| bytes allocated per hop of %d frames without a new note | 0 | %.1f | |",
            Speed.HOP_FRAMES, s.bytesPerHop()));
  }

  void leftOut(List<String> files) {
    if (!files.isEmpty()) {
      say(
          files.size()
              + " recordings are left out, their indexed and measured onsets differ by more than "
              + Math.round(1000 * RecordedNotes.ONSET_DOUBT_SECONDS)
              + " ms: "
              + String.join("; ", files)
              + ".");
    }
  }

  void say(String remark) {
    remarks.add(remark);
  }

  private void spread(String name, String clean, Spread c, String dirty, Spread d) {
    row(name, "<= " + clean, c.toString(), "<= " + dirty, d.toString(), "", "");
  }

  private void row(String... cells) {
    rows.add("| " + String.join(" | ", cells) + " |");
  }

  private static String text(int number) {
    return Integer.toString(number);
  }

  private static String f1(double value) {
    return String.format("%.4f", value);
  }

  private static String found(Totals totals) {
    OptionalDouble share = totals.mistakes.recall();
    return share.isEmpty()
        ? "-"
        : String.format(
            "%.4f (%d of %d)",
            share.getAsDouble(), totals.mistakes.found(), totals.mistakes.made());
  }

  private static String aubio(Family f, double tolerance) {
    if (f.aubio().isEmpty()) {
      return "";
    }
    double delay = Aubio.delaySeconds(f.aubio());
    return f1(Aubio.score(f.aubio(), delay, tolerance).f1());
  }

  private static String delay(Family f) {
    return f.aubio().isEmpty() ? "" : String.format("%.1f", 1000 * Aubio.delaySeconds(f.aubio()));
  }

  String page(int takes, long seed) {
    String command =
        "mvn -q test-compile exec:java -Dexec.mainClass=neckway.bench.Benchmark"
            + " -Dexec.args=\"--takes "
            + takes
            + " --seed "
            + seed
            + " --write docs/benchmark.md\"";
    StringBuilder page = new StringBuilder("# Accuracy, delay and speed\n\n");
    page.append("Written on ").append(LocalDate.now()).append(" by\n\n    ").append(command);
    page.append("\n\nThe first two columns of figures are of ")
        .append(mainTakes)
        .append(" takes of the virtual player, seeds from ")
        .append(seed)
        .append(" on, key, shapes, tuning, tempo, guitar, player and sound varied by seed.\n");
    page.append(
        Aubio.isThere()
            ? "aubio is `aubionotes` of Debian's aubio-tools with its own defaults on the same"
                + " takes; its constant delay, given in the row of delays, is taken out.\n"
            : "aubio (Debian's aubio-tools) is not installed here: not measured beside ours.\n");
    page.append(
        "\n| | clean: target | clean | dirty: target | dirty | aubio clean | aubio dirty |");
    page.append("\n| --- | --- | --- | --- | --- | --- | --- |\n");
    rows.forEach(r -> page.append(r).append('\n'));
    page.append("\n| sound that is not the drill | takes | called right | most in a take |");
    page.append(" takes over the limit |\n| --- | --- | --- | --- | --- |\n");
    strangers.forEach(r -> page.append(r).append('\n'));
    page.append("\n| other sound | notes | F1 50 ms | F1 10 ms | onset error, ms |");
    page.append(" false mistakes per 1,000 | aubio F1 50 ms |\n");
    page.append("| --- | --- | --- | --- | --- | --- | --- |\n");
    others.forEach(r -> page.append(r).append('\n'));
    page.append("\n| speed | target | ours | aubio |\n| --- | --- | --- | --- |\n");
    speed.forEach(r -> page.append(r).append('\n'));
    say(
        "Steps come 0.14 to 0.5 s apart with the virtual player and the synthesizer, 0.12 to 0.5 s"
            + " in stitched runs; one virtual take in three is on a dropped tuning or seven or"
            + " eight strings. Up to four slips a take.");
    say(
        "Stitched runs: single recorded notes, each cut at its onset and stopped as the next one"
            + " starts or left to ring a while; of the archtop every third semitone is recorded,"
            + " so its notes are moved by at most one. The dirty ones have hum, hiss, a room and"
            + " the click's leak by chance.");
    say(
        "The JDK's synthesizer sounds "
            + JdkSynthTakes.DELAY_MS
            + " ms after its command, which is counted in the truth; a soundfont's notes begin"
            + " where the note rendered by itself passes 5 % of its first peak.");
    if (!remarks.isEmpty()) {
      page.append('\n');
      remarks.forEach(r -> page.append("- ").append(r).append('\n'));
    }
    return page.toString();
  }
}
