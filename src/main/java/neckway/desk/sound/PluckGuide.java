package neckway.desk.sound;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.calibration.Calibrated;
import neckway.calibration.Calibration;
import neckway.calibration.Pluck;
import neckway.calibration.Plucks;
import neckway.hear.HeardNote;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.Tuning;

/**
 * Leads through the plucks from which a guitar is learnt: says which is next and, at once, whether
 * it was heard and right. Plucks can be taken back, passed over, or made again string by string,
 * and the device may go and come back meanwhile. For one thread.
 */
final class PluckGuide {
  /** What was said of the sound heard last. */
  enum Said {
    NOTHING,
    RIGHT,
    /** Another note than the one asked for. */
    WRONG,
    /** The note before, once more. */
    SAME,
    /** The right note with no attack. */
    NOT_PLUCKED
  }

  /**
   * How far it is.
   *
   * @param next where to pluck; empty: all is done
   * @param done places of the sequence that are heard or passed over
   * @param all places of the sequence
   * @param said of the sound heard last
   * @param heardMidi the note heard last
   */
  record State(Optional<Place> next, int done, int all, Said said, OptionalInt heardMidi) {}

  /** A pluck farther off the note asked for is another note, semitones. */
  static final double MOST_OFF = 0.6;

  /** Sounds this much below the loudest pluck are strings that ring along, dB. */
  private static final double BELOW_LOUDEST_DB = 24;

  /**
   * Notes this close to an attack began with it: where an older string rings on, the ear may have
   * the attack first and its note a moment later, seconds.
   */
  private static final double ONE_ATTACK_SECONDS = 0.08;

  /** The last pluck's sound is whole after this, seconds. */
  private static final double RINGS_SECONDS = 1;

  private final Tuning tuning;
  private final Calibration calibration;
  private final List<Place> places = new ArrayList<>();
  private final boolean[] done;
  private final Pluck[] kept;
  private final Map<Integer, Integer> noteOfPlace = new HashMap<>();

  private Optional<Plucks> plucks = Optional.empty();
  private int told;
  private double loudestDbfs = Double.NEGATIVE_INFINITY;
  private double lastSeconds;
  private double attackSeconds = Double.NEGATIVE_INFINITY;
  private Said said = Said.NOTHING;
  private OptionalInt heardMidi = OptionalInt.empty();

  /**
   * @param tuning the open strings
   * @param frets as of {@link Calibration}
   */
  PluckGuide(Tuning tuning, List<Integer> frets) {
    this.tuning = tuning;
    calibration = new Calibration(tuning, frets);
    for (GuitarString string : tuning.strings()) {
      for (int fret : frets) {
        places.add(new Place(string, fret));
      }
    }
    done = new boolean[places.size()];
    kept = new Pluck[places.size()];
  }

  /** A device gives sound from now on. */
  void begin(double sampleRate) {
    pause();
    plucks = Optional.of(new Plucks(sampleRate));
    told = 0;
    lastSeconds = 0;
    attackSeconds = Double.NEGATIVE_INFINITY;
  }

  /** The device is gone, or it is time to learn: what was plucked is kept. */
  void pause() {
    if (plucks.isEmpty()) {
      return;
    }
    List<HeardNote> heard = List.copyOf(plucks.get().heard());
    List<Pluck> read = plucks.get().finish();
    plucks = Optional.empty();
    noteOfPlace.forEach(
        (place, note) -> {
          double time = heard.get(note).time();
          kept[place] = read.stream().filter(p -> p.time() == time).findFirst().orElse(null);
          done[place] = kept[place] != null;
        });
    noteOfPlace.clear();
  }

  /** Takes sound; true where something new is to be said. */
  boolean feed(float[] samples, int length) {
    if (plucks.isEmpty()) {
      return false;
    }
    Plucks now = plucks.get();
    now.feed(samples, 0, length);
    boolean news = told < now.heard().size();
    for (; told < now.heard().size(); told++) {
      hear(told, now.heard().get(told));
    }
    return news;
  }

  private void hear(int index, HeardNote note) {
    int next = next();
    if (next == places.size() || note.levelDbfs() < loudestDbfs - BELOW_LOUDEST_DB) {
      return;
    }
    if (note.start() == HeardNote.Start.PLUCK) {
      attackSeconds = note.time();
    }
    boolean plucked = Math.abs(note.time() - attackSeconds) < ONE_ATTACK_SECONDS;
    heardMidi = OptionalInt.of((int) Math.round(note.pitch()));
    if (Math.abs(note.pitch() - tuning.midi(places.get(next))) <= MOST_OFF) {
      if (!plucked) {
        said = Said.NOT_PLUCKED;
        return;
      }
      said = Said.RIGHT;
      done[next] = true;
      noteOfPlace.put(next, index);
      loudestDbfs = Math.max(loudestDbfs, note.levelDbfs());
      lastSeconds = note.time();
    } else if (next > 0 && Math.abs(note.pitch() - tuning.midi(places.get(next - 1))) <= MOST_OFF) {
      said = Said.SAME;
    } else if (plucked) {
      said = Said.WRONG;
    }
  }

  private int next() {
    for (int place = 0; place < done.length; place++) {
      if (!done[place]) {
        return place;
      }
    }
    return done.length;
  }

  /** Takes the last pluck before the next one back. */
  void back() {
    if (next() > 0) {
      forget(next() - 1);
    }
    said = Said.NOTHING;
  }

  /** Passes the next one over. */
  void skip() {
    if (next() < done.length) {
      done[next()] = true;
    }
    said = Said.NOTHING;
  }

  /** All plucks of a string are to be made again. */
  void again(GuitarString string) {
    for (int place = 0; place < done.length; place++) {
      if (places.get(place).string().equals(string)) {
        forget(place);
      }
    }
    said = Said.NOTHING;
  }

  private void forget(int place) {
    done[place] = false;
    kept[place] = null;
    noteOfPlace.remove(place);
  }

  State state() {
    int next = next();
    int count = 0;
    for (boolean each : done) {
      count += each ? 1 : 0;
    }
    return new State(
        next < places.size() ? Optional.of(places.get(next)) : Optional.empty(),
        count,
        places.size(),
        said,
        heardMidi);
  }

  /** Whether everything is plucked and the last note has been heard out. */
  boolean ready() {
    return next() == done.length
        && (noteOfPlace.isEmpty()
            || plucks.isEmpty()
            || plucks.get().seconds() > lastSeconds + RINGS_SECONDS);
  }

  /**
   * Learns the guitar from what was plucked; more may be plucked afterwards, after {@link #begin}.
   *
   * @throws neckway.neck.BadInput where a string cannot be learnt
   */
  Calibrated learn() {
    pause();
    List<Pluck> sequence = new ArrayList<>();
    // one a second: how long the player took does not matter
    for (int place = 0; place < kept.length; place++) {
      if (kept[place] != null) {
        sequence.add(new Pluck(place, kept[place].pitch(), kept[place].stiffness()));
      }
    }
    return calibration.learn(sequence);
  }
}
