package neckway.bench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import neckway.bench.NoteMatching.Criterion;
import neckway.bench.NoteMatching.Note;
import neckway.bench.NoteMatching.Score;
import neckway.hear.Ear;
import neckway.hear.HeardNote;
import neckway.hear.NoteListener;

/** What the ear alone makes of one take. */
public final class EarRun {
  /** Tolerances of the field and of our own, stricter measure, seconds. */
  static final double WIDE = 0.05;

  static final double NARROW = 0.01;

  final Take take;
  final List<HeardNote> heard = new ArrayList<>();
  final double cpuSeconds;
  final int[] partners;
  final Score wide;
  final Score narrow;

  /** Runs the ear over the take in blocks of a size of its own. */
  public EarRun(Take take) {
    this(take, new Ear(take.sampleRate()));
  }

  /** The same with another ear. */
  EarRun(Take take, Ear ear) {
    this.take = take;
    long before = cpuNanos();
    ear.expectClicks(take.beatSeconds(), 4);
    NoteListener listener =
        new NoteListener() {
          @Override
          public void heard(HeardNote note) {
            heard.add(note);
          }

          @Override
          public void listenedUntil(double seconds) {}
        };
    int block = 256 + Math.floorMod(take.name().hashCode(), 1500);
    for (int i = 0; i < take.samples().length; i += block) {
      ear.process(take.samples(), i, Math.min(block, take.samples().length - i), listener);
    }
    ear.finish(listener);
    cpuSeconds = (cpuNanos() - before) / 1e9;
    partners = NoteMatching.match(truth(), heard(), WIDE, Criterion.ONSET_PITCH);
    wide = NoteMatching.score(truth(), heard(), WIDE, Criterion.ONSET_PITCH);
    narrow = NoteMatching.score(truth(), heard(), NARROW, Criterion.ONSET_PITCH);
  }

  private static long cpuNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private List<Note> truth() {
    return take.notes().stream().map(n -> Note.at(n.time(), n.midi())).toList();
  }

  /** The ear takes the guitar's offset off itself, so its whole number is what counts. */
  private List<Note> heard() {
    return heard.stream().map(n -> Note.at(n.time(), n.midi())).toList();
  }

  /** Every note left out and every note too many, each with its neighbours. */
  List<String> errors() {
    List<String> lines = new ArrayList<>();
    boolean[] used = new boolean[heard.size()];
    for (int i = 0; i < partners.length; i++) {
      if (partners[i] < 0) {
        lines.add("  MISSED " + played(i) + neighbours(take.notes().get(i).time()));
      } else {
        used[partners[i]] = true;
        double off = heard.get(partners[i]).time() - take.notes().get(i).time();
        if (Math.abs(off) > NARROW) {
          lines.add(
              String.format("  OFF    %+.1f ms %s", 1000 * off, played(i))
                  + neighbours(take.notes().get(i).time()));
        }
      }
    }
    for (int j = 0; j < used.length; j++) {
      if (!used[j]) {
        lines.add("  FALSE  " + said(heard.get(j)) + neighbours(heard.get(j).time()));
      }
    }
    return lines;
  }

  private String played(int i) {
    TrueNote n = take.notes().get(i);
    return String.format(
        "#%d %.4f midi %d %d:%d %s", i, n.time(), n.midi(), n.string(), n.fret(), n.note());
  }

  private static String said(HeardNote n) {
    return String.format(
        "%.4f midi %d (%.2f) %s %.0f dB decided +%.1f ms",
        n.time(), n.midi(), n.pitch(), n.start(), n.levelDbfs(), 1000 * (n.decided() - n.time()));
  }

  private String neighbours(double time) {
    StringBuilder text = new StringBuilder("\n           played");
    for (TrueNote n : take.notes()) {
      if (Math.abs(n.time() - time) < 0.6) {
        text.append(String.format(" %d@%.3f", n.midi(), n.time()));
      }
    }
    text.append("\n           heard ");
    for (HeardNote n : heard) {
      if (Math.abs(n.time() - time) < 0.6) {
        text.append(String.format(" %d@%.3f", n.midi(), n.time()));
      }
    }
    return text.toString();
  }
}
