package neckway.hear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import neckway.drill.Pulse;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.Route;
import neckway.neck.Shape;
import neckway.neck.Step;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** What is heard hangs on the sound alone, not on how it is cut up (no outside source needed). */
class EarBlockSizeTests {
  private static final int[] OPEN = {64, 59, 55, 50, 45, 40};
  private static final Pulse PULSE = new Pulse(150, 2, 4, 2);
  private static final Map<Condition, Performance> TAKES = new HashMap<>();
  private static final Map<Condition, Told> WHOLE = new HashMap<>();

  /** Everything that an ear says of a take. */
  private record Told(
      List<HeardNote> notes, List<Double> listened, List<Double> clicks, double cents) {}

  private static Performance take(Condition condition) {
    return TAKES.computeIfAbsent(
        condition,
        c ->
            new VirtualPlayer(PlayerSettings.random(11, c).withTailSeconds(0.3))
                .play(route(), PULSE, List.of(), 11));
  }

  private static Route route() {
    List<Step> steps = new ArrayList<>();
    for (String place : "6:3 6:5 5:2 5:5 4:2 4:5 3:2 3:4 2:3 2:5 1:3 1:5".split(" ")) {
      int string = place.charAt(0) - '0';
      int fret = place.charAt(2) - '0';
      steps.add(
          new Step(
              steps.size(),
              new Place(new GuitarString(string), fret),
              OPEN[string - 1] + fret,
              1,
              0));
    }
    return new Route(List.of(Shape.MAJOR), steps, List.of(), 1);
  }

  private static Told hear(Performance take, Random sizes, int most) {
    Ear ear = new Ear(take.sampleRate());
    ear.expectClicks(PULSE.beatSeconds(), 4);
    List<HeardNote> notes = new ArrayList<>();
    List<Double> listened = new ArrayList<>();
    NoteListener listener =
        new NoteListener() {
          @Override
          public void heard(HeardNote note) {
            notes.add(note);
          }

          @Override
          public void listenedUntil(double seconds) {
            listened.add(seconds);
          }
        };
    int length = take.samples().length;
    int at = 0;
    while (at < length) {
      int block = Math.min(length - at, 1 + (most == 1 ? 0 : sizes.nextInt(most)));
      ear.process(take.samples(), at, block, listener);
      at += block;
    }
    ear.finish(listener);
    return new Told(notes, listened, ear.clicks(), ear.tuningCents().orElse(0));
  }

  private static Told whole(Condition condition) {
    return WHOLE.computeIfAbsent(
        condition, c -> hear(take(c), new Random(1), take(c).samples().length));
  }

  @Property(tries = 12)
  void anyBlocksGiveTheSame(
      @ForAll Condition condition,
      @ForAll long seed,
      @ForAll @IntRange(min = 1, max = 8191) int most) {
    assertThat(hear(take(condition), new Random(seed), most)).isEqualTo(whole(condition));
  }

  @Example
  void oneByOneGivesTheSame() {
    for (Condition condition : Condition.values()) {
      assertThat(hear(take(condition), new Random(1), 1)).isEqualTo(whole(condition));
    }
  }

  /** So that the others compare something. */
  @Example
  void thereIsSomethingToHear() {
    assertThat(whole(Condition.CLEAN).notes()).hasSizeGreaterThanOrEqualTo(11);
    assertThat(whole(Condition.CLEAN).listened()).isSorted().hasSizeGreaterThan(100);
  }
}
