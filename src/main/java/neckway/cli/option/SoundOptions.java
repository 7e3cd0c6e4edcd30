package neckway.cli.option;

import java.util.OptionalDouble;
import neckway.player.surroundings.Amp;
import neckway.player.surroundings.ClickLeak;
import neckway.player.surroundings.Surroundings;
import picocli.CommandLine.Option;

/** What comes between the virtual player's strings and the file. */
final class SoundOptions {
  @Option(names = "--amp", paramLabel = "NAME")
  private Amp.Voicing amp;

  @Option(names = "--room", paramLabel = "SHARE")
  private Double room;

  @Option(names = "--room-seconds", paramLabel = "SECONDS")
  private Double roomSeconds;

  @Option(names = "--hiss", paramLabel = "DB")
  private Double hiss;

  @Option(names = "--hum", paramLabel = "DB")
  private Double hum;

  @Option(names = "--hum-hz", paramLabel = "HZ")
  private Double humHz;

  @Option(names = "--click", paramLabel = "DB")
  private Double click;

  @Option(names = "--click-sound", paramLabel = "NAME")
  private ClickLeak.Sound clickSound;

  @Option(names = "--level", paramLabel = "DBFS")
  private Double level;

  @Option(names = "--dc", paramLabel = "OFFSET")
  private Double dc;

  @Option(names = "--phone")
  private boolean phone;

  Surroundings changed(Surroundings drawn) {
    return new Surroundings(
        amp == null ? drawn.amp() : amp,
        or("--room", room, drawn.roomWet(), 0, 1),
        or("--room-seconds", roomSeconds, drawn.roomSeconds(), 0.1, 3),
        under("--hiss", hiss, drawn.hissUnderDb()),
        under("--hum", hum, drawn.humUnderDb()),
        or("--hum-hz", humHz, drawn.humHz(), 40, 70),
        under("--click", click, drawn.clickUnderDb()),
        clickSound == null ? drawn.clickSound() : clickSound,
        or("--level", level, drawn.levelDbfs(), -60, 0),
        or("--dc", dc, drawn.dcOffset(), -0.2, 0.2),
        phone || drawn.phone());
  }

  private static OptionalDouble under(String name, Double given, OptionalDouble drawn) {
    return given == null ? drawn : OptionalDouble.of(Ranges.within(name, given, 0, 120));
  }

  private static double or(String name, Double given, double drawn, double least, double most) {
    return given == null ? drawn : Ranges.within(name, given, least, most);
  }
}
