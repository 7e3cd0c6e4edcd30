package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.function.BiConsumer;
import neckway.folder.FolderReports;
import neckway.folder.FolderReview;
import neckway.folder.TakeJob;
import neckway.neck.BadInput;
import neckway.recording.RecordingReviewer.Reviewed;
import neckway.words.Wording;

/** Reviews several recordings and says on the terminal how far it is. */
final class SeveralReviews implements FolderReview.Listener {
  private static final long EVERY_NANOS = 1_000_000_000L;
  private static final long EVERY_NANOS_UNSEEN = 15_000_000_000L;
  private static final double SECOND_NANOS = 1e9;

  private final PrintWriter err;
  private final FolderReports reports;
  private final BiConsumer<TakeJob, Reviewed> keep;
  private final boolean terminal = System.console() != null;
  private final long begunNanos = System.nanoTime();
  private long saidNanos = begunNanos;

  /**
   * @param into where the reports go
   * @param keep told each that was reviewed now
   */
  private SeveralReviews(PrintWriter err, Path into, BiConsumer<TakeJob, Reviewed> keep) {
    this.err = err;
    reports = new FolderReports(into);
    this.keep = keep;
  }

  /**
   * Reviews them.
   *
   * @return the exit status: 0 where any could be read
   */
  static int run(
      List<TakeJob> jobs,
      Path into,
      FolderReview.Terms terms,
      PrintWriter out,
      PrintWriter err,
      BiConsumer<TakeJob, Reviewed> keep) {
    FolderReview review = new FolderReview(jobs, into, terms);
    Interrupt interrupt = Interrupt.watch();
    try {
      SeveralReviews progress = new SeveralReviews(err, into, keep);
      FolderReview.Counted counted = review.run(progress, interrupt::asked);
      if (progress.terminal) {
        err.print("\r\033[K");
        err.flush();
      }
      out.println(said(counted, into));
      return counted.read() > 0 ? 0 : Complaints.UNUSABLE;
    } finally {
      interrupt.unwatch();
    }
  }

  private static String said(FolderReview.Counted counted, Path into) {
    return Wording.counted(
        "terminal.several.reviewed",
        counted.read(),
        counted.read(),
        counted.not(),
        into.resolve("table.csv"));
  }

  @Override
  public synchronized void done(int count, int of) {
    long now = System.nanoTime();
    if (count == of || now - saidNanos < (terminal ? EVERY_NANOS : EVERY_NANOS_UNSEEN)) {
      return;
    }
    saidNanos = now;
    long left = Math.round((now - begunNanos) / SECOND_NANOS * (of - count) / count);
    String line = Wording.of("terminal.several.progress", count, of, left);
    if (terminal) {
      err.print("\r\033[K" + line);
      err.flush();
    } else {
      err.println(line);
    }
  }

  @Override
  public void reviewed(TakeJob job, Reviewed reviewed, String name) {
    synchronized (this) {
      keep.accept(job, reviewed);
    }
    report(() -> reports.write(job, reviewed.drill(), reviewed.review(), name));
  }

  @Override
  public void unchanged(TakeJob job, Path review, String name) {
    report(() -> reports.renew(job, review, name));
  }

  /** A report that cannot be made is told, and stops neither its review nor another. */
  private void report(Runnable making) {
    try {
      making.run();
    } catch (BadInput e) {
      synchronized (this) {
        err.println((terminal ? "\r\033[K" : "") + "neckway: " + e.getMessage());
      }
    }
  }
}
