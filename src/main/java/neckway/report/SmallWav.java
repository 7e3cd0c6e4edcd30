package neckway.report;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Base64;

/** Sound within a page: a WAV of 16 bit at 16 kHz, which every browser plays, as a data: URI. */
final class SmallWav {
  static final int RATE_HZ = 16_000;

  /** Half of the window of the low pass, in samples of the slower rate. */
  private static final int LOBES = 8;

  /** The pass band ends a little under half the new rate. */
  private static final double PASS_SHARE = 0.9;

  private static final int HEADER_BYTES = 44;
  private static final int MOST = 32_767;

  private SmallWav() {}

  /**
   * @param sound mono, -1 to 1
   * @param sampleRate frames a second, 8,000 or more
   */
  static String uri(float[] sound, double sampleRate) {
    float[] small = resampled(sound, sampleRate);
    int rate = (int) Math.min(RATE_HZ, Math.round(sampleRate));
    ByteBuffer wav = ByteBuffer.allocate(HEADER_BYTES + 2 * small.length);
    wav.order(ByteOrder.LITTLE_ENDIAN);
    wav.put(ascii("RIFF")).putInt(HEADER_BYTES - 8 + 2 * small.length).put(ascii("WAVEfmt "));
    wav.putInt(16).putShort((short) 1).putShort((short) 1).putInt(rate).putInt(2 * rate);
    wav.putShort((short) 2).putShort((short) 16).put(ascii("data")).putInt(2 * small.length);
    for (float sample : small) {
      wav.putShort((short) Math.round(Math.max(-1, Math.min(1, sample)) * MOST));
    }
    return "data:audio/wav;base64," + Base64.getEncoder().encodeToString(wav.array());
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  /** At the smaller rate, by a windowed sinc; what is slower already stays as it is. */
  static float[] resampled(float[] sound, double sampleRate) {
    if (sampleRate <= RATE_HZ) {
      return sound.clone();
    }
    double step = sampleRate / RATE_HZ;
    double cutoff = PASS_SHARE / step;
    int half = (int) Math.ceil(LOBES * step);
    float[] small = new float[(int) (sound.length / step)];
    for (int i = 0; i < small.length; i++) {
      double at = i * step;
      int from = Math.max(0, (int) Math.ceil(at - half));
      int to = Math.min(sound.length - 1, (int) Math.floor(at + half));
      double sum = 0;
      for (int j = from; j <= to; j++) {
        double away = j - at;
        double window = 0.5 + 0.5 * Math.cos(Math.PI * away / half);
        sum += sound[j] * cutoff * sinc(cutoff * away) * window;
      }
      small[i] = (float) sum;
    }
    return small;
  }

  private static double sinc(double x) {
    return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
  }
}
