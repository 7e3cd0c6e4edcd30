package neckway.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import neckway.file.OutputFiles;
import neckway.folder.FolderReview;
import neckway.folder.TakeJob;
import neckway.recording.RecordingReviewer.Reviewed;
import neckway.report.Report;
import neckway.review.Remarks;

/** Reviews several recordings and says on the terminal how far it is. */
final class SeveralReviews implements FolderReview.Listener {
  private static final long EVERY_NANOS = 1_000_000_000L;
  private static final long EVERY_NANOS_UNSEEN = 15_000_000_000L;
  private static final double SECOND_NANOS = 1e9;

  private final PrintWriter err;
  private final Path into;
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
    this.into = into;
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
    String read = counted.read() == 1 ? "One take was" : counted.read() + " takes were";
    return read + " reviewed, " + counted.not() + " could not be; see " + into.resolve("table.csv");
  }

  @Override
  public synchronized void done(int count, int of) {
    long now = System.nanoTime();
    if (count == of || now - saidNanos < (terminal ? EVERY_NANOS : EVERY_NANOS_UNSEEN)) {
      return;
    }
    saidNanos = now;
    long left = Math.round((now - begunNanos) / SECOND_NANOS * (of - count) / count);
    String line = count + " of " + of + " done, about " + left + " s to go";
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
    report(job, reviewed, name);
  }

  /** Beside its review, with its sound. */
  private void report(TakeJob job, Reviewed reviewed, String name) {
    Path target = into.resolve(name + ".html");
    OutputFiles.check(target, OutputFiles.Kind.REPORT);
    ReportCommand.write(
        target,
        Report.html(
            reviewed.drill(),
            reviewed.review(),
            Remarks.NONE,
            Optional.of(job.file().getFileName().toString()),
            Report.Names.TOLD,
            new TakeClips(job.file(), job.channel(), reviewed.review())));
  }
}
