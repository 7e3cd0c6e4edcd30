package neckway.desk.sound;

import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.desk.Texts;
import neckway.file.RoundTripFile;
import neckway.neck.BadInput;
import neckway.sound.RoundTrip;

/** The guided minute in which the round trip of a pair of devices is measured. */
public final class TripModel {
  /** The first try is this quiet, percent of full scale: nobody knows yet what is plugged in. */
  public static final double QUIET_PERCENT = 5;

  private static final int[] RATES = {48_000, 44_100};

  private final SoundModel room;
  private final SoundDevices devices;
  private final RoundTripFile file;
  private final Executor work;
  private final Executor window;
  private final ReadOnlyBooleanWrapper measuring = new ReadOnlyBooleanWrapper(this, "measuring");
  private final ReadOnlyStringWrapper known = new ReadOnlyStringWrapper(this, "known", "");
  private final ReadOnlyStringWrapper result = new ReadOnlyStringWrapper(this, "result", "");
  private final ReadOnlyDoubleWrapper percent =
      new ReadOnlyDoubleWrapper(this, "percent", QUIET_PERCENT);

  private int looks;

  TripModel(
      SoundModel room, SoundDevices devices, RoundTripFile file, Executor work, Executor window) {
    this.room = room;
    this.devices = devices;
    this.file = file;
    this.work = work;
    this.window = window;
  }

  /** Whether the clicks play now. */
  public ReadOnlyBooleanProperty measuring() {
    return measuring.getReadOnlyProperty();
  }

  /** What is known of the pair that is taken. */
  public ReadOnlyStringProperty known() {
    return known.getReadOnlyProperty();
  }

  /** What came of the last measurement. */
  public ReadOnlyStringProperty result() {
    return result.getReadOnlyProperty();
  }

  /** How loud the next clicks are, percent of full scale. */
  public ReadOnlyDoubleProperty percent() {
    return percent.getReadOnlyProperty();
  }

  /** Looks up what was measured for the pair that is taken now. */
  void look() {
    if (measuring.get()) {
      return;
    }
    int mine = ++looks;
    result.set("");
    percent.set(QUIET_PERCENT);
    Optional<String> input = room.inputAsked();
    Optional<String> output = room.outputAsked();
    work.execute(
        () -> {
          String words = words(input, output);
          window.execute(
              () -> {
                if (mine == looks) {
                  known.set(words);
                }
              });
        });
  }

  private String words(Optional<String> input, Optional<String> output) {
    try {
      String from = devices.inputName(input);
      String to = devices.outputName(output);
      for (int rate : RATES) {
        Optional<RoundTripFile.Pair> pair = file.find(from, to, rate);
        if (pair.isPresent()) {
          return Texts.of(
              "trip.known",
              ms(pair.get().extraMs()),
              SoundWords.device(from),
              SoundWords.device(to));
        }
      }
      return SoundWords.isSystems(from) && SoundWords.isSystems(to)
          ? Texts.of("trip.unknown.systems")
          : Texts.of("trip.unknown", SoundWords.device(from), SoundWords.device(to));
    } catch (BadInput e) {
      return Texts.of("trip.noPair");
    }
  }

  private static String ms(double ms) {
    return Texts.fixed(ms, 1).replace('-', '−');
  }

  /** Plays the clicks and listens; a little louder each time they were not heard. */
  public void measure() {
    if (measuring.get()) {
      return;
    }
    measuring.set(true);
    looks++;
    result.set(Texts.of("trip.running"));
    Optional<String> input = room.inputAsked();
    Optional<String> output = room.outputAsked();
    double gain = percent.get() / 100;
    room.measures(true);
    room.pause(() -> work.execute(() -> measure(input, output, gain)));
  }

  private void measure(Optional<String> input, Optional<String> output, double gain) {
    try {
      String from = devices.inputName(input);
      String to = devices.outputName(output);
      RoundTrip trip = devices.measure(input, output, gain);
      double extraMs = 1000 * trip.extraSeconds();
      double spreadMs = 1000 * trip.spreadSeconds();
      file.keep(
          new RoundTripFile.Pair(from, to, trip.sampleRate(), extraMs, spreadMs, trip.clicks()));
      window.execute(
          () -> {
            known.set(
                Texts.of(
                    "trip.known", ms(extraMs), SoundWords.device(from), SoundWords.device(to)));
            over(Texts.of("trip.result", trip.clicks(), ms(extraMs), ms(spreadMs)));
            percent.set(QUIET_PERCENT);
          });
    } catch (BadInput e) {
      window.execute(
          () -> {
            over(e.getMessage());
            percent.set(Math.min(SoundModel.MOST_CLICK, 2 * percent.get()));
          });
    }
  }

  private void over(String words) {
    measuring.set(false);
    result.set(words);
    room.measures(false);
    room.listen();
  }
}
