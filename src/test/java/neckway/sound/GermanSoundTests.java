package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import neckway.words.GermanSaid;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;

/** What is said of devices, where German is spoken. */
class GermanSoundTests {
  @Test
  void soundSystemThatDoesNotAnswerIsToldInGerman() {
    CountDownLatch never = new CountDownLatch(1);
    assertThat(
            GermanSaid.complaint(
                () ->
                    TimeLimit.ask(
                        () -> {
                          try {
                            never.await();
                          } catch (InterruptedException e) {
                            Thread.currentThread().interrupt();
                          }
                          return 0;
                        },
                        0.05)))
        .startsWith("Das Audiosystem antwortet nicht");
    never.countDown();
  }

  /** There is no such device on any machine, and on some none at all. */
  @Test
  void deviceThatIsNotThereIsToldInGerman() {
    GermanSaid.complaint(() -> Devices.openInput(Optional.of("no such device")));
    GermanSaid.complaint(() -> Devices.openOutput(Optional.of("no such device"), 48_000));
  }

  @Test
  void whoeverAsksIsAnsweredInItsLanguage() {
    assertThat(Wording.in(Tongue.GERMAN, () -> TimeLimit.ask(Wording::tongue, 5)))
        .isEqualTo(Tongue.GERMAN);
  }
}
