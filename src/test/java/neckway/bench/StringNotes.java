package neckway.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.UnaryOperator;
import neckway.bench.RecordedNotes.Recording;
import neckway.drill.PlayableDrill;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.PlayedNote;
import neckway.player.settings.Guitar;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.player.surroundings.Amp;
import neckway.player.surroundings.ClickLeak;
import neckway.player.surroundings.Surroundings;

/** Notes whose string is known, by guitar and condition. */
final class StringNotes {
  /** Frets that a recorded guitar is learnt from, one pluck each. */
  static final List<Integer> RECORDED_FRETS = List.of(1, 3, 7, 12);

  private static final List<Integer> CALIBRATION_FRETS = List.of(0, 3, 7, 12);
  private static final double SHORTEST_GAP_SECONDS = 0.12;
  private static final double LONGEST_GAP_SECONDS = 0.35;

  /**
   * A note in its surroundings.
   *
   * @param onset its first frame
   * @param end frame at which the next note begins, or the end of the sound
   * @param string as players number them
   * @param f0Hz what an ear would make of its pitch
   */
  record Note(
      float[] samples,
      double rate,
      int onset,
      int end,
      int string,
      int fret,
      int midi,
      double f0Hz,
      String name) {}

  /**
   * Guitars under one condition.
   *
   * @param guitars each with what it is learnt from and what is asked of it
   */
  record Family(String name, List<Learnt> guitars) {}

  /** One guitar's notes. */
  record Learnt(List<Note> calibration, List<Note> test) {}

  private StringNotes() {}

  /**
   * Single recorded notes: learnt from the first take of some frets, tested on all the other takes.
   */
  static Family recorded(RecordedNotes all, String guitar, List<Integer> frets) {
    List<Note> calibration = new ArrayList<>();
    List<Note> test = new ArrayList<>();
    for (Recording r : all.of(guitar)) {
      Note note =
          new Note(
              r.samples(),
              RecordedNotes.SAMPLE_RATE,
              r.onsetFrame(),
              r.samples().length,
              r.string(),
              r.fret(),
              r.midi(),
              hz(r.midi(), 0),
              r.file());
      if (!r.file().endsWith("-1.flac")) {
        test.add(note);
      } else if (frets.contains(r.fret())) {
        calibration.add(note);
      }
    }
    return new Family(guitar, List.of(new Learnt(calibration, test)));
  }

  /** Runs stitched from the same notes, learnt from single ones. */
  static Family stitched(RecordedNotes all, boolean dirty, int takes, long seed) {
    List<Note> test = new ArrayList<>();
    for (int i = 0; i < takes; i++) {
      Take take = new StitchedTakes(all).take("solidbody", seed + i, dirty).take();
      for (int n = 0; n < take.notes().size(); n++) {
        TrueNote note = take.notes().get(n);
        double end =
            n + 1 < take.notes().size() ? take.notes().get(n + 1).time() : take.seconds() - 0.1;
        test.add(
            new Note(
                take.samples(),
                take.sampleRate(),
                (int) Math.round(note.time() * take.sampleRate()),
                (int) Math.round(end * take.sampleRate()),
                note.string(),
                note.fret(),
                note.midi(),
                hz(note.midi(), 0),
                take.name() + " " + note.note()));
      }
    }
    List<Note> calibration =
        recorded(all, "solidbody", RECORDED_FRETS).guitars().get(0).calibration();
    return new Family(
        "solidbody run" + (dirty ? " dirty" : ""), List.of(new Learnt(calibration, test)));
  }

  /** Fast runs of virtual guitars of one sort, learnt through the same surroundings. */
  static Family virtual(
      String name, Guitar.Model model, int guitars, long seed, UnaryOperator<PlayerSettings> as) {
    List<Learnt> learnt = new ArrayList<>();
    for (int i = 0; i < guitars; i++) {
      Random random = new Random(31 * (seed + i) + model.ordinal());
      random.nextInt();
      PlayerSettings settings = as.apply(PlayerSettings.plain().withGuitar(model.any(random, 10)));
      VirtualPlayer player = new VirtualPlayer(settings);
      List<Note> calibration =
          notes(player.calibration(Tuning.STANDARD, CALIBRATION_FRETS, seed + i), settings);
      PlayableDrill drill =
          new RandomDrills(random)
              .on(Tuning.STANDARD, 2, 0, 19, SHORTEST_GAP_SECONDS, LONGEST_GAP_SECONDS);
      learnt.add(
          new Learnt(
              calibration,
              notes(player.play(drill.route(), drill.pulse(), List.of(), seed + i), settings)));
    }
    return new Family(model.name().toLowerCase(java.util.Locale.ROOT) + " " + name, learnt);
  }

  private static List<Note> notes(Performance p, PlayerSettings settings) {
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < p.notes().size(); i++) {
      PlayedNote note = p.notes().get(i);
      long end = i + 1 < p.notes().size() ? p.notes().get(i + 1).frame() : p.samples().length;
      notes.add(
          new Note(
              p.samples(),
              p.sampleRate(),
              (int) note.frame(),
              (int) end,
              note.place().string().number(),
              note.place().fret(),
              note.midi(),
              hz(note.midi(), settings.guitar().detuneCents()),
              note.place() + " at " + note.time()));
    }
    return notes;
  }

  private static double hz(int midi, double cents) {
    return 440 * Math.pow(2, (midi - 69 + cents / 100) / 12);
  }

  /** Through an amplifier. */
  static UnaryOperator<PlayerSettings> amp(Amp.Voicing voicing) {
    return s -> s.withSurroundings(around(voicing, 0, 64, OptionalDouble.empty()));
  }

  /** Half of the notes ring on into what follows. */
  static PlayerSettings ringing(PlayerSettings s) {
    return s.withHabits(Habits.tidy().withRing(35, 0.5));
  }

  /** A microphone in a room. */
  static PlayerSettings room(PlayerSettings s) {
    return s.withSurroundings(around(Amp.Voicing.NONE, 0.3, 55, OptionalDouble.empty()));
  }

  /** Hiss and hum. */
  static PlayerSettings noise(PlayerSettings s) {
    return s.withSurroundings(around(Amp.Voicing.NONE, 0, 42, OptionalDouble.of(34)));
  }

  private static Surroundings around(
      Amp.Voicing voicing, double wet, double hissUnderDb, OptionalDouble humUnderDb) {
    return new Surroundings(
        voicing,
        wet,
        0.5,
        OptionalDouble.of(hissUnderDb),
        humUnderDb,
        50,
        OptionalDouble.empty(),
        ClickLeak.Sound.SINE,
        -6,
        0,
        false);
  }

  static RecordedNotes loadRecorded() throws IOException {
    return RecordedNotes.load()
        .orElseThrow(
            () ->
                new IllegalStateException(
                    "recorded notes are not at " + RecordedNotes.folder() + ": NECKWAY_GUITARS"));
  }
}
