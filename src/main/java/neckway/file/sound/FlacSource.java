package neckway.file.sound;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import neckway.neck.BadInput;
import neckway.words.Wording;
import org.jflac.FLACDecoder;
import org.jflac.FrameListener;
import org.jflac.frame.Frame;
import org.jflac.metadata.Metadata;
import org.jflac.metadata.StreamInfo;

/** Sound of a FLAC file, decoded frame by frame with jFLAC. */
final class FlacSource implements SoundSource {
  /** A frame's first bytes show up in damaged sound by chance once in some thousands. */
  private static final int MOST_COMPLAINTS = 2_000;

  private final Path path;
  private final InputStream in;
  private final FLACDecoder decoder;
  private final StreamInfo info;
  private final float fullScale;
  private int[][] frame = {};
  private int frameLength;
  private int used;
  private long framesRead;
  private boolean ended;
  private int complaints;

  FlacSource(Path path) throws IOException {
    this.path = path;
    in = new BufferedInputStream(Files.newInputStream(path), 1 << 16);
    try {
      decoder = new FLACDecoder(FlacHead.withFiguresAlone(in));
      decoder.addFrameListener(new Complaints());
      decoder.readMetadata();
      info = decoder.getStreamInfo();
    } catch (IOException | RuntimeException e) {
      in.close();
      throw new BadInput(Wording.of("files.flac.header", path), e);
    }
    if (info == null) {
      in.close();
      throw new BadInput(Wording.of("files.flac.header", path));
    }
    fullScale = (float) Math.scalb(1.0, info.getBitsPerSample() - 1);
  }

  @Override
  public int sampleRate() {
    return info.getSampleRate();
  }

  @Override
  public int channels() {
    return info.getChannels();
  }

  @Override
  public OptionalLong frames() {
    long frames = info.getTotalSamples();
    return frames > 0 ? OptionalLong.of(frames) : OptionalLong.empty();
  }

  @Override
  public int read(float[] interleaved, int wanted) throws IOException {
    if (used == frameLength && !decodeNext()) {
      return 0;
    }
    int channels = channels();
    int got = Math.min(wanted, frameLength - used);
    for (int c = 0; c < channels; c++) {
      for (int f = 0; f < got; f++) {
        interleaved[f * channels + c] = frame[c][used + f] / fullScale;
      }
    }
    used += got;
    framesRead += got;
    return got;
  }

  /** What the decoder finds wrong with frames; it never gives up by itself. */
  private final class Complaints implements FrameListener {
    @Override
    public void processMetadata(Metadata metadata) {
      // none is asked for
    }

    @Override
    public void processFrame(Frame good) {
      // each is taken as it is read
    }

    @Override
    public void processError(String message) {
      complaints++;
      if (complaints > MOST_COMPLAINTS) {
        throw new Hopeless();
      }
    }
  }

  /** So many complaints without a good frame between them: there is none to come. */
  private static final class Hopeless extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  private boolean decodeNext() throws IOException {
    complaints = 0;
    try {
      Frame next = ended ? null : decoder.readNextFrame();
      if (next == null) {
        ended = true;
        return false;
      }
      if (next.header.channels != channels() || next.header.sampleRate != sampleRate()) {
        throw new BadInput(Wording.of("files.flac.changes", path));
      }
      frameLength = next.header.blockSize;
      frame = new int[channels()][];
      for (int c = 0; c < frame.length; c++) {
        frame[c] = decoder.getChannelData()[c].getOutput();
      }
      used = 0;
      return true;
    } catch (ArrayIndexOutOfBoundsException | NullPointerException | Hopeless e) {
      ended = true;
      return false;
    }
  }

  @Override
  public Optional<String> warning() {
    String problem = null;
    if (decoder.getBadFrames() > 0) {
      problem =
          Wording.counted("files.flac.damaged", decoder.getBadFrames(), decoder.getBadFrames());
    } else if (ended && frames().isPresent() && framesRead < frames().getAsLong()) {
      problem =
          SoundFiles.cutShort(
              frames().getAsLong() / (double) sampleRate(), framesRead / (double) sampleRate());
    }
    return Optional.ofNullable(problem).map(words -> path + ": " + words);
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
