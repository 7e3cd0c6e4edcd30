package neckway.file.sound;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.OptionalLong;

/** Sound that lies in its file sample by sample. */
final class PcmSource implements SoundSource {
  private static final int BUFFER_BYTES = 1 << 16;

  private final PcmLayout layout;
  private final FileChannel file;
  private final ByteBuffer buffer;
  private final long frames;
  private final String warning;
  private long framesLeft;

  PcmSource(Path path, PcmLayout layout) throws IOException {
    this.layout = layout;
    int frameBytes = layout.frameBytes();
    file = FileChannel.open(path, StandardOpenOption.READ);
    file.position(layout.dataOffset());
    long present = Math.max(0, file.size() - layout.dataOffset());
    long promised = Math.max(0, layout.promisedBytes().orElse(present));
    frames = Math.min(present, promised) / frameBytes;
    warning = promised / frameBytes > frames ? cutShort(path, promised / frameBytes) : null;
    framesLeft = frames;
    buffer = ByteBuffer.allocateDirect(Math.max(1, BUFFER_BYTES / frameBytes) * frameBytes);
    buffer.order(layout.order()).limit(0);
  }

  private String cutShort(Path path, long promisedFrames) {
    double rate = layout.sampleRate();
    return path + ": " + SoundFiles.cutShort(promisedFrames / rate, frames / rate);
  }

  @Override
  public int sampleRate() {
    return layout.sampleRate();
  }

  @Override
  public int channels() {
    return layout.channels();
  }

  @Override
  public OptionalLong frames() {
    return OptionalLong.of(frames);
  }

  @Override
  public int read(float[] interleaved, int wanted) throws IOException {
    if (!buffer.hasRemaining() && !refill()) {
      return 0;
    }
    int got = Math.min(wanted, buffer.remaining() / layout.frameBytes());
    int samples = got * layout.channels();
    PcmCoding coding = layout.coding();
    for (int i = 0; i < samples; i++) {
      interleaved[i] = coding.decode(buffer);
    }
    return got;
  }

  private boolean refill() throws IOException {
    int frameBytes = layout.frameBytes();
    long take = Math.min(framesLeft, buffer.capacity() / frameBytes);
    if (take == 0) {
      return false;
    }
    buffer.clear().limit((int) take * frameBytes);
    while (buffer.hasRemaining() && file.read(buffer) >= 0) {
      // reads on until the buffer is full or the file ends
    }
    buffer.flip();
    int got = buffer.limit() / frameBytes;
    buffer.limit(got * frameBytes);
    framesLeft = got < take ? 0 : framesLeft - got;
    return got > 0;
  }

  @Override
  public Optional<String> warning() {
    return Optional.ofNullable(warning);
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
