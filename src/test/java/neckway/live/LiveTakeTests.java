package neckway.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.neck.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What becomes of a take's file, whatever ends the round. */
class LiveTakeTests {
  private static final double RATE = 48_000;

  @TempDir Path folder;

  private LiveTake take() {
    return new LiveTake(RATE, Optional.of(folder.resolve("take.wav")), 0);
  }

  private static float[] sound(int frames) {
    float[] sound = new float[frames];
    Arrays.fill(sound, 0.25f);
    return sound;
  }

  private long files() throws Exception {
    try (Stream<Path> all = Files.list(folder)) {
      return all.count();
    }
  }

  private int framesSaved() {
    try (TakeReader reader = TakeReader.open(folder.resolve("take.wav"), Channel.AUTO)) {
      return reader.read(new float[2048]);
    }
  }

  @Test
  void keptItIsInItsPlaceAndNothingElseIsLeft() throws Exception {
    try (LiveTake take = take()) {
      assertThat(take.add(sound(480), 480)).isTrue();
      assertThat(take.keep()).contains(folder.resolve("take.wav"));
    }
    assertThat(framesSaved()).isEqualTo(480);
    assertThat(files()).isEqualTo(1);
  }

  @Test
  void aFaultOfTheProgramDoesNotCostTheTake() throws Exception {
    assertThatThrownBy(
            () -> {
              try (LiveTake take = take()) {
                take.add(sound(480), 480);
                throw new IllegalStateException("a fault");
              }
            })
        .isInstanceOf(IllegalStateException.class);
    assertThat(framesSaved()).isEqualTo(480);
    assertThat(files()).isEqualTo(1);
  }

  @Test
  void droppedOrEmptyItLeavesNothing() throws Exception {
    try (LiveTake take = take()) {
      take.add(sound(480), 480);
      take.drop();
    }
    try (LiveTake take = take()) {
      assertThat(take.keep()).isEmpty();
    }
    assertThat(files()).isZero();
  }

  @Test
  void takeWhoseNameWasTakenByAFolderKeepsItsSoundUnderThePartsName() throws Exception {
    try (LiveTake take = take()) {
      take.add(sound(480), 480);
      Files.createDirectories(folder.resolve("take.wav").resolve("in the way"));
      assertThatThrownBy(take::keep).isInstanceOf(BadInput.class).hasMessageContaining("part.wav");
    }
    assertThat(Files.size(folder.resolve("take.part.wav"))).isEqualTo(44 + 2 * 480);
  }

  @Test
  void withoutAFileItKeepsWhatIsListenedTo() {
    try (LiveTake take = new LiveTake(RATE, Optional.empty(), 7)) {
      int frames = 1 << 20;
      take.add(sound(frames), frames);
      assertThat(take.length()).isEqualTo(frames);
      assertThat(take.peak()).isEqualTo(0.25f);
      assertThat(take.peak()).isZero();
      take.taken();
      assertThat(take.length()).isZero();
      assertThat(take.frames()).isEqualTo(frames);
      assertThat(take.keep()).isEmpty();
    }
  }

  @Test
  void roundsFollowEachOtherOnTheClickOnly() {
    assertThatThrownBy(
            () ->
                new LiveSetup(
                    null,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    LiveSetup.Start.FIRST_NOTE,
                    () -> 0,
                    new LiveSetup.Rounds(true, 1),
                    Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
