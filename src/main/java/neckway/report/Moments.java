package neckway.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import neckway.follow.Verdict;
import neckway.hand.ShiftDetector;
import neckway.hand.ShiftVerdict;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.page.PageModel.Ink;
import neckway.review.HeardAs;
import neckway.review.Landings;
import neckway.review.LateLanding;
import neckway.review.Remarks;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.words.Phrases;
import neckway.words.Wording;

/** What is worth hearing again: the teacher's moments, each doubt, each slip. */
final class Moments {
  /** More make the file too large to send, and the page too long to read. */
  static final int MOST = 12;

  /** Moments nearer to one another are heard together. */
  private static final double TOGETHER_SECONDS = 1;

  private static final double MINUTE_SECONDS = 60;

  /** Whose moment it is; what comes first is kept where there are too many. */
  enum Kind {
    TEACHER,
    DOUBT,
    SLIP
  }

  /**
   * One of them.
   *
   * @param time seconds from the first sample of the take
   */
  record Moment(Kind kind, double time, String words) {}

  /**
   * Those that are heard together.
   *
   * @param moments at least one, in the order of their time
   */
  record Group(List<Moment> moments) {
    double from() {
      return moments.get(0).time();
    }

    double to() {
      return moments.get(moments.size() - 1).time();
    }

    /** The kind that matters most. */
    Kind kind() {
      return moments.stream().map(Moment::kind).min(Comparator.naturalOrder()).orElseThrow();
    }
  }

  private final Told told;
  private final List<Moment> all = new ArrayList<>();

  private Moments(Told told) {
    this.told = told;
  }

  /** All of a take, in the order of their time. */
  static List<Group> of(Told told) {
    Moments moments = new Moments(told);
    moments.gather();
    List<Group> groups = new ArrayList<>();
    List<Moment> together = new ArrayList<>();
    for (Moment moment : moments.all) {
      if (!together.isEmpty()
          && moment.time() - together.get(together.size() - 1).time() > TOGETHER_SECONDS) {
        groups.add(new Group(List.copyOf(together)));
        together.clear();
      }
      together.add(moment);
    }
    if (!together.isEmpty()) {
      groups.add(new Group(List.copyOf(together)));
    }
    return groups;
  }

  /** As many as can be heard, in the order of their time: the ones that matter most. */
  static List<Group> heard(List<Group> groups) {
    return groups.stream()
        .sorted(Comparator.comparing(Group::kind).thenComparingDouble(Group::from))
        .limit(MOST)
        .sorted(Comparator.comparingDouble(Group::from))
        .toList();
  }

  /** "4.2 s", "1 min 4.2 s". */
  static String time(double seconds) {
    long minutes = (long) (seconds / MINUTE_SECONDS);
    double rest = Math.floor(10 * (seconds - minutes * MINUTE_SECONDS)) / 10;
    return minutes > 0
        ? Wording.of("moments.minutes", minutes, Wording.plain(rest))
        : Wording.of("moments.seconds", Wording.plain(rest));
  }

  private void gather() {
    for (Remarks.Moment said : told.remarks.moments()) {
      add(Kind.TEACHER, said.time(), Wording.of("moments.teacher", said.text()));
    }
    if (told.fits()) {
      heard();
    }
    all.sort(Comparator.comparingDouble(Moment::time));
  }

  private void heard() {
    notes();
    leftOut();
    for (int step = 0; step < told.page.steps(); step++) {
      Ink ink = told.page.at(step).ink();
      if (ink == Ink.UNNAMED) {
        add(Kind.DOUBT, near(step), Wording.of("moments.unnamed", spot(step)));
      }
    }
    shifts();
  }

  /** Those that follow on one another are one slip. */
  private void leftOut() {
    int step = 0;
    while (step < told.page.steps()) {
      int end = step;
      while (end < told.page.steps() && told.page.at(end).ink() == Ink.LEFT_OUT) {
        end++;
      }
      if (end == step + 1) {
        add(Kind.SLIP, near(step), Wording.of("moments.leftOut", spot(step)));
      } else if (end > step) {
        String first = Phrases.spot(told.page.step(step).place());
        String notes = Wording.capital(Phrases.count(end - step, "note"));
        add(Kind.SLIP, near(step), Wording.of("moments.leftOut.several", notes, first));
      }
      step = end + 1;
    }
  }

  private void add(Kind kind, double time, String words) {
    all.add(new Moment(kind, time, words));
  }

  private void notes() {
    Map<Integer, Verdict> overruled = new HashMap<>();
    told.remarks.overruled().forEach(by -> overruled.put(by.note(), by.verdict()));
    List<ReviewedNote> notes = told.review.notes();
    for (int i = 0; i < notes.size(); i++) {
      ReviewedNote note = notes.get(i);
      Optional<Verdict> teacher = Optional.ofNullable(overruled.get(i));
      if (note.attempt() == told.review.reviewed()
          && (note.verdict() != Verdict.RIGHT || teacher.isPresent())) {
        String says = teacher.map(v -> says(v, note.verdict())).orElse("");
        add(teacher.isPresent() ? Kind.TEACHER : Kind.SLIP, note.time(), words(note) + says);
      }
    }
  }

  private String words(ReviewedNote note) {
    if (note.step().isEmpty()) {
      return Wording.of("moments.stray", HeardAs.note(told.drill, note.midi()));
    }
    int step = note.step().getAsInt();
    return switch (note.verdict()) {
      case RIGHT -> Wording.of("moments.right", spot(step));
      case WRONG -> Wording.of("moments.wrong", spot(step), heard(step, note.midi()));
      case REPEAT -> Wording.of("moments.repeat", spot(step));
      case EXTRA -> Wording.of("moments.extra", spot(step));
    };
  }

  private static String says(Verdict teacher, Verdict heard) {
    return " "
        + (teacher == heard
            ? Wording.of("moments.teacher.agrees")
            : Wording.of("moments.teacher.says", spoken(teacher)));
  }

  private static String spoken(Verdict verdict) {
    return switch (verdict) {
      case RIGHT -> Wording.of("moments.verdict.right");
      case WRONG -> Wording.of("moments.verdict.wrong");
      case REPEAT -> Wording.of("moments.verdict.repeat");
      case EXTRA -> Wording.of("moments.verdict.extra");
    };
  }

  private String heard(int step, int midi) {
    HeardAs heard = HeardAs.of(told.drill, told.page.step(step), midi);
    return heard.fret().isPresent() ? Wording.of("moments.fret", heard.label()) : heard.label();
  }

  private String spot(int step) {
    Step due = told.page.step(step);
    return Wording.capital(Phrases.spot(due.place()));
  }

  /** When a step was played; of one that was not, when the one before it was. */
  private double near(int step) {
    for (int before = step; before >= 0; before--) {
      if (told.time(before).isPresent()) {
        return told.time(before).get();
      }
    }
    for (int after = step; after < told.page.steps(); after++) {
      if (told.time(after).isPresent()) {
        return told.time(after).get();
      }
    }
    return Math.max(0, told.review.grid().due(step));
  }

  private void shifts() {
    Landings landings = new Landings(told.drill);
    for (ReviewedShift shift : told.review.shifts()) {
      double time = near(landings.step(shift));
      String name = name(shift.planned());
      if (shift.verdict() == ShiftVerdict.MOVED) {
        String where = Phrases.ordinal(shift.string().orElseThrow());
        add(Kind.SLIP, time, Wording.of("moments.shift.moved", name, where));
      } else if (shift.verdict() == ShiftVerdict.MISSED) {
        add(Kind.SLIP, time, Wording.of("moments.shift.missed", name));
      }
      if (isDoubtful(shift)) {
        add(
            Kind.DOUBT,
            time,
            Wording.of("moments.shift.unsure", name, Math.round(100 * shift.p().getAsDouble())));
      }
    }
    for (LateLanding late : LateLanding.of(told.drill, told.review)) {
      add(
          Kind.SLIP,
          near(late.step()),
          Wording.of(
              "moments.shift.late", name(late.shift().planned()), Phrases.ms(late.lateMs())));
    }
  }

  /** Whether what is said of a shift is less sure than it must be to be said made elsewhere. */
  static boolean isDoubtful(ReviewedShift shift) {
    return shift.p().isPresent() && shift.p().getAsDouble() < ShiftDetector.SURE_ELSEWHERE;
  }

  private String name(PlannedShift shift) {
    String round =
        told.drill.rounds() > 1 ? Wording.of("moments.shift.round", shift.round() + 1) : "";
    return Wording.of(
        Phrases.towards("moments.shift", shift.direction()),
        round,
        Phrases.ordinal(shift.string()));
  }
}
