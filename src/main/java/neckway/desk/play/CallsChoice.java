package neckway.desk.play;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import neckway.calls.Caller;
import neckway.desk.Texts;
import neckway.drill.PlayableDrill;
import neckway.file.SettingsFile;
import neckway.live.LiveSetup.CallTones;
import neckway.log.JoinsPlayed;
import neckway.neck.BadInput;
import neckway.practice.Exercise;
import neckway.practice.State;

/** Whether the switches are called as one plays, and whether calls sound; kept. */
public final class CallsChoice {
  private final BooleanProperty calls = new SimpleBooleanProperty(this, "calls", false);
  private final ObjectProperty<CallTones> tones =
      new SimpleObjectProperty<>(this, "callTones", CallTones.SOUNDING);

  CallsChoice(SettingsFile settings) {
    calls.set(settings.flag(calls.getName(), false));
    calls.addListener((o, old, now) -> settings.put(calls.getName(), now));
    settings
        .text(tones.getName())
        .flatMap(
            word -> Arrays.stream(CallTones.values()).filter(t -> word(t).equals(word)).findAny())
        .ifPresent(tones::set);
    tones.addListener((o, old, now) -> settings.put(tones.getName(), word(now)));
  }

  private static String word(CallTones tones) {
    return tones.name().toLowerCase(Locale.ROOT);
  }

  /** Whether switches are called. */
  public BooleanProperty calls() {
    return calls;
  }

  /** How a call sounds beside being shown. */
  public ObjectProperty<CallTones> tones() {
    return tones;
  }

  /**
   * Other calls each time, most often of what is being worked on.
   *
   * @param log the folder where it lies
   * @param complaints told in one line where the log was damaged
   * @throws BadInput where nothing can be called in this drill
   */
  static Caller caller(
      PlayableDrill drill, Path log, Optional<String> player, Consumer<String> complaints) {
    if (drill.chain().size() < 2) {
      throw new BadInput(Texts.of("play.calls.one-shape"));
    }
    Map<Exercise, State> known =
        JoinsPlayed.states(log, drill, player, LocalDate.now(), complaints);
    Caller caller =
        new Caller(drill, each -> known.getOrDefault(each, State.NEW), new Random().nextLong());
    caller.growTo(Caller.LONGEST_SECONDS);
    if (caller.calls().isEmpty()) {
      throw new BadInput(Texts.of("play.calls.long-bar"));
    }
    return caller;
  }
}
