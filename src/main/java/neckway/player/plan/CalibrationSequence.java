package neckway.player.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.Tuning;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;

/**
 * The notes by which a guitar is learnt: string by string from the lowest, on each the frets in
 * order, one pluck each, left to ring.
 */
public final class CalibrationSequence {
  private static final double FIRST_SECONDS = 0.6;
  private static final double APART_SECONDS = 1.0;
  private static final double UNEVEN_SECONDS = 0.03;

  private CalibrationSequence() {}

  public static List<PlayedNote> notes(
      PlayerSettings settings, Tuning tuning, List<Integer> frets, Random random) {
    List<PlayedNote> notes = new ArrayList<>();
    Guitar guitar = settings.guitar();
    for (int number = tuning.count(); number >= 1; number--) {
      GuitarString string = new GuitarString(number);
      for (int fret : frets) {
        double time =
            FIRST_SECONDS
                + notes.size() * APART_SECONDS
                + UNEVEN_SECONDS * Math.max(-3, Math.min(3, random.nextGaussian()));
        long frame = Math.round(time * settings.sampleRate());
        double db =
            settings.habits().pick().dynamicsDb()
                * Math.max(-3, Math.min(3, random.nextGaussian()));
        notes.add(
            new PlayedNote(
                frame,
                (double) frame / settings.sampleRate(),
                new Place(string, fret),
                tuning.openMidi(string) + fret,
                guitar.stringCents().get(number - 1) + guitar.fretCents() * random.nextGaussian(),
                PlayedNote.How.PLUCK,
                Math.pow(10, db / 20),
                PlayedNote.Kind.RIGHT,
                OptionalInt.of(notes.size()),
                0,
                OptionalInt.empty()));
      }
    }
    return notes;
  }
}
