package neckway.sound;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import javax.sound.sampled.Line;
import neckway.neck.BadInput;
import neckway.words.Tongue;
import neckway.words.Wording;

/**
 * Asks the sound system something with a limit of time: a sound server that hangs answers neither
 * yes nor no, and whoever asked it waits for ever.
 */
final class TimeLimit {
  /** Longest wait for one answer. */
  static final double SECONDS = 5;

  private TimeLimit() {}

  /**
   * Asks in a thread of its own. A line that is opened after all, too late, is closed again.
   *
   * @throws BadInput where no answer comes in {@link #SECONDS}
   */
  static <T> T ask(Supplier<T> question) {
    return ask(question, SECONDS);
  }

  static <T> T ask(Supplier<T> question, double seconds) {
    CompletableFuture<T> answer = new CompletableFuture<>();
    Tongue spoken = Wording.tongue();
    Supplier<T> asked = () -> Wording.in(spoken, question);
    Thread asker = new Thread(() -> answer(asked, answer), "sound system");
    asker.setDaemon(true);
    asker.start();
    try {
      return answer.get(Math.round(seconds * 1000), TimeUnit.MILLISECONDS);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException given) {
        throw given;
      }
      throw new IllegalStateException(e.getCause());
    } catch (TimeoutException e) {
      if (!answer.cancel(false)) {
        return answer.join();
      }
      throw new BadInput(Wording.of("machine.device.silent"), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      answer.cancel(false);
      throw new BadInput(Wording.of("machine.device.interrupted"), e);
    }
  }

  private static <T> void answer(Supplier<T> question, CompletableFuture<T> answer) {
    try {
      T given = question.get();
      if (!answer.complete(given) && given instanceof Line late) {
        late.close();
      }
    } catch (RuntimeException | Error e) {
      answer.completeExceptionally(e);
    }
  }
}
