package neckway.player;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import neckway.neck.GuitarString;
import neckway.player.PlayedNote.How;

/** The strings' own sound, string by string, before amp and room. */
final class GuitarSound {
  private static final double GLIDE_SECONDS = 0.05;
  private static final double HAND_DAMP_SECONDS = 0.012;
  private static final double PICK_DAMP_SECONDS = 0.0025;
  private static final double FRET_SECONDS = 0.022;

  private final PlayerSettings settings;
  private final int sampleRate;
  private final Random random;
  private final FingerNoise noise;
  private final float[] out;

  GuitarSound(PlayerSettings settings, Random random, int frames) {
    this.settings = settings;
    this.sampleRate = settings.sampleRate();
    this.random = random;
    this.noise = new FingerNoise(settings, random);
    this.out = new float[frames];
  }

  /** Renders the notes, given in order of time. */
  float[] render(List<PlayedNote> notes) {
    Map<GuitarString, List<Integer>> byString = new TreeMap<>();
    for (int i = 0; i < notes.size(); i++) {
      byString.computeIfAbsent(notes.get(i).place().string(), s -> new ArrayList<>()).add(i);
    }
    long[] offFrames = new long[notes.size()];
    for (int i = 0; i < notes.size(); i++) {
      offFrames[i] = handOff(notes, i);
    }
    for (List<Integer> onString : byString.values()) {
      int at = 0;
      while (at < onString.size()) {
        int end = at + 1;
        while (end < onString.size()
            && continues(notes.get(onString.get(end)), offFrames, onString, end)) {
          end++;
        }
        List<PlayedNote> chain = onString.subList(at, end).stream().map(notes::get).toList();
        long next = end < onString.size() ? notes.get(onString.get(end)).frame() : Long.MAX_VALUE;
        PlayedNote follower = end < onString.size() ? notes.get(onString.get(end)) : null;
        play(chain, offFrames[onString.get(end - 1)], next, follower);
        at = end;
      }
    }
    return out;
  }

  private boolean continues(PlayedNote note, long[] offFrames, List<Integer> onString, int at) {
    return note.how() != How.PLUCK && offFrames[onString.get(at - 1)] >= note.frame();
  }

  /** When the hand stops a note because another string is struck. */
  private long handOff(List<PlayedNote> notes, int i) {
    Habits habits = settings.habits();
    PlayedNote note = notes.get(i);
    boolean rings = random.nextDouble() < habits.ringShare();
    double ms =
        rings ? 300 + 1500 * random.nextDouble() : habits.dampMs() * 2 * random.nextDouble();
    boolean last = i == notes.size() - 1;
    double lone = 1.2 + 1.5 * random.nextDouble();
    if (last) {
      return note.frame() + (long) (lone * sampleRate);
    }
    PlayedNote next = notes.get(i + 1);
    if (next.place().string().equals(note.place().string())) {
      return Long.MAX_VALUE;
    }
    long off = next.frame() + (long) (ms / 1000 * sampleRate);
    return Math.min(off, note.frame() + (long) ((lone + 1) * sampleRate));
  }

  private void play(List<PlayedNote> chain, long handOff, long nextPluck, PlayedNote follower) {
    Guitar guitar = settings.guitar();
    Habits habits = settings.habits();
    PlayedNote first = chain.get(0);
    double cents = guitar.fretCents() * random.nextGaussian();
    StringVoice voice = voice(first, cents, strike(first));
    noise.attack(out, first, first.how() == How.PLUCK ? 1 : 0.4);
    double glideCents =
        first.how() == How.PLUCK
            ? 6 * random.nextDouble() * first.velocity() * first.velocity()
            : 0;
    boolean vibrato = random.nextDouble() < habits.vibratoShare();
    double vibratoHz = 4.5 + 2 * random.nextDouble();
    double vibratoCents = 8 + 20 * random.nextDouble();
    List<Turn> turns = turns(chain, nextPluck, follower);
    long mute = (long) (habits.muteMs() * (0.5 + random.nextDouble()) / 1000 * sampleRate);
    long pickOn =
        nextPluck == Long.MAX_VALUE ? nextPluck : Math.max(first.frame(), nextPluck - mute);
    long end = Math.min(out.length, nextPluck);
    int turn = 0;
    double lastCents = Double.NaN;
    boolean retune = true;
    double dampPerSecond = 0;
    long soundFrom = first.frame();
    int at = (int) first.frame();
    while (at < end) {
      while (turn < turns.size() && turns.get(turn).frame() <= at) {
        Turn now = turns.get(turn++);
        cents = now.passing() ? cents : guitar.fretCents() * random.nextGaussian();
        voice.moveTo(
            hz(now.note(), now.fret(), cents), guitar.stiffnessAt(number(first), now.fret()));
        voice.lose(now.loss(), now.passing() ? 0.01 : 0.02);
        if (!now.passing()) {
          soundFrom = now.frame();
          if (now.note().how() != How.SLIDE) {
            addWeakStroke(now.note(), cents, Math.min(end, handOff));
          }
        }
        retune = true;
      }
      double damp =
          at >= pickOn ? 1 / PICK_DAMP_SECONDS : at >= handOff ? 1 / HAND_DAMP_SECONDS : 0;
      if (damp != dampPerSecond) {
        dampPerSecond = damp;
        voice.damp(damp);
        retune = true;
      }
      double age = (double) (at - first.frame()) / sampleRate;
      double off = glideCents * Math.exp(-age / GLIDE_SECONDS);
      double held = (double) (at - soundFrom) / sampleRate;
      if (vibrato && held > 0.18) {
        double grown = Math.min(1, (held - 0.18) / 0.2);
        off += grown * vibratoCents * 0.5 * (1 - Math.cos(2 * Math.PI * vibratoHz * (held - 0.18)));
      }
      if (retune || Math.abs(off - lastCents) > 0.15) {
        voice.tune(off);
        lastCents = off;
        retune = false;
      }
      long stop = Math.min(end, at + StringVoice.block());
      if (turn < turns.size()) {
        stop = Math.min(stop, turns.get(turn).frame());
      }
      stop = pickOn > at ? Math.min(stop, pickOn) : stop;
      stop = handOff > at ? Math.min(stop, handOff) : stop;
      if (!voice.render(out, at, (int) Math.max(at + 1, stop))) {
        break;
      }
      at = (int) Math.max(at + 1, stop);
    }
  }

  /** A change of fret while the string sounds; passing: on the way of a slide. */
  private record Turn(long frame, PlayedNote note, int fret, double loss, boolean passing) {}

  private List<Turn> turns(List<PlayedNote> chain, long nextPluck, PlayedNote follower) {
    List<Turn> turns = new ArrayList<>();
    for (int i = 1; i < chain.size(); i++) {
      PlayedNote note = chain.get(i);
      if (note.how() == How.SLIDE) {
        slide(turns, note, note.frame(), chain.get(i - 1).frame());
      }
      double loss = note.how() == How.SLIDE ? 0.05 : 0.25 + 0.2 * random.nextDouble();
      turns.add(new Turn(note.frame(), note, note.place().fret(), loss, false));
    }
    if (follower != null && follower.slideFrom().isPresent() && follower.how() == How.PLUCK) {
      slide(turns, follower, nextPluck, chain.get(chain.size() - 1).frame());
    }
    return turns;
  }

  private void slide(List<Turn> turns, PlayedNote to, long arrival, long notBefore) {
    int from = to.slideFrom().orElse(to.place().fret());
    int travel = to.place().fret() - from;
    int frets = Math.abs(travel);
    double perFret = FRET_SECONDS * (0.6 + 0.8 * random.nextDouble());
    for (int i = 1; i < frets; i++) {
      long frame = arrival - (long) ((frets - i) * perFret * sampleRate);
      if (frame > notBefore + sampleRate / 50) {
        int fret = from + i * Integer.signum(travel);
        turns.add(new Turn(frame, to, fret, 0.04 + 0.08 * random.nextDouble(), true));
      }
    }
    noise.squeak(out, to, arrival - (long) (frets * perFret * sampleRate), arrival);
  }

  private void addWeakStroke(PlayedNote note, double cents, long until) {
    Stroke full = strike(note);
    StringVoice weak = voice(note, cents, full);
    int end = (int) Math.min(until, out.length);
    for (int at = (int) note.frame(); at < end; ) {
      int stop = Math.min(end, at + 4096);
      if (!weak.render(out, at, stop)) {
        break;
      }
      at = stop;
    }
    noise.attack(out, note, 0.3);
  }

  private Stroke strike(PlayedNote note) {
    Guitar guitar = settings.guitar();
    Habits habits = settings.habits();
    double length = Math.pow(2, -note.place().fret() / 12.0);
    boolean plucked = note.how() == How.PLUCK;
    double strength = note.velocity() * (plucked ? 1 : note.how() == How.PULL ? 0.45 : 0.35);
    double at = habits.pickPosition() * (0.85 + 0.3 * random.nextDouble()) / length;
    double bright =
        guitar.brightHz() * (0.5 + 0.7 * habits.pickHardness()) * (0.8 + 0.2 * note.velocity());
    return new Stroke(
        strength,
        guitar.ringSeconds().get(number(note) - 1) * Math.pow(2, -note.place().fret() / 18.0),
        Math.min(0.5, plucked ? at : 0.5 - 0.2 * random.nextDouble()),
        Math.min(0.5, guitar.pickup() / length),
        plucked ? bright : 0.6 * bright,
        0.15 + 0.5 * random.nextDouble());
  }

  private StringVoice voice(PlayedNote note, double cents, Stroke stroke) {
    double f0 = hz(note, note.place().fret(), cents);
    double stiffness = settings.guitar().stiffnessAt(number(note), note.place().fret());
    return new StringVoice(sampleRate, f0, stiffness, settings.guitar(), stroke);
  }

  private double hz(PlayedNote note, int fret, double cents) {
    Guitar guitar = settings.guitar();
    double midi = note.midi() - note.place().fret() + fret;
    double off = cents + guitar.detuneCents() + guitar.stringCents().get(number(note) - 1);
    return 440 * Math.pow(2, (midi - 69 + off / 100) / 12);
  }

  private static int number(PlayedNote note) {
    return note.place().string().number();
  }
}
