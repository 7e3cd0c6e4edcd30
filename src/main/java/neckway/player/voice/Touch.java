package neckway.player.voice;

import java.util.Random;
import neckway.neck.Pitch;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedNote.How;
import neckway.player.settings.Guitar;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;

/** The hands on the strings: how each note is struck and what it is tuned to. */
final class Touch {
  private final Guitar guitar;
  private final Habits habits;
  private final Random random;

  Touch(PlayerSettings settings, Random random) {
    guitar = settings.guitar();
    habits = settings.habits();
    this.random = random;
  }

  /** How a note is struck, a little different each time. */
  Stroke strike(PlayedNote note) {
    double length = Math.pow(2, -note.place().fret() / 12.0);
    boolean plucked = note.how() == How.PLUCK;
    double strength = note.velocity() * (plucked ? 1 : note.how() == How.PULL ? 0.45 : 0.35);
    double at = habits.pick().position() * (0.85 + 0.3 * random.nextDouble()) / length;
    double bright =
        guitar.brightHz() * (0.5 + 0.7 * habits.pick().hardness()) * (0.8 + 0.2 * note.velocity());
    return new Stroke(
        strength,
        ringSeconds(note, note.place().fret()),
        Math.min(0.8, plucked ? at : 0.25 + 0.2 * random.nextDouble()),
        Math.min(0.9, guitar.pickup() / length),
        plucked ? bright : 0.6 * bright,
        0.2 + 1.6 * random.nextDouble());
  }

  /** Time constant of a note's fundamental; high frets ring for less. */
  double ringSeconds(PlayedNote note, int fret) {
    return guitar.ringSeconds().get(number(note) - 1) * Math.pow(2, -fret / 18.0);
  }

  /** Stiffness of the note's string at a fret. */
  double stiffness(PlayedNote note, int fret) {
    return guitar.stiffnessAt(number(note), fret);
  }

  /** Fundamental of the note's string at a fret. */
  double hz(PlayedNote note, int fret) {
    double midi = note.midi() - note.place().fret() + fret;
    double off = note.cents() + guitar.detuneCents();
    return Pitch.hz(midi + off / 100);
  }

  private static int number(PlayedNote note) {
    return note.place().string().number();
  }
}
