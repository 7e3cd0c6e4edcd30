package neckway.sound;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import neckway.hear.beside.AtRate;

/**
 * Short calls at given frames, whispered one word after the other. A whisper has no pitch, so that
 * one that leaks into the input is no note. Allocates nothing while playing. For one thread.
 */
public final class CueWords implements PlayedSound {
  /**
   * A call and its beat.
   *
   * @param frame output frame of the beat; the call begins a little later, past the beat's click
   * @param words names of {@code words/NAME.wav}, in the order in which they are said
   */
  public record At(double frame, List<String> words) {
    public At {
      words = List.copyOf(words);
    }
  }

  /** After its beat; by then the click is over. */
  private static final double AFTER_BEAT_SECONDS = 0.035;

  /** Between two words. */
  private static final double GAP_SECONDS = 0.03;

  private static final double FULL_SCALE = 32_768;

  private final long[] starts;
  private final float[][] calls;
  private final float gain;
  private int next;

  /**
   * @param calls in their order
   * @param gain share of full scale that a click beside them has
   */
  public CueWords(int sampleRate, List<At> calls, double gain) {
    this.gain = (float) gain;
    Map<String, float[]> known = new HashMap<>();
    Map<List<String>, float[]> said = new HashMap<>();
    starts = new long[calls.size()];
    this.calls = new float[calls.size()][];
    for (int i = 0; i < starts.length; i++) {
      At call = calls.get(i);
      starts[i] = Math.round(call.frame() + AFTER_BEAT_SECONDS * sampleRate);
      this.calls[i] =
          said.computeIfAbsent(
              call.words(),
              words ->
                  together(
                      words.stream()
                          .map(word -> known.computeIfAbsent(word, w -> word(w, sampleRate)))
                          .toList(),
                      (int) (GAP_SECONDS * sampleRate)));
    }
  }

  private static float[] together(List<float[]> words, int gap) {
    int length = words.stream().mapToInt(word -> word.length + gap).sum();
    float[] all = new float[length];
    int at = 0;
    for (float[] word : words) {
      System.arraycopy(word, 0, all, at, word.length);
      at += word.length + gap;
    }
    return all;
  }

  private static float[] word(String name, int sampleRate) {
    String file = "words/" + name + ".wav";
    try (InputStream bytes = CueWords.class.getResourceAsStream(file);
        AudioInputStream in = AudioSystem.getAudioInputStream(new BufferedInputStream(bytes))) {
      ByteArrayOutputStream read = new ByteArrayOutputStream();
      in.transferTo(read);
      byte[] pcm = read.toByteArray();
      float[] samples = new float[pcm.length / 2];
      for (int i = 0; i < samples.length; i++) {
        samples[i] = (float) ((short) (pcm[2 * i] & 0xff | pcm[2 * i + 1] << 8) / FULL_SCALE);
      }
      return AtRate.of(samples, in.getFormat().getSampleRate(), sampleRate);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (UnsupportedAudioFileException e) {
      throw new IllegalStateException(file, e);
    }
  }

  /** Writes the calls of the frames from this one on over a block. */
  @Override
  public void fill(long frame, float[] block) {
    for (int i = 0; i < block.length; i++) {
      long at = frame + i;
      while (next < starts.length && at >= starts[next] + calls[next].length) {
        next++;
      }
      boolean sounding = next < starts.length && at >= starts[next];
      block[i] = sounding ? gain * calls[next][(int) (at - starts[next])] : 0;
    }
  }
}
