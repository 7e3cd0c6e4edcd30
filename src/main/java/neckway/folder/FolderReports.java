package neckway.folder;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.file.AtomicFile;
import neckway.file.JsonFile;
import neckway.file.OutputFiles;
import neckway.file.RemarksFile;
import neckway.file.ReviewReader;
import neckway.neck.BadInput;
import neckway.report.Report;
import neckway.review.Remarks;
import neckway.review.Review;
import neckway.words.Wording;

/**
 * The reports beside a folder's reviews, each with its sound and with the teacher's remarks where a
 * file of them lies beside it. The last line of each, a comment, tells what it was made of.
 *
 * @param into where reviews, remarks and reports lie
 */
public record FolderReports(Path into) {
  private static final String MADE_OF = "<!-- made of ";

  /**
   * Writes a report.
   *
   * @param name of its files, without an ending
   * @throws BadInput where the remarks, the recording or the report cannot be used
   */
  public void write(TakeJob job, PlayableDrill drill, Review review, String name) {
    Path target = target(name);
    OutputFiles.check(target, OutputFiles.Kind.REPORT);
    Path remarks = remarks(name);
    String madeOf = madeOf(name);
    Remarks said = Files.exists(remarks) ? RemarksFile.read(remarks, review) : Remarks.NONE;
    String page =
        Report.html(
            drill,
            review,
            said,
            Optional.of(job.file().getFileName().toString()),
            Report.Names.TOLD,
            new TakeClips(job.file(), job.channel(), review));
    AtomicFile.write(target, (page + madeOf + "\n").getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Writes the report of a review that was there already, where it is missing, or was made of
   * another review, of other remarks or by another version of the program.
   *
   * @param review the review's file
   * @throws BadInput where one of these cannot be used
   */
  public void renew(TakeJob job, Path review, String name) {
    if (!isMadeOf(target(name), madeOf(name))) {
      ReviewReader.DrillReviewed read = ReviewReader.read(JsonFile.read(review), review.toString());
      write(job, read.drill(), read.review(), name);
    }
  }

  private Path target(String name) {
    return into.resolve(name + ".html");
  }

  /** Where a teacher's remarks on a take lie. */
  public Path remarks(String name) {
    return into.resolve(name + ".remarks.json");
  }

  private static boolean isMadeOf(Path report, String madeOf) {
    try {
      return Files.isRegularFile(report)
          && Files.readString(report, StandardCharsets.UTF_8).endsWith(madeOf + "\n");
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.takes.reportUnread", report), e);
    }
  }

  /** Says of what a report follows: the review, the remarks, the program. */
  private String madeOf(String name) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      sha.update(ProgramVersion.andLanguage().getBytes(StandardCharsets.UTF_8));
      sha.update(Files.readAllBytes(into.resolve(name + ".review.json")));
      if (Files.exists(remarks(name))) {
        sha.update(Files.readAllBytes(remarks(name)));
      }
      return MADE_OF + HexFormat.of().formatHex(sha.digest()) + " -->";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.unread", remarks(name)), e);
    }
  }
}
