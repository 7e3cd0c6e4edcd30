package neckway.file.sound;

import com.jcraft.jogg.Packet;
import com.jcraft.jogg.Page;
import com.jcraft.jogg.StreamState;
import com.jcraft.jogg.SyncState;
import com.jcraft.jorbis.Block;
import com.jcraft.jorbis.Comment;
import com.jcraft.jorbis.DspState;
import com.jcraft.jorbis.Info;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import neckway.neck.BadInput;
import neckway.words.Wording;

/** Sound of an Ogg Vorbis file, decoded packet by packet with JOrbis. */
final class VorbisSource implements SoundSource {
  private static final int CHUNK_BYTES = 8192;

  private final Path path;
  private final InputStream in;
  private final SyncState sync = new SyncState();
  private final StreamState stream = new StreamState();
  private final Page page = new Page();
  private final Packet packet = new Packet();
  private final Info info = new Info();
  private final DspState dsp = new DspState();
  private final Block block = new Block(dsp);
  private final float[][][] pcm = new float[1][][];
  private final int[] starts;

  /** What the last page says, once it is read: its last packet holds more than was recorded. */
  private long framesInAll = Long.MAX_VALUE;

  private long framesRead;
  private boolean lastPageSeen;
  private boolean ended;

  VorbisSource(Path path) throws IOException {
    this.path = path;
    in = Files.newInputStream(path);
    sync.init();
    info.init();
    try {
      readHeaders();
    } catch (RuntimeException e) {
      in.close();
      throw e instanceof BadInput bad ? bad : spoiltHeader();
    }
    dsp.synthesis_init(info);
    block.init(dsp);
    starts = new int[info.channels];
  }

  private BadInput spoiltHeader() {
    return new BadInput(Wording.of("files.vorbis.header", path));
  }

  private void readHeaders() throws IOException {
    Comment comment = new Comment();
    comment.init();
    if (!nextPage()) {
      throw spoiltHeader();
    }
    stream.init(page.serialno());
    stream.pagein(page);
    for (int headers = 0; headers < 3; ) {
      int got = stream.packetout(packet);
      if (got == 1) {
        if (info.synthesis_headerin(comment, packet) < 0) {
          throw headers > 0 ? spoiltHeader() : new BadInput(Wording.of("files.vorbis.none", path));
        }
        headers++;
      } else if (got < 0 || !nextPage()) {
        throw spoiltHeader();
      } else {
        stream.pagein(page);
      }
    }
  }

  private boolean nextPage() throws IOException {
    while (sync.pageout(page) != 1) {
      int at = sync.buffer(CHUNK_BYTES);
      int got = in.read(sync.data, at, CHUNK_BYTES);
      if (got <= 0) {
        return false;
      }
      sync.wrote(got);
    }
    lastPageSeen = page.eos() != 0;
    if (lastPageSeen && page.granulepos() > 0) {
      framesInAll = page.granulepos();
    }
    return true;
  }

  @Override
  public int sampleRate() {
    return info.rate;
  }

  @Override
  public int channels() {
    return info.channels;
  }

  @Override
  public OptionalLong frames() {
    return OptionalLong.empty();
  }

  @Override
  public int read(float[] interleaved, int wanted) throws IOException {
    int ready = dsp.synthesis_pcmout(pcm, starts);
    while (ready == 0) {
      if (!decodeNext()) {
        return 0;
      }
      ready = dsp.synthesis_pcmout(pcm, starts);
    }
    int got = (int) Math.min(framesInAll - framesRead, Math.min(ready, wanted));
    if (got <= 0) {
      return 0;
    }
    framesRead += got;
    for (int c = 0; c < info.channels; c++) {
      for (int f = 0; f < got; f++) {
        interleaved[f * info.channels + c] = pcm[0][c][starts[c] + f];
      }
    }
    dsp.synthesis_read(got);
    return got;
  }

  private boolean decodeNext() throws IOException {
    while (!ended) {
      if (stream.packetout(packet) == 1) {
        if (block.synthesis(packet) == 0) {
          dsp.synthesis_blockin(block);
        }
        return true;
      }
      if (lastPageSeen || !nextPage()) {
        ended = true;
      } else {
        stream.pagein(page);
      }
    }
    return false;
  }

  @Override
  public Optional<String> warning() {
    return ended && !lastPageSeen
        ? Optional.of(path + ": " + Wording.of("files.sound.noEnd"))
        : Optional.empty();
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
