package neckway.desk.sound;

import java.util.List;
import java.util.Optional;
import neckway.desk.Texts;
import neckway.live.LiveSession;
import neckway.neck.BadInput;
import neckway.sound.Capture;
import neckway.sound.Devices;
import neckway.sound.RoundTrip;

/** The devices of this machine. */
public final class MachineDevices implements SoundDevices {
  private static final int BLOCK = 512;
  private static final long AGAIN_MILLIS = 1_000;
  private static final long PAUSE_MILLIS = 50;
  private static final long LONGEST_END_MILLIS = 6_000;

  @Override
  public List<String> inputs() {
    return Devices.inputs();
  }

  @Override
  public List<String> outputs() {
    return Devices.outputs();
  }

  @Override
  public String inputName(Optional<String> name) {
    return Devices.inputName(name);
  }

  @Override
  public String outputName(Optional<String> name) {
    return Devices.outputName(name);
  }

  @Override
  public RoundTrip measure(Optional<String> input, Optional<String> output, double gain) {
    return RoundTrip.measure(input, output, gain);
  }

  @Override
  public Listening listen(Optional<String> input, Taker taker) {
    Stretch stretch = new Stretch(input, taker);
    stretch.thread.start();
    return stretch;
  }

  /** One stretch of listening in a thread of its own. */
  private static final class Stretch implements Listening {
    private final Optional<String> input;
    private final Taker taker;
    private final Thread thread = thread(this::run, "sound room");
    private volatile boolean running = true;

    Stretch(Optional<String> input, Taker taker) {
      this.input = input;
      this.taker = taker;
    }

    private static Thread thread(Runnable work, String name) {
      Thread thread = new Thread(work, name);
      thread.setDaemon(true);
      return thread;
    }

    private void run() {
      while (running) {
        try (Capture in = new Capture(Devices.openInput(input))) {
          taker.opened(in.sampleRate());
          in.start();
          listen(in);
        } catch (BadInput e) {
          taker.trouble(e.getMessage());
        }
        for (long waited = 0; running && waited < AGAIN_MILLIS; waited += PAUSE_MILLIS) {
          pause();
        }
      }
    }

    private void listen(Capture in) {
      float[] block = new float[BLOCK];
      while (running) {
        int got = in.read(block);
        if (got > 0) {
          taker.sound(block, got);
        } else if (in.gone()) {
          taker.trouble(Texts.of("check.gone"));
          return;
        } else {
          LiveSession.pause();
        }
      }
    }

    private static void pause() {
      try {
        Thread.sleep(PAUSE_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }

    @Override
    public void stop(Runnable then) {
      running = false;
      thread(
              () -> {
                try {
                  thread.join(LONGEST_END_MILLIS);
                } catch (InterruptedException e) {
                  Thread.currentThread().interrupt();
                }
                then.run();
              },
              "after sound room")
          .start();
    }
  }
}
