package neckway.desk.app;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.function.Function;
import java.util.function.Supplier;
import neckway.desk.Desk;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.Strip;
import neckway.desk.Texts;
import neckway.desk.open.NextLine;
import neckway.desk.open.OpenModel;
import neckway.desk.open.OpenScreen;
import neckway.desk.open.TakesModel;
import neckway.desk.open.WarmUpSound;
import neckway.desk.play.Engine;
import neckway.desk.play.RunSettings;
import neckway.desk.read.ReadTake;
import neckway.desk.read.ReadingModel;
import neckway.drill.PlayableDrill;
import neckway.neck.PlannedShift;
import neckway.practice.Exercise;
import neckway.review.ReviewedShift;

/** Joins what is open and what comes next to the desk and to what is read. */
public final class Practice {
  private final Desk desk;
  private final ReadingModel reading;
  private final OpenModel open;
  private final TakesModel takes;
  private final NextLine strip;

  /**
   * @param engine what runs live in a warm-up
   * @param today the day on which one plays
   * @param work where the log and the takes are read, one thing after the other
   * @param window where what was read is shown
   */
  public Practice(
      Desk desk,
      RunSettings settings,
      Engine engine,
      ReadingModel reading,
      Supplier<LocalDate> today,
      Executor work,
      Executor window) {
    this.desk = desk;
    this.reading = reading;
    open =
        new OpenModel(
            desk.drill(),
            settings.book(),
            new WarmUpSound(engine::start, settings::input, settings::output, desk.click()::gain),
            today,
            work,
            window,
            desk::say,
            () -> desk.router().go(Place.PLAYING));
    takes = new TakesModel(settings::takesFolder, settings.book(), work, window, desk::say);
    strip = new NextLine(open, desk.look(), this::overTime);
    reading.take().addListener((o, before, now) -> now.ifPresent(this::read));
    desk.router().current().addListener((o, before, now) -> front(now));
  }

  private void read(ReadTake take) {
    open.read(take.drill(), take.review());
  }

  private void front(Place place) {
    if (place == Place.OPEN) {
      open.refresh();
      takes.refresh();
    }
  }

  /** Adds its view to those of the window. */
  public void offer(Map<Place, Function<Desk, Screen>> screens) {
    screens.put(Place.OPEN, d -> new OpenScreen(d, open, takes));
  }

  /** What stands above the views. */
  public Strip strip() {
    return strip;
  }

  /** Reads the log for the first time. */
  public void begin() {
    open.refresh();
  }

  public OpenModel open() {
    return open;
  }

  /** Shows the join that is in close-up over time, as it was planned. */
  private void overTime() {
    reading
        .take()
        .get()
        .ifPresent(
            take -> {
              List<ReviewedShift> shifts = take.review().shifts();
              if (shifts.isEmpty()) {
                desk.say(Texts.of("next.no-join"));
                return;
              }
              ReviewedShift shift = shifts.get(reading.shift().orElse(0));
              open.point(take.drill().key(), join(take.drill(), shift.planned()));
              desk.router().go(Place.OPEN);
            });
  }

  private static Exercise join(PlayableDrill drill, PlannedShift planned) {
    return new Exercise.OfJoin(
        drill.shapes().get(planned.pair()),
        drill.shapes().get(planned.pair() + 1),
        planned.direction(),
        planned.string().number(),
        planned.finger());
  }
}
