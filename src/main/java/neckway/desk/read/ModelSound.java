package neckway.desk.read;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import neckway.player.surroundings.Surroundings;

/** How a route should sound: played by the virtual player with the click. */
final class ModelSound {
  private static final double CLICK_UNDER_DB = 12;
  private static final int RATE = 48_000;

  private ModelSound() {}

  /**
   * @param step from which step on
   * @param speed share of the drill's tempo
   */
  static TakeSound of(ReadTake take, int step, double speed) {
    Surroundings line = Surroundings.line();
    Surroundings withClick =
        new Surroundings(
            line.amp(),
            line.roomWet(),
            line.roomSeconds(),
            line.hissUnderDb(),
            line.humUnderDb(),
            line.humHz(),
            OptionalDouble.of(CLICK_UNDER_DB),
            line.clickSound(),
            line.levelDbfs(),
            line.dcOffset(),
            line.phone());
    Pulse asked = take.drill().pulse();
    Pulse pulse =
        new Pulse(
            asked.tempo() * speed, asked.notesPerBeat(), asked.beatsPerBar(), asked.countIn());
    Performance played =
        new VirtualPlayer(PlayerSettings.plain().withSurroundings(withClick).withSampleRate(RATE))
            .play(take.drill().route(), pulse, List.of(), 1);
    double from = Math.max(0, played.firstBeat() + (step - 0.25) * pulse.slotSeconds());
    int first = Math.min(played.samples().length, (int) (from * RATE));
    return new TakeSound(
        Arrays.copyOfRange(played.samples(), first, played.samples().length), RATE, from);
  }
}
