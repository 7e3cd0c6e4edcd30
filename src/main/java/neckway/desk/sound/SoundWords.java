package neckway.desk.sound;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import neckway.desk.Texts;
import neckway.neck.GuitarString;
import neckway.neck.Key;
import neckway.neck.Pitch;
import neckway.neck.Place;
import neckway.neck.Tuning;

/** What the sound room says. */
final class SoundWords {
  /** Closer than this is in tune, cents; the same as the tuner of the terminal. */
  static final double IN_TUNE_CENTS = 2;

  private static final double NEAR_SEMITONES = 1.5;
  private static final Key NAMES = Key.parse("C major");

  private SoundWords() {}

  /** The name of a note. */
  static String note(int midi) {
    return NAMES.spell(midi).toString();
  }

  /** The note nearest to a tone. */
  static String note(OptionalDouble hz) {
    return hz.isEmpty() ? "–" : note(nearest(hz.getAsDouble()));
  }

  private static int nearest(double hz) {
    return (int) Math.round(Pitch.midiOfHz(hz));
  }

  /** How far a tone is from the nearest note, cents. */
  static double cents(double hz) {
    return 100 * (Pitch.midiOfHz(hz) - nearest(hz));
  }

  /** Which string a tone is nearest to, and what to do with it. */
  static String tuner(OptionalDouble tone, Tuning tuning) {
    if (tone.isEmpty()) {
      return Texts.of("sound.tuner.none");
    }
    double hz = tone.getAsDouble();
    String cents = String.format(Locale.ROOT, "%+.0f", cents(hz)).replace('-', '−');
    for (GuitarString string : tuning.strings()) {
      double off = 100 * (Pitch.midiOfHz(hz) - tuning.openMidi(string));
      if (Math.abs(off) < 100 * NEAR_SEMITONES) {
        String way =
            Math.abs(off) < IN_TUNE_CENTS
                ? Texts.of("sound.tuner.good")
                : off < 0 ? Texts.of("sound.tuner.tighten") : Texts.of("sound.tuner.slacken");
        return Texts.of("sound.tuner.string", cents, string, note(tuning.openMidi(string)), way);
      }
    }
    return Texts.of("sound.tuner.cents", cents);
  }

  /** What Java Sound calls the device that the system's own settings choose. */
  private static final String SYSTEMS_CHOICE = "default [default]";

  /** A device's name in plain words. */
  static String device(String name) {
    return isSystems(name) ? Texts.of("sound.systems") : name;
  }

  /** Whether it is the one that the system chooses. */
  static boolean isSystems(String name) {
    return name.equals(SYSTEMS_CHOICE);
  }

  /**
   * A choice of device as it is shown.
   *
   * @param chosen its name; empty where none is asked for
   * @param taken the name of the one that is taken then; empty where there is none
   */
  static String choice(String chosen, String taken) {
    if (!chosen.isEmpty()) {
      return device(chosen);
    }
    return taken.isEmpty()
        ? Texts.of("sound.automatic.none")
        : Texts.of("sound.automatic", device(taken));
  }

  /** All that {@link #level} says, where words may need the most room. */
  static List<String> levels() {
    return List.of(
        Texts.of("sound.silent"),
        Texts.of("check.quiet", "−50"),
        Texts.of("check.clipping"),
        Texts.of("sound.good", "−50"),
        Texts.of("sound.measuring"),
        Texts.of("sound.nothing"));
  }

  /** All that {@link #tuner} says. */
  static List<String> tuners() {
    String string =
        Texts.of("sound.tuner.string", "−150", "6", "Bb2", Texts.of("sound.tuner.slacken"));
    return List.of(Texts.of("sound.tuner.none"), Texts.of("sound.tuner.waits"), string);
  }

  /** All that {@link #said} says. */
  static List<String> allSaid() {
    return List.of(
        Texts.of("guitar.said.nothing"),
        Texts.of("guitar.said.wrong", "Bb2"),
        Texts.of("guitar.said.same", "Bb2"),
        Texts.of("guitar.said.notPlucked", "Bb2"));
  }

  /** The level in one line. */
  static String level(RoomEar.Heard heard) {
    if (heard.finding().isEmpty()) {
      return Texts.of("sound.nothing");
    }
    return switch (heard.finding().get()) {
      case NOTHING_YET -> Texts.of("sound.silent");
      case TOO_QUIET -> Texts.of("check.quiet", decibels(heard));
      case CLIPPING -> Texts.of("check.clipping");
      case GOOD, FLAT, SHARP -> Texts.of("sound.good", decibels(heard));
    };
  }

  private static String decibels(RoomEar.Heard heard) {
    return Long.toString(Math.round(heard.loudestDbfs())).replace('-', '−');
  }

  /** Where to pluck. */
  static String pluck(Place place, Tuning tuning) {
    String note = note(tuning.midi(place));
    String string = place.string().toString();
    return place.fret() == 0
        ? Texts.of("guitar.pluck.open", string, note)
        : Texts.of("guitar.pluck.fret", string, place.fret(), note);
  }

  /** What was heard last. */
  static String said(PluckGuide.State state) {
    String heard = state.heardMidi().isPresent() ? note(state.heardMidi().getAsInt()) : "";
    return switch (state.said()) {
      case NOTHING -> Texts.of("guitar.said.nothing");
      case RIGHT -> Texts.of("guitar.said.right", heard);
      case WRONG -> Texts.of("guitar.said.wrong", heard);
      case SAME -> Texts.of("guitar.said.same", heard);
      case NOT_PLUCKED -> Texts.of("guitar.said.notPlucked", heard);
    };
  }
}
