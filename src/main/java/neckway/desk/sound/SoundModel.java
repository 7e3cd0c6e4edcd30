package neckway.desk.sound;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import neckway.desk.ClickModel;
import neckway.desk.Desk;
import neckway.desk.Texts;
import neckway.desk.VolumeModel;
import neckway.desk.play.RunSettings;
import neckway.file.RoundTripFile;
import neckway.file.SettingsFile;
import neckway.neck.BadInput;

/**
 * The sound room: which devices, how loud, what comes in, and what listens to it. The devices are
 * asked on a thread that nobody waits for; everything here is for the window's thread.
 */
public final class SoundModel {
  /** Loudest click, percent of full scale. */
  public static final double MOST_CLICK = ClickModel.MOST_PERCENT;

  private final Desk desk;
  private final SettingsFile settings;
  private final SoundDevices devices;
  private final Executor work;
  private final Executor window;
  private final RoomEar ear;
  private final TripModel trip;
  private final GuitarModel guitar;

  private final ObservableList<String> inputs = FXCollections.observableArrayList();
  private final ObservableList<String> outputs = FXCollections.observableArrayList();
  private final StringProperty input = new SimpleStringProperty(this, "input", "");
  private final StringProperty output = new SimpleStringProperty(this, "output", "");
  private final StringProperty takes = new SimpleStringProperty(this, "takes", "");
  private final ReadOnlyDoubleWrapper meter = new ReadOnlyDoubleWrapper(this, "meter", 0);
  private final ReadOnlyStringWrapper line = new ReadOnlyStringWrapper(this, "line", "");
  private final ReadOnlyStringWrapper inputTrouble =
      new ReadOnlyStringWrapper(this, "inputTrouble", "");
  private final ReadOnlyStringWrapper outputTrouble =
      new ReadOnlyStringWrapper(this, "outputTrouble", "");
  private final ReadOnlyStringWrapper firstInput =
      new ReadOnlyStringWrapper(this, "firstInput", "");
  private final ReadOnlyStringWrapper firstOutput =
      new ReadOnlyStringWrapper(this, "firstOutput", "");
  private final ReadOnlyObjectWrapper<OptionalDouble> tone =
      new ReadOnlyObjectWrapper<>(this, "tone", OptionalDouble.empty());
  private final AtomicBoolean asking = new AtomicBoolean();

  private Optional<SoundDevices.Listening> listening = Optional.empty();
  private boolean shown;
  private boolean switching;
  private boolean hears;
  private List<String> there = List.of();

  /**
   * @param roundTrips where measured round trips are kept
   * @param work for questions that may take long, one after another
   * @param window the window's thread
   */
  public SoundModel(
      Desk desk, SoundDevices devices, RoundTripFile roundTrips, Executor work, Executor window) {
    this.desk = desk;
    this.settings = desk.settings();
    this.devices = devices;
    this.work = work;
    this.window = window;
    ear = new RoomEar(window, this::heard);
    guitar = new GuitarModel(desk, ear);
    RunSettings kept = new RunSettings(settings);
    input.set(kept.input().orElse(""));
    output.set(kept.output().orElse(""));
    takes.set(kept.takesFolder().toString());
    trip = new TripModel(this, devices, roundTrips, work, window);
    listed(inputs, List.of(), input.get());
    listed(outputs, List.of(), output.get());
    input.addListener(o -> inputChosen());
    output.addListener(o -> outputChosen());
  }

  /** Names of the inputs; the empty one stands for the first there is. */
  public ObservableList<String> inputs() {
    return inputs;
  }

  /** Names of the outputs; the empty one stands for the first there is. */
  public ObservableList<String> outputs() {
    return outputs;
  }

  /** The input taken; empty: the first. */
  public StringProperty input() {
    return input;
  }

  /** The output taken; empty: the first. */
  public StringProperty output() {
    return output;
  }

  /** How loud the click is, percent of full scale; kept for each output. */
  public DoubleProperty click() {
    return desk.click().percent();
  }

  /** The folder for takes. */
  public ReadOnlyStringProperty takes() {
    return takes;
  }

  /** Loudness of the input now, 0 to 1. */
  public ReadOnlyDoubleProperty meter() {
    return meter.getReadOnlyProperty();
  }

  /** The input in one line. */
  public ReadOnlyStringProperty line() {
    return line.getReadOnlyProperty();
  }

  /** Why nothing comes in, in one line; empty where sound does. */
  public ReadOnlyStringProperty inputTrouble() {
    return inputTrouble.getReadOnlyProperty();
  }

  /** That the output is not here, in one line; empty where it is. */
  public ReadOnlyStringProperty outputTrouble() {
    return outputTrouble.getReadOnlyProperty();
  }

  /** Name of the input that is taken where none is chosen; empty where there is none. */
  public ReadOnlyStringProperty firstInput() {
    return firstInput.getReadOnlyProperty();
  }

  /** Name of the output that is taken where none is chosen; empty where there is none. */
  public ReadOnlyStringProperty firstOutput() {
    return firstOutput.getReadOnlyProperty();
  }

  /** How loud everything is that is played back. */
  public VolumeModel volume() {
    return desk.volume();
  }

  /** The steady tone that sounds now, Hz. */
  public ReadOnlyObjectProperty<OptionalDouble> tone() {
    return tone.getReadOnlyProperty();
  }

  /** What the tuner says of the tone that sounds now. */
  public String tunerWords() {
    return trip.measuring().get()
        ? Texts.of("sound.tuner.waits")
        : SoundWords.tuner(tone.get(), desk.drill().drill().tuning());
  }

  public TripModel trip() {
    return trip;
  }

  public GuitarModel guitar() {
    return guitar;
  }

  /** Takes are kept in this folder from now on. */
  public void takeFolder(Path folder) {
    takes.set(folder.toAbsolutePath().toString());
    settings.put(RunSettings.TAKES, takes.get());
  }

  /** The room is in front: it listens. */
  public void shown() {
    shown = true;
    guitar.shown();
    refresh();
    trip.look();
    listen();
  }

  /** It is not any more. */
  public void hidden() {
    shown = false;
    pause(() -> {});
  }

  /** Looks which devices there are now; about once a second while the room is in front. */
  public void refresh() {
    if (!asking.compareAndSet(false, true)) {
      return;
    }
    work.execute(
        () -> {
          try {
            List<String> in = devices.inputs();
            List<String> out = devices.outputs();
            window.execute(() -> found(in, out));
          } catch (BadInput e) {
            window.execute(() -> inputTrouble.set(e.getMessage()));
          } finally {
            asking.set(false);
          }
        });
  }

  private void found(List<String> in, List<String> out) {
    boolean news = !in.equals(there);
    there = in;
    listed(inputs, in, input.get());
    listed(outputs, out, output.get());
    firstInput.set(in.stream().findFirst().orElse(""));
    firstOutput.set(out.stream().findFirst().orElse(""));
    outputTrouble.set(
        outputAsked()
            .filter(name -> !out.contains(name))
            .map(name -> Texts.of("sound.missing.output", SoundWords.device(name)))
            .orElse(""));
    if (news) {
      trip.look();
    }
  }

  /** What is chosen stays in the list while it is away. */
  private static void listed(ObservableList<String> list, List<String> names, String chosen) {
    List<String> all = new ArrayList<>();
    all.add("");
    names.stream().filter(name -> !all.contains(name)).forEach(all::add);
    if (!all.contains(chosen)) {
      all.add(chosen);
    }
    if (!all.equals(list)) {
      // what is chosen must not leave the list for a moment, or the choice is lost
      all.stream().filter(name -> !list.contains(name)).toList().forEach(list::add);
      list.removeIf(name -> !all.contains(name));
    }
  }

  private void inputChosen() {
    settings.put(RunSettings.INPUT, name(input));
    trip.look();
    if (shown) {
      pause(() -> {});
    }
  }

  private void outputChosen() {
    settings.put(RunSettings.OUTPUT, name(output));
    desk.click().outputChosen();
    desk.volume().outputChosen();
    outputTrouble.set("");
    trip.look();
  }

  private static String name(StringProperty device) {
    return device.get() == null ? "" : device.get();
  }

  /** The input taken, as devices are asked for it. */
  Optional<String> inputAsked() {
    return Optional.of(name(input)).filter(n -> !n.isEmpty());
  }

  Optional<String> outputAsked() {
    return Optional.of(name(output)).filter(n -> !n.isEmpty());
  }

  /** Listens again, where the room is in front. */
  void listen() {
    if (shown && listening.isEmpty() && !switching && !trip.measuring().get()) {
      hears = true;
      listening = Optional.of(devices.listen(inputAsked(), ear));
    }
  }

  /** Gives the input back; {@code then} follows once it is free, on any thread. */
  void pause(Runnable then) {
    hears = false;
    meter.set(0);
    tone.set(OptionalDouble.empty());
    Optional<SoundDevices.Listening> old = listening;
    listening = Optional.empty();
    if (old.isPresent()) {
      switching = true;
      old.get()
          .stop(
              () ->
                  window.execute(
                      () -> {
                        switching = false;
                        then.run();
                        listen();
                      }));
    } else {
      then.run();
    }
  }

  /** The round trip is being measured, or is so no more; the input is not watched meanwhile. */
  void measures(boolean measures) {
    line.set(measures ? Texts.of("sound.measuring") : "");
  }

  private void heard(RoomEar.Heard heard) {
    if (!hears) {
      return;
    }
    meter.set(heard.meter());
    tone.set(heard.toneHz());
    boolean away = heard.finding().isEmpty() && !there.isEmpty() && !there.contains(name(input));
    inputTrouble.set(
        away && inputAsked().isPresent()
            ? Texts.of("sound.missing", SoundWords.device(name(input)))
            : heard.finding().isPresent() ? "" : heard.trouble());
    line.set(SoundWords.level(heard));
    guitar.heard(heard);
  }
}
