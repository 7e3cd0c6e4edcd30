package neckway.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.cli.option.DataOption;
import neckway.cli.text.PlanText;
import neckway.cli.text.Wrapped;
import neckway.drill.PlayableDrill;
import neckway.follow.NoteVerdict;
import neckway.live.LiveResult;
import neckway.live.LiveRun;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.log.RunKeeper;
import neckway.neck.BadInput;
import neckway.practice.Plan;
import neckway.practice.PlanItem;
import neckway.practice.WarmUpPace;
import neckway.sound.Devices;
import neckway.words.Wording;

/**
 * Leads through a warm-up in the terminal, listening where there is an input. It goes on when the
 * playing is even, and slows down where it is not; slips are never counted aloud.
 */
final class WarmUpLead {
  private static final long LOOK_MS = 50;

  private final PrintWriter out;
  private final PrintWriter err;
  private final Optional<String> input;
  private final Optional<String> output;
  private final Interrupt interrupt;

  WarmUpLead(
      PrintWriter out,
      PrintWriter err,
      Optional<String> input,
      Optional<String> output,
      Interrupt interrupt) {
    this.out = out;
    this.err = err;
    this.input = input;
    this.output = output;
    this.interrupt = interrupt;
  }

  /** The usual cautions (common practice, no source; no medical claim). */
  static String care() {
    return Wording.of("terminal.warmUp.care");
  }

  /**
   * Leads from the first step to the last, and keeps in the log that it was done; one that was
   * stopped is kept too, if a step of it was done.
   */
  void through(Plan plan, DataOption data) {
    OffsetDateTime begun = OffsetDateTime.now().truncatedTo(ChronoUnit.SECONDS);
    boolean listens = !Devices.inputs().isEmpty();
    if (!listens) {
      Wrapped.print(out, Wording.of("terminal.warmUp.noInput"));
    }
    int number = 0;
    for (PlanItem item : plan.items()) {
      number++;
      out.println();
      out.println(Wording.of("terminal.warmUp.step", number, plan.items().size()));
      PlanText.print(out, item);
      out.flush();
      // an Enter of the step before does not pass over this one
      wasEnterPressed();
      if (item.drill().isPresent() && listens) {
        listens = isHeardThrough(item);
      } else {
        await(item.minutes());
      }
      if (interrupt.asked()) {
        Wrapped.print(out, Wording.of("terminal.warmUp.stopped"));
        out.flush();
        if (number > 1) {
          keep(begun, data);
        }
        return;
      }
    }
    out.println();
    out.println(Wording.of("terminal.warmUp.done"));
    keep(begun, data);
  }

  private void keep(OffsetDateTime begun, DataOption data) {
    try {
      new RunKeeper(data.folder(), data.player(), line -> err.println("neckway: " + line))
          .keepWarmUp(begun);
    } catch (BadInput e) {
      err.println("neckway: " + Wording.of("terminal.warmUp.notKept", e.getMessage()));
    }
  }

  /** Waits out a step that has nothing to be heard. */
  private void await(int minutes) {
    long until = System.nanoTime() + minutes * 60_000_000_000L;
    while (System.nanoTime() < until && !interrupt.asked() && !wasEnterPressed()) {
      pause();
    }
  }

  private static void pause() {
    try {
      Thread.sleep(LOOK_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static boolean wasEnterPressed() {
    try {
      boolean pressed = false;
      while (System.in.available() > 0) {
        pressed |= System.in.read() == '\n';
      }
      return pressed;
    } catch (IOException noInput) {
      return false;
    }
  }

  /** Plays a drill; where the devices cannot be had its time is waited out, unheard. */
  private boolean isHeardThrough(PlanItem item) {
    try {
      play(item);
      return true;
    } catch (BadInput e) {
      err.println("neckway: " + e.getMessage());
      Wrapped.print(out, Wording.of("terminal.warmUp.unheard"));
      out.flush();
      await(item.minutes());
      return false;
    }
  }

  /** Plays a drill twice in its time; slower the second time where the first was not even. */
  private void play(PlanItem item) {
    PlayableDrill drill = item.drill().orElseThrow();
    Heard first = run(WarmUpPace.first(drill));
    if (interrupt.asked() || first.movedOn()) {
      return;
    }
    Optional<PlayableDrill> second = WarmUpPace.second(drill, first.spreadMs());
    if (second.isEmpty()) {
      return;
    }
    double tempo = second.get().pulse().tempo();
    if (tempo < drill.pulse().tempo()) {
      Wrapped.print(out, Wording.of("terminal.warmUp.slower", Wording.fixed(tempo, 0)));
      out.flush();
    }
    run(second.get());
  }

  /**
   * How evenly it was played, where that is known, and whether the player went on before its end.
   */
  private record Heard(OptionalDouble spreadMs, boolean movedOn) {}

  private Heard run(PlayableDrill drill) {
    LiveSetup setup =
        new LiveSetup(
            drill,
            Optional.empty(),
            input,
            output,
            LiveSetup.Start.CLICK,
            () -> WarmUpPace.CLICK_GAIN,
            LiveSetup.Rounds.ONE,
            Optional.empty());
    Ears ears = new Ears();
    boolean[] movedOn = new boolean[1];
    LiveRun.run(
        setup,
        ears,
        () -> {
          movedOn[0] |= wasEnterPressed();
          return movedOn[0] || interrupt.asked();
        });
    return new Heard(ears.spreadMs, movedOn[0]);
  }

  private final class Ears implements LiveRunListener {
    private OptionalDouble spreadMs = OptionalDouble.empty();

    @Override
    public void roundBegins(int round) {
      out.println(Wording.of("terminal.warmUp.countIn"));
      out.flush();
    }

    @Override
    public void decided(NoteVerdict verdict) {
      // nothing is counted aloud in a warm-up
    }

    @Override
    public void complaint(String line) {
      err.println("neckway: " + line);
    }

    @Override
    public void roundEnded(LiveResult result) {
      spreadMs = result.review().summary().offMsSpread();
    }
  }
}
