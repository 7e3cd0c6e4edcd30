package neckway.cli.option;

import java.time.DateTimeException;
import java.time.LocalDate;
import neckway.neck.BadInput;
import neckway.words.Wording;
import picocli.CommandLine.Option;

/** The day that stands for today. */
public final class DayOption {
  @Option(names = "--day", paramLabel = "DATE")
  private String day;

  /**
   * The day.
   *
   * @throws BadInput where what was given is none
   */
  public LocalDate day() {
    if (day == null) {
      return LocalDate.now();
    }
    try {
      return LocalDate.parse(day.strip());
    } catch (DateTimeException e) {
      throw new BadInput(Wording.of("options.day", day), e);
    }
  }
}
