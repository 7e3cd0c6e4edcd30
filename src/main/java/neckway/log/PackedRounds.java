package neckway.log;

import java.nio.ByteBuffer;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import neckway.neck.Direction;
import neckway.neck.Shape;
import neckway.practice.Exercise;
import neckway.practice.PlayedRound;

/**
 * The rounds of a run as bytes of one length each, so that thousands of runs are read in a moment:
 * what was exercised (five bytes: kind, lower shape, upper shape, finger, string), whether it was
 * clean (one), the tempo and how late the landing was (IEEE 754 doubles, eight each; not a number
 * where no landing was heard).
 */
final class PackedRounds {
  private static final int ROUND_BYTES = 5 + 1 + 8 + 8;
  private static final byte SHAPE = 'S';
  private static final byte UP = 'U';
  private static final byte DOWN = 'D';

  /** Each exercise once, however many rounds there are of it; by its bytes as one number. */
  private final Map<Long, Exercise> known = new HashMap<>();

  static byte[] of(List<PlayedRound> rounds) {
    ByteBuffer bytes = ByteBuffer.allocate(rounds.size() * ROUND_BYTES);
    for (PlayedRound round : rounds) {
      put(bytes, round.exercise());
      bytes.put((byte) (round.clean() ? 1 : 0));
      bytes.putDouble(round.tempo());
      bytes.putDouble(round.lateMs().orElse(Double.NaN));
    }
    return bytes.array();
  }

  private static void put(ByteBuffer bytes, Exercise exercise) {
    if (exercise instanceof Exercise.OfJoin join) {
      bytes.put(join.direction() == Direction.UP ? UP : DOWN);
      bytes.put((byte) join.lower().ordinal());
      bytes.put((byte) join.upper().ordinal());
      bytes.put((byte) join.finger());
      bytes.put((byte) join.string());
      return;
    }
    byte shape = (byte) ((Exercise.OfShape) exercise).shape().ordinal();
    bytes.put(SHAPE).put(shape).put(shape).put((byte) 0).put((byte) 0);
  }

  /**
   * The rounds of a run; what is damaged in them is left out.
   *
   * @param packed null where a damaged log has none
   */
  List<PlayedRound> read(byte[] packed, Instant when, LocalDate day) {
    if (packed == null) {
      return List.of();
    }
    ByteBuffer bytes = ByteBuffer.wrap(packed);
    List<PlayedRound> rounds = new ArrayList<>(packed.length / ROUND_BYTES);
    while (bytes.remaining() >= ROUND_BYTES) {
      long word = (bytes.getInt() & 0xffffffffL) << 8 | bytes.get() & 0xff;
      boolean clean = bytes.get() != 0;
      double tempo = bytes.getDouble();
      double late = bytes.getDouble();
      Exercise exercise = known.computeIfAbsent(word, PackedRounds::exercise);
      if (exercise != null && tempo > 0) {
        OptionalDouble landing =
            Double.isNaN(late) ? OptionalDouble.empty() : OptionalDouble.of(late);
        rounds.add(new PlayedRound(exercise, when, day, clean, tempo, landing));
      }
    }
    return rounds;
  }

  /** Null where the bytes mean none. */
  private static Exercise exercise(long word) {
    int kind = (int) (word >> 32 & 0xff);
    int lower = (int) (word >> 24 & 0xff);
    int upper = (int) (word >> 16 & 0xff);
    Shape[] shapes = Shape.values();
    if (lower >= shapes.length || upper >= shapes.length) {
      return null;
    }
    if (kind == SHAPE) {
      return new Exercise.OfShape(shapes[lower]);
    }
    if (kind != UP && kind != DOWN) {
      return null;
    }
    return new Exercise.OfJoin(
        shapes[lower],
        shapes[upper],
        kind == UP ? Direction.UP : Direction.DOWN,
        (int) (word & 0xff),
        (int) (word >> 8 & 0xff));
  }
}
