package neckway.desk.students;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.desk.Texts;
import neckway.desk.read.ClipOutput;
import neckway.drill.PlayableDrill;
import neckway.file.JsonFile;
import neckway.file.RemarksFile;
import neckway.file.ReviewReader;
import neckway.file.sound.Channel;
import neckway.folder.ClassFolder;
import neckway.folder.FolderReports;
import neckway.folder.FolderReview;
import neckway.folder.TakeClips;
import neckway.folder.TakeJob;
import neckway.follow.Verdict;
import neckway.neck.BadInput;
import neckway.recording.RecordingReviewer.Reviewed;
import neckway.report.Clips;
import neckway.report.Report;
import neckway.review.Remarks;
import neckway.review.Review;
import neckway.sound.Clip;

/**
 * The recordings of a folder, read by its list, against its drills, or else against the drill that
 * is chosen; the unsure ones first. What the teacher says is kept beside the reviews as it is said,
 * and changes nothing in them.
 */
public final class StudentsModel {
  /** Reviews, remarks and reports lie in this folder within the students' own. */
  static final String INTO = "Neckway";

  /** So much is heard before a moment and after it, seconds. */
  private static final double BEFORE_SECONDS = 1.5;

  private static final double AFTER_SECONDS = 2;

  private final Supplier<PlayableDrill> drill;
  private final ClipOutput output;
  private final DoubleSupplier volume;
  private final Executor work;
  private final Executor window;
  private final Consumer<String> say;

  private final ReadOnlyObjectWrapper<List<Student>> students =
      new ReadOnlyObjectWrapper<>(this, "students", List.of());
  private final ReadOnlyIntegerWrapper chosen = new ReadOnlyIntegerWrapper(this, "chosen", 0);
  private final ReadOnlyStringWrapper line = new ReadOnlyStringWrapper(this, "line", "");
  private final ReadOnlyObjectWrapper<Optional<Report.WorthHearing>> moment =
      new ReadOnlyObjectWrapper<>(this, "moment", Optional.empty());
  private Optional<FolderReports> reports = Optional.empty();
  private volatile boolean stopped;
  private boolean reading;

  /**
   * @param drill what recordings are held against where their folder names none, asked as one is
   *     opened
   * @param volume 0 to 1, asked while something sounds
   * @param work where recordings are read, one thing after the other
   * @param window where what was read is shown
   * @param say one line for the teacher
   */
  public StudentsModel(
      Supplier<PlayableDrill> drill,
      ClipOutput output,
      DoubleSupplier volume,
      Executor work,
      Executor window,
      Consumer<String> say) {
    this.drill = drill;
    this.output = output;
    this.volume = volume;
    this.work = work;
    this.window = window;
    this.say = say;
  }

  /** The class, the unsure ones first. */
  public ReadOnlyObjectProperty<List<Student>> students() {
    return students.getReadOnlyProperty();
  }

  /** Which of them is looked at. */
  public ReadOnlyIntegerProperty chosen() {
    return chosen.getReadOnlyProperty();
  }

  /** How far it is, or what is open. */
  public ReadOnlyStringProperty line() {
    return line.getReadOnlyProperty();
  }

  /** What was heard last. */
  public ReadOnlyObjectProperty<Optional<Report.WorthHearing>> moment() {
    return moment.getReadOnlyProperty();
  }

  /** Reads the recordings of a folder; those that have not changed come at once. */
  public void open(Path folder) {
    if (reading) {
      say.accept(Texts.of("students.busy"));
      return;
    }
    reading = true;
    stopped = false;
    line.set(Texts.of("students.reading", 0, "…"));
    PlayableDrill against = drill.get();
    work.execute(
        () -> {
          List<Student> read = List.of();
          String said;
          try {
            ClassFolder found = ClassFolder.of(folder, Channel.AUTO);
            FolderReview.Terms terms = terms(found, against);
            read = read(folder, found.jobs(), terms);
            said = opened(folder, found, terms, read.size());
          } catch (BadInput e) {
            said = e.getMessage();
          }
          List<Student> all = read;
          String told = said;
          window.execute(
              () -> {
                reading = false;
                line.set(told);
                students.set(all);
                choose(0);
              });
        });
  }

  /** With the guitar that lies in the folder, where it can be used. */
  private FolderReview.Terms terms(ClassFolder found, PlayableDrill against) {
    try {
      return found.terms(Optional.of(against), found.guitar());
    } catch (BadInput guitar) {
      told(guitar.getMessage());
      return found.terms(Optional.of(against), Optional.empty());
    }
  }

  private static String opened(
      Path folder, ClassFolder found, FolderReview.Terms terms, int recordings) {
    String key =
        switch (found.by()) {
          case LIST -> "students.open.list";
          case DRILL_FILES -> "students.open.drills";
          case CHOICE -> "students.open";
        };
    String open = Texts.of(key, folder.getFileName(), recordings);
    return terms
        .guitar()
        .map(file -> open + ". " + Texts.of("students.guitar", file.getFileName()))
        .orElse(open);
  }

  private List<Student> read(Path folder, List<TakeJob> jobs, FolderReview.Terms terms) {
    Path into = folder.resolve(INTO);
    FolderReports made = new FolderReports(into);
    Map<TakeJob, String> names = new ConcurrentHashMap<>();
    FolderReview.Listener listener =
        new FolderReview.Listener() {
          @Override
          public void done(int count, int of) {
            window.execute(() -> line.set(Texts.of("students.reading", count, of)));
          }

          @Override
          public void reviewed(TakeJob job, Reviewed reviewed, String name) {
            names.put(job, name);
          }

          @Override
          public void unchanged(TakeJob job, Path review, String name) {
            names.put(job, name);
          }
        };
    new FolderReview(jobs, into, terms).run(listener, () -> stopped);
    JsonNode rows = JsonFile.read(into.resolve("table.json")).path("takes");
    List<Student> all = new ArrayList<>();
    for (int i = 0; i < jobs.size(); i++) {
      TakeJob job = jobs.get(i);
      Optional<String> name = Optional.ofNullable(names.get(job));
      JsonNode row = rows.path(i);
      String status = row.path("status").asText();
      String drill = row.path("drill").asText();
      all.add(name.map(n -> student(made, job, n, drill)).orElseGet(() -> unread(job, status)));
    }
    window.execute(() -> reports = Optional.of(made));
    return all.stream()
        .sorted(
            Comparator.comparingInt(Student::doubts)
                .thenComparingInt(Student::slips)
                .reversed()
                .thenComparing(s -> s.job().name()))
        .toList();
  }

  private static Student unread(TakeJob job, String status) {
    return new Student(job, "", Optional.empty(), "", status, List.of(), Remarks.NONE);
  }

  private static Student student(FolderReports made, TakeJob job, String name, String drill) {
    Path file = made.into().resolve(name + ".review.json");
    ReviewReader.DrillReviewed read = ReviewReader.read(JsonFile.read(file), file.toString());
    Path said = made.remarks(name);
    Remarks remarks = Files.exists(said) ? RemarksFile.read(said, read.review()) : Remarks.NONE;
    List<Report.WorthHearing> moments = Report.worthHearing(read.drill(), read.review());
    return new Student(job, name, Optional.of(read), drill, "", moments, remarks);
  }

  /** Looks at one of them; out of bounds is the nearest. */
  public void choose(int index) {
    chosen.set(Math.max(0, Math.min(students.get().size() - 1, index)));
    moment.set(Optional.empty());
  }

  /** Looks at the next or the one before. */
  public void go(int by) {
    choose(chosen.get() + by);
  }

  /** The one that is looked at. */
  Optional<Student> student() {
    return chosen.get() < students.get().size()
        ? Optional.of(students.get().get(chosen.get()))
        : Optional.empty();
  }

  /** Plays the next doubt of the one that is looked at, and where there is none the next slip. */
  public void playNext() {
    Optional<Student> now = student().filter(s -> !s.moments().isEmpty());
    if (now.isEmpty()) {
      say.accept(Texts.of("students.sure"));
      return;
    }
    List<Report.WorthHearing> order =
        Stream.concat(
                now.get().moments().stream().filter(Report.WorthHearing::doubt),
                now.get().moments().stream().filter(m -> !m.doubt()))
            .toList();
    int next = moment.get().map(order::indexOf).orElse(-1) + 1;
    Report.WorthHearing heard = order.get(next % order.size());
    moment.set(Optional.of(heard));
    play(now.get(), heard.time());
  }

  private void play(Student student, double seconds) {
    Review review = student.review().orElseThrow();
    Clips clips = new TakeClips(student.job().file(), student.job().channel(), review);
    double from = Math.max(0, seconds - BEFORE_SECONDS);
    work.execute(
        () -> {
          try {
            Clips.Clip cut =
                clips.cut(List.of(new Clips.Stretch(from, seconds + AFTER_SECONDS))).get(0);
            output.play(
                Clip.ofLevelled(cut.sound(), (int) cut.sampleRate(), false, volume), this::told);
          } catch (BadInput e) {
            told(e.getMessage());
          }
        });
  }

  private void told(String complaint) {
    if (!complaint.isEmpty()) {
      window.execute(() -> say.accept(complaint));
    }
  }

  /** Nothing sounds, and no further recording is begun. */
  public void stop() {
    stopped = true;
    output.stop();
  }

  /** The teacher says that a note is as it was heard. */
  public void agree() {
    verdict(heard -> heard);
  }

  /** The teacher says that it is not: what was heard as right was wrong, and all else was right. */
  public void overrule() {
    verdict(heard -> heard == Verdict.RIGHT ? Verdict.WRONG : Verdict.RIGHT);
  }

  private void verdict(UnaryOperator<Verdict> by) {
    Optional<Student> now = student();
    OptionalInt note =
        now.isPresent() && moment.get().isPresent()
            ? now.get().note(moment.get().get())
            : OptionalInt.empty();
    if (note.isEmpty()) {
      say.accept(Texts.of(moment.get().isPresent() ? "students.no-note" : "students.hear-first"));
      return;
    }
    int index = note.getAsInt();
    Verdict heard = now.get().review().orElseThrow().notes().get(index).verdict();
    List<Remarks.Overruled> verdicts = new ArrayList<>(now.get().remarks().overruled());
    verdicts.removeIf(v -> v.note() == index);
    verdicts.add(new Remarks.Overruled(index, by.apply(heard)));
    Remarks before = now.get().remarks();
    keep(new Remarks(before.overall(), before.moments(), verdicts));
  }

  /** A remark: of the moment that was heard last, or where none was, of the take as a whole. */
  public void remark(String text) {
    Optional<Student> now = student().filter(s -> s.read().isPresent());
    if (now.isEmpty() || text.isBlank()) {
      return;
    }
    Remarks before = now.get().remarks();
    if (moment.get().isEmpty()) {
      keep(new Remarks(Optional.of(text.strip()), before.moments(), before.overruled()));
      return;
    }
    double time = moment.get().get().time();
    List<Remarks.Moment> moments = new ArrayList<>(before.moments());
    moments.removeIf(m -> m.time() == time);
    moments.add(new Remarks.Moment(time, text.strip()));
    moments.sort(Comparator.comparingDouble(Remarks.Moment::time));
    keep(new Remarks(before.overall(), moments, before.overruled()));
  }

  private void keep(Remarks remarks) {
    Student now = student().orElseThrow();
    try {
      JsonFile.write(reports.orElseThrow().remarks(now.name()), RemarksFile.toJson(remarks));
    } catch (BadInput e) {
      say.accept(e.getMessage());
      return;
    }
    List<Student> all = new ArrayList<>(students.get());
    all.set(chosen.get(), now.with(remarks));
    students.set(List.copyOf(all));
  }

  /** Writes the report of each, with what the teacher said. */
  public void writeReports() {
    if (reports.isEmpty()) {
      say.accept(Texts.of("students.none"));
      return;
    }
    FolderReports made = reports.get();
    List<Student> all = students.get().stream().filter(s -> s.read().isPresent()).toList();
    say.accept(Texts.of("students.writing"));
    work.execute(
        () -> {
          int written = 0;
          String complaint = "";
          for (Student each : all) {
            try {
              Path review = made.into().resolve(each.name() + ".review.json");
              made.renew(each.job(), review, each.name());
              written++;
            } catch (BadInput e) {
              complaint = " " + e.getMessage();
            }
          }
          String said = Texts.of("students.written", written, made.into()) + complaint;
          window.execute(() -> say.accept(said));
        });
  }
}
