package neckway.player.voice;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import neckway.neck.GuitarString;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedNote.How;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.player.surroundings.Biquad;

/** The strings' own sound, string by string, before amp and room. */
public final class GuitarSound {
  private final PlayerSettings settings;
  private final Random random;
  private final Touch touch;
  private final FingerNoise noise;
  private final float[] out;

  public GuitarSound(PlayerSettings settings, Random random, int frames) {
    this.settings = settings;
    this.random = random;
    touch = new Touch(settings, random);
    noise = new FingerNoise(settings, random);
    out = new float[frames];
  }

  /** Renders the notes, given in order of time. */
  public float[] render(List<PlayedNote> notes) {
    Map<GuitarString, List<PlayedNote>> byString = new TreeMap<>();
    Map<PlayedNote, HandOff> handOff = new IdentityHashMap<>();
    for (int i = 0; i < notes.size(); i++) {
      PlayedNote note = notes.get(i);
      byString.computeIfAbsent(note.place().string(), s -> new ArrayList<>()).add(note);
      handOff.put(note, handOff(note, i + 1 < notes.size() ? notes.get(i + 1) : null));
    }
    for (List<PlayedNote> onString : byString.values()) {
      int at = 0;
      while (at < onString.size()) {
        int end = at + 1;
        while (end < onString.size()
            && onString.get(end).how() != How.PLUCK
            && handOff.get(onString.get(end - 1)).frame() >= onString.get(end).frame()) {
          end++;
        }
        PlayedNote follower = end < onString.size() ? onString.get(end) : null;
        HandOff off = handOff.get(onString.get(end - 1));
        new StringRun(settings, touch, noise, random, out, onString.subList(at, end), follower, off)
            .render();
        at = end;
      }
    }
    body();
    return out;
  }

  /** When the hand stops a note, and how fast: at once, or letting it ring out. */
  record HandOff(long frame, double perSecond) {}

  private HandOff handOff(PlayedNote note, PlayedNote next) {
    Habits habits = settings.habits();
    double rate = settings.sampleRate();
    boolean rings = random.nextDouble() < habits.ring().share();
    double ms = (rings ? 4 : 2) * habits.ring().dampMs() * random.nextDouble();
    double perSecond =
        1 / (rings ? 0.06 + 0.4 * random.nextDouble() : 0.005 + 0.025 * random.nextDouble());
    long atRest = note.frame() + (long) ((1 + 2 * random.nextDouble()) * rate);
    if (next == null) {
      return new HandOff(atRest, perSecond);
    }
    boolean sameString = next.place().string().equals(note.place().string());
    long moved = sameString ? Long.MAX_VALUE : next.frame() + (long) (ms / 1000 * rate);
    long longest = Math.max(atRest, note.frame() + (long) (2.5 * rate));
    return new HandOff(Math.min(moved, longest), perSecond);
  }

  /** A guitar without a pickup is heard through its body. */
  private void body() {
    if (settings.guitar().pickup() > 0) {
      return;
    }
    double rate = settings.sampleRate();
    Biquad.highPass(70, 0.7, rate).run(out);
    Biquad.bell(95 + 20 * random.nextDouble(), 3, 3 + 4 * random.nextDouble(), rate).run(out);
    Biquad.bell(190 + 40 * random.nextDouble(), 4, 2 + 4 * random.nextDouble(), rate).run(out);
    Biquad.bell(380 + 90 * random.nextDouble(), 4, 4 * random.nextDouble(), rate).run(out);
  }
}
