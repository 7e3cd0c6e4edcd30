package neckway.desk.live;

import java.lang.reflect.Proxy;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.LockSupport;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import javax.sound.sampled.spi.MixerProvider;

/**
 * A sound card of its own in the program under test, in real time: its two lines are exclusive, as
 * those of a card without a mixer are; what is played comes back softly into the input, beside a
 * guitar; it can be pulled out and put back. Java Sound finds it by its service file. It is not
 * there before {@link #plugIn()}, so other tests do not meet it.
 */
public final class PretendCard extends MixerProvider {
  /** Its name. */
  public static final String NAME = "Pretend card";

  private static final int RATE = 48_000;
  private static final int SECONDS = 60;
  private static final double LEAK = 0.2;
  private static final Card INFO = new Card();
  private static final Map<Class<?>, Object> TAKEN = new ConcurrentHashMap<>();

  private static volatile boolean there;
  private static volatile long outStart;
  private static volatile float[] guitar = new float[0];
  private static volatile double guitarAt;
  private static volatile short[] played = new short[0];

  private static final class Card extends Mixer.Info {
    Card() {
      super(NAME, "tests", "exclusive lines", "1");
    }
  }

  /** It is there, and nobody uses it. */
  static void plugIn() {
    TAKEN.clear();
    guitar = new float[0];
    there = true;
  }

  /** It gives and takes nothing any more, and is not listed. */
  static void pullOut() {
    there = false;
    TAKEN.clear();
  }

  /**
   * The guitar that sounds from so many seconds after the output begins.
   *
   * @param samples at 48 kHz
   */
  static void guitar(float[] samples, double seconds) {
    guitarAt = seconds;
    guitar = samples;
  }

  @Override
  public Mixer.Info[] getMixerInfo() {
    return there ? new Mixer.Info[] {INFO} : new Mixer.Info[0];
  }

  @Override
  public boolean isMixerSupported(Mixer.Info info) {
    return there && INFO.equals(info);
  }

  @Override
  public Mixer getMixer(Mixer.Info info) {
    if (!isMixerSupported(info)) {
      throw new IllegalArgumentException("no such mixer");
    }
    return (Mixer)
        Proxy.newProxyInstance(
            PretendCard.class.getClassLoader(),
            new Class<?>[] {Mixer.class},
            (self, method, args) ->
                switch (method.getName()) {
                  case "getMixerInfo" -> INFO;
                  case "getTargetLineInfo" -> lines(TargetDataLine.class);
                  case "getSourceLineInfo" -> lines(SourceDataLine.class);
                  case "getLine" -> new OneLine(((Line.Info) args[0]).getLineClass()).line();
                  default -> throw new UnsupportedOperationException(method.getName());
                });
  }

  private static Line.Info[] lines(Class<?> kind) {
    return new Line.Info[] {new DataLine.Info(kind, new AudioFormat(RATE, 16, 1, true, false))};
  }

  /** One line, in or out. */
  private static final class OneLine {
    private final Class<?> kind;
    private AudioFormat format;
    private int bufferBytes;
    private volatile long startNanos;
    private volatile long frames;
    private volatile boolean open;

    OneLine(Class<?> kind) {
      this.kind = kind;
    }

    DataLine line() {
      return (DataLine)
          Proxy.newProxyInstance(
              PretendCard.class.getClassLoader(), new Class<?>[] {kind}, this::answer);
    }

    private Object answer(Object self, java.lang.reflect.Method method, Object[] args)
        throws LineUnavailableException {
      switch (method.getName()) {
        case "open" -> open((AudioFormat) args[0], (int) args[1]);
        case "close" -> close();
        case "start" -> start();
        case "getFormat" -> {
          return format;
        }
        case "getBufferSize" -> {
          return bufferBytes;
        }
        case "isOpen" -> {
          return open;
        }
        case "available" -> {
          return 0;
        }
        case "getLongFramePosition" -> {
          return due();
        }
        case "read" -> {
          return read((byte[]) args[0], (int) args[1], (int) args[2]);
        }
        case "write" -> {
          return write((byte[]) args[0], (int) args[1], (int) args[2]);
        }
        case "hashCode" -> {
          return System.identityHashCode(self);
        }
        case "equals" -> {
          return self == args[0];
        }
        default -> {
          return null;
        }
      }
      return null;
    }

    private void open(AudioFormat wanted, int bytes) throws LineUnavailableException {
      if (!there || wanted.getSampleRate() != RATE || wanted.getChannels() != 1) {
        throw new LineUnavailableException("line with format " + wanted + " not supported.");
      }
      if (TAKEN.putIfAbsent(kind, this) != null) {
        throw new LineUnavailableException("Device or resource busy");
      }
      format = wanted;
      bufferBytes = bytes;
      open = true;
    }

    private void close() {
      open = false;
      TAKEN.remove(kind, this);
    }

    private void start() {
      startNanos = System.nanoTime();
      if (kind == SourceDataLine.class) {
        played = new short[SECONDS * RATE];
        outStart = startNanos;
      }
    }

    /** Frames that have gone by since it began. */
    private long due() {
      return startNanos == 0 ? 0 : (System.nanoTime() - startNanos) * RATE / 1_000_000_000L;
    }

    private boolean alive() {
      return open && TAKEN.get(kind) == this;
    }

    private int read(byte[] into, int at, int bytes) {
      int wanted = bytes / 2;
      while (alive() && due() - frames < wanted) {
        LockSupport.parkNanos(1_000_000);
      }
      if (!alive()) {
        return 0;
      }
      for (int i = 0; i < wanted; i++, frames++) {
        int value = sounding(frames + Math.round((startNanos - outStart) / 1e9 * RATE));
        into[at + 2 * i] = (byte) value;
        into[at + 2 * i + 1] = (byte) (value >> 8);
      }
      return bytes;
    }

    /** What is in the room at a frame of the output. */
    private static int sounding(long frame) {
      short[] loud = played;
      double sum = frame >= 0 && frame < loud.length ? LEAK * loud[(int) frame] / 32_768 : 0;
      float[] strings = guitar;
      long inGuitar = frame - Math.round(guitarAt * RATE);
      sum += inGuitar >= 0 && inGuitar < strings.length ? strings[(int) inGuitar] : 0;
      return (int) Math.max(-32_768, Math.min(32_767, Math.round(sum * 32_767)));
    }

    private int write(byte[] from, int at, int bytes) {
      while (alive() && frames - due() > bufferBytes / 2) {
        LockSupport.parkNanos(1_000_000);
      }
      if (!alive()) {
        return 0;
      }
      for (int i = 0; i < bytes / 2; i++, frames++) {
        if (frames < played.length) {
          int low = from[at + 2 * i] & 0xff;
          played[(int) frames] = (short) (from[at + 2 * i + 1] << 8 | low);
        }
      }
      return bytes;
    }
  }
}
