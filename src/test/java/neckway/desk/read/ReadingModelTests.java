package neckway.desk.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import neckway.desk.DrillModel;
import neckway.desk.DrillWords;
import neckway.desk.read.ReadingModel.Hearing;
import neckway.desk.read.ReadingModel.Speed;
import neckway.drill.PlayableDrill;
import neckway.file.sound.Channel;
import neckway.file.sound.WavWriter;
import neckway.hand.ShiftVerdict;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.page.PageModel.Ink;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.GuitarKnown;
import neckway.review.Review;
import neckway.review.ReviewedShift;
import neckway.review.words.Sentence;
import neckway.run.Reviewed;
import neckway.run.Run;
import neckway.sound.Clip;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a take is read and heard as, with a player that keeps what it is given. */
class ReadingModelTests {
  private static final double LATE_MS = 120;

  @TempDir Path folder;

  private final List<Clip> played = new ArrayList<>();
  private final List<ReadTake> read = new ArrayList<>();
  private final List<String> said = new ArrayList<>();
  private final PlayableDrill drill = new DrillModel().drill();
  private ClipOutput.Ended ended;
  private int stops;
  private long heardFrames;
  private Performance take;
  private Review review;
  private Path file;
  private ReadingModel model;

  private final class Kept implements ClipOutput {
    @Override
    public void play(Clip clip, Ended whenEnded) {
      played.add(clip);
      ended = whenEnded;
    }

    @Override
    public long framesHeard() {
      return heardFrames;
    }

    @Override
    public void stop() {
      stops++;
    }
  }

  @BeforeEach
  void play() {
    take =
        new VirtualPlayer(PlayerSettings.plain())
            .play(
                drill.route(),
                drill.pulse(),
                List.of(
                    new Mistake.Slip(Mistake.Kind.WRONG, 10, OptionalInt.empty()),
                    new Mistake.Late(7, LATE_MS)),
                4);
    review = Reviewed.of(drill, take);
    file = folder.resolve("take.wav");
    try (WavWriter writer = new WavWriter(file, take.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(take.samples(), 0, take.samples().length);
      writer.finish();
    }
    model = new ReadingModel(new Kept(), () -> 1, Runnable::run, Runnable::run);
    open(OptionalInt.empty(), Optional.of(file));
  }

  private void open(OptionalInt guess, Optional<Path> sound) {
    model.open(ReadTake.played(drill, review, sound, guess));
  }

  @Test
  void sentencesAreTheReviewsOwn() {
    assertThat(model.sentences().get())
        .extracting(Sentence::text)
        .isEqualTo(review.summary().words());
    assertThat(model.page().get().at(10).ink()).isEqualTo(Ink.WRONG);
  }

  @Test
  void adviceStandsFirstTheScoreOnceAndTheRestIsDetails() {
    assertThat(model.headline().orElseThrow().text()).startsWith("First: ");
    assertThat(model.figures().get())
        .startsWith("24 of 25 notes were right.")
        .contains("steady within");
    assertThat(model.details()).isNotEmpty().doesNotContain(model.headline().orElseThrow());
    assertThat(model.details())
        .extracting(Sentence::text)
        .noneMatch(text -> text.contains("of 25 notes"));
  }

  @Test
  void whatWasNotHeardStandsFirstWhereNothingIsAdvised() {
    Review silent =
        new Run(drill, Optional.empty(), 48_000, OptionalDouble.empty(), Clock.MEASURED, v -> {})
            .finish();
    model.open(ReadTake.played(drill, silent, Optional.empty(), OptionalInt.empty()));
    assertThat(model.headline().orElseThrow().text()).startsWith("I heard no notes");
    assertThat(model.details()).isEmpty();
  }

  @Test
  void guessStandsBesideTheTruthAndTheTruthOnce() {
    open(OptionalInt.of(25), Optional.of(file));
    assertThat(model.figures().get()).startsWith("24 of 25 notes were right. You thought 25.");
    open(OptionalInt.of(24), Optional.of(file));
    assertThat(model.figures().get()).startsWith("24 of 25 notes were right. So you thought.");
  }

  @Test
  void drillTempoAndDateStandOnIt() throws IOException {
    Instant noon = ZonedDateTime.of(2026, 3, 4, 12, 5, 0, 0, ZoneId.systemDefault()).toInstant();
    Files.setLastModifiedTime(file, FileTime.from(noon));
    open(OptionalInt.empty(), Optional.of(file));
    assertThat(model.played().get())
        .startsWith(DrillWords.place(drill))
        .contains(" beats a minute")
        .endsWith("4 March 2026, 12:05");
    open(OptionalInt.empty(), Optional.empty());
    assertThat(model.played().get()).endsWith(" beats a minute");
  }

  @Test
  void arrowsPointAtNotesAndStayOnThePage() {
    model.pointBy(1);
    assertThat(model.page().get().selected()).contains(0);
    model.pointBy(10);
    assertThat(model.pointed().get()).startsWith("Note 11: ").contains("Wrong");
    model.pointBy(-99);
    assertThat(model.page().get().selected()).contains(0);
    model.point(Integer.MAX_VALUE);
    assertThat(model.page().get().selected()).contains(24);
  }

  @Test
  void takeIsHeardFromTheNotePointedAt() {
    model.point(5);
    model.hear();
    double note = review.notes().get(5).time();
    double seconds = (double) take.samples().length / take.sampleRate();
    Clip heard = played.get(0);
    assertThat(heard.sampleRate()).isEqualTo(take.sampleRate());
    assertThat(heard.loop()).isFalse();
    assertThat((double) heard.frames() / heard.sampleRate())
        .isCloseTo(seconds - note, within(0.05));
    assertThat(model.hearing().get()).isEqualTo(Hearing.TAKE);
    ended.ended("");
    assertThat(model.hearing().get()).isEqualTo(Hearing.NOTHING);
  }

  @Test
  void slowerIsLongerByAsMuch() {
    model.point(20);
    model.hear();
    model.stop();
    model.nextSpeed();
    model.nextSpeed();
    assertThat(played).as("nothing sounds, nothing begins").hasSize(1);
    assertThat(model.speed().get()).isEqualTo(Speed.HALF);
    model.hear();
    assertThat(played.get(1).frames() / (double) played.get(0).frames()).isCloseTo(2, within(0.1));
    model.nextSpeed();
    assertThat(model.speed().get()).isEqualTo(Speed.FULL);
  }

  @Test
  void shiftThatLandedLateIsInCloseUpWithItsStumble() {
    CloseUp near = model.closeUp().get().orElseThrow();
    assertThat(near.shift().planned().landingStep()).isEqualTo(7);
    double late = near.landed().orElseThrow() - near.expected().orElseThrow();
    assertThat(1000 * late).isCloseTo(LATE_MS, within(25.0));
    assertThat(near.planned()).hasToString("3:6");
    assertThat(near.before()).hasToString("3:4");
    assertThat(near.notes()).extracting(CloseUp.Heard::label).contains("4:7", "3:4", "3:6", "3:9");
    assertThat(model.waveform().get()).isPresent();
    assertThat(ReadingWords.shift(near)).contains("third string").contains("ms late");
    model.nextShift();
    assertThat(model.closeUp().get().orElseThrow()).isNotEqualTo(near);
    model.nextShift();
    assertThat(model.closeUp().get()).contains(near);
  }

  @Test
  void shiftMadeElsewhereIsDrawnWhereThatStringsJoinIs() {
    ReviewedShift up = review.shifts().get(0);
    ReviewedShift moved =
        new ReviewedShift(
            up.planned(),
            ShiftVerdict.MOVED,
            Optional.of(new GuitarString(5)),
            OptionalDouble.of(0.9),
            up.lateMs(),
            up.decided());
    Review told =
        new Review(
            review.take(),
            GuitarKnown.LEARNT,
            review.clock(),
            review.grid(),
            review.notes(),
            review.attempts(),
            review.reviewed(),
            review.steps(),
            List.of(moved, review.shifts().get(1)),
            review.summary());
    CloseUp near =
        CloseUp.of(ReadTake.played(drill, told, Optional.empty(), OptionalInt.empty()), 0);
    // common practice, no published source: from fret 5 in A, the fourth finger leads two frets on
    // string 5, from 7 to 9
    assertThat(near.made().orElseThrow())
        .isEqualTo(
            new CloseUp.Way(new Place(new GuitarString(5), 7), new Place(new GuitarString(5), 9)));
    assertThat(ReadingWords.shift(near)).contains("made on the fifth string (90 % sure)");
    assertThat(model.closeUp().get().orElseThrow().made()).as("not known").isEmpty();
  }

  @Test
  void shiftIsLoopedFromBeforeToBehindIt() {
    CloseUp near = model.closeUp().get().orElseThrow();
    model.loopShift();
    Clip heard = played.get(0);
    assertThat(heard.loop()).isTrue();
    assertThat((double) heard.frames() / heard.sampleRate())
        .isCloseTo(near.toSeconds() - near.fromSeconds(), within(0.01));
    assertThat(near.fromSeconds()).isLessThan(review.notes().get(6).time());
    assertThat(near.toSeconds()).isGreaterThan(review.notes().get(8).time());
  }

  @Test
  void howItShouldSoundIsTheRouteFromThereInTempo() {
    model.hearModel();
    model.stop();
    model.point(24);
    model.hearModel();
    double whole = (double) played.get(0).frames() / played.get(0).sampleRate();
    double last = (double) played.get(1).frames() / played.get(1).sampleRate();
    assertThat(whole - last).isCloseTo(24 * drill.pulse().slotSeconds(), within(0.01));
  }

  @Test
  void anotherSoundAndEscapeStopTheFirst() {
    model.hear();
    ClipOutput.Ended first = ended;
    model.loopShift();
    first.ended("");
    assertThat(model.hearing().get()).as("the second one still sounds").isEqualTo(Hearing.SHIFT);
    int before = stops;
    model.stop();
    assertThat(stops).isEqualTo(before + 1);
    assertThat(model.hearing().get()).isEqualTo(Hearing.NOTHING);
  }

  @Test
  void whatSoundsIsStoppedByTheSameAgain() {
    List<Runnable> ways =
        List.of(model::hear, model::loopShift, model::hearModel, () -> model.hearFrom(5));
    for (Runnable way : ways) {
      way.run();
      assertThat(model.hearing().get()).isNotEqualTo(Hearing.NOTHING);
      int begun = played.size();
      way.run();
      assertThat(model.hearing().get()).isEqualTo(Hearing.NOTHING);
      assertThat(played).hasSize(begun);
    }
    model.hearFrom(5);
    model.hearFrom(6);
    assertThat(model.hearing().get()).as("another note").isEqualTo(Hearing.TAKE);
    assertThat(played).hasSize(6);
  }

  @Test
  void anotherSpeedChangesTheLoopThatSounds() {
    model.loopShift();
    model.nextSpeed();
    model.nextSpeed();
    assertThat(model.hearing().get()).isEqualTo(Hearing.SHIFT);
    assertThat(played).hasSize(3).allMatch(Clip::loop);
    assertThat((double) played.get(2).frames() / played.get(0).frames()).isCloseTo(2, within(0.15));
  }

  @Test
  void anotherSpeedGoesOnWithTheTakeFromWhereItIs() {
    model.hearFrom(5);
    heardFrames = 2L * take.sampleRate();
    double at = model.playhead().orElseThrow();
    assertThat(at).isCloseTo(review.notes().get(5).time() + 2, within(0.05));
    model.nextSpeed();
    heardFrames = 0;
    assertThat(model.playhead().orElseThrow()).isCloseTo(at, within(0.01));
    // at three quarters of the speed a second of sound is 0.75 s of the take
    heardFrames = take.sampleRate();
    assertThat(model.playhead().orElseThrow()).isCloseTo(at + 0.75, within(0.01));
  }

  @Test
  void playheadTellsTimeNoteAndShare() {
    assertThat(model.playhead()).isEmpty();
    assertThat(model.heardShare()).isEmpty();
    CloseUp near = model.closeUp().get().orElseThrow();
    model.loopShift();
    long round = played.get(0).frames();
    heardFrames = 3 * round + round / 2;
    double middle = (near.fromSeconds() + near.toSeconds()) / 2;
    assertThat(model.playhead().orElseThrow()).isCloseTo(middle, within(0.01));
    assertThat(model.heardShare().orElseThrow()).isCloseTo(0.5, within(0.01));
    heardFrames = 0;
    model.hearFrom(5);
    heardFrames = (long) (0.1 * take.sampleRate());
    assertThat(model.soundingStep()).hasValue(5);
    heardFrames = (long) ((0.1 + 3 * drill.pulse().slotSeconds()) * take.sampleRate());
    assertThat(model.soundingStep()).hasValue(8);
    model.point(2);
    model.hearModel();
    heardFrames = (long) (1.5 * drill.pulse().slotSeconds() * 48_000);
    assertThat(model.playhead()).as("it is not in the take").isEmpty();
    assertThat(model.soundingStep()).hasValue(3);
  }

  @Test
  void takeThatIsGoneOrWasNotKeptIsOneLine() throws Exception {
    Files.delete(file);
    model.hear();
    assertThat(model.line().get()).contains("take.wav");
    assertThat(model.hearing().get()).isEqualTo(Hearing.NOTHING);
    open(OptionalInt.empty(), Optional.empty());
    model.hear();
    assertThat(model.line().get()).contains("not kept");
  }

  @Test
  void deviceThatFailsIsOneLine() {
    model.hear();
    ended.ended("no sound output found on this machine");
    assertThat(model.line().get()).contains("no sound output");
    assertThat(model.hearing().get()).isEqualTo(Hearing.NOTHING);
  }

  @Test
  void shiftNotMadeWherePlannedIsWorseThanALateOne() {
    List<ReviewedShift> shifts = review.shifts();
    ReviewedShift second = shifts.get(1);
    ReviewedShift missed =
        new ReviewedShift(
            second.planned(),
            ShiftVerdict.MISSED,
            Optional.empty(),
            OptionalDouble.of(0.9),
            OptionalDouble.empty(),
            OptionalDouble.empty());
    assertThat(ReadingModel.worstShift(shifts)).isZero();
    assertThat(ReadingModel.worstShift(List.of(shifts.get(0), missed))).isEqualTo(1);
    assertThat(ReadingModel.worstShift(List.of())).isZero();
  }

  // ---- recordings

  @Test
  void recordingIsReviewedLikeARun() {
    List<Double> progress = new ArrayList<>();
    RecordingModel recording =
        new RecordingModel(Runnable::run, Runnable::run, read::add, said::add);
    recording.progress().addListener((o, old, now) -> progress.add(now.doubleValue()));
    recording.start(file, drill, Optional.empty());
    assertThat(recording.running().get()).isFalse();
    assertThat(read).hasSize(1);
    assertThat(read.get(0).review().summary().right()).isEqualTo(24);
    assertThat(read.get(0).take()).contains(file);
    assertThat(progress).hasSizeGreaterThan(50).isSorted();
  }

  @Test
  void recordingThatWasCutShortIsReviewedAsFarAsItGoesAndSaysSo() throws Exception {
    byte[] whole = Files.readAllBytes(file);
    Path half = Files.write(folder.resolve("half.wav"), Arrays.copyOf(whole, whole.length / 2));
    RecordingModel recording =
        new RecordingModel(Runnable::run, Runnable::run, read::add, said::add);
    recording.start(half, drill, Optional.empty());
    assertThat(read).hasSize(1);
    assertThat(read.get(0).review().summary().right()).isBetween(8, 16);
    assertThat(said).singleElement().asString().contains("half.wav").doesNotContain("\n");
  }

  @Tag("programs")
  @Test
  void tenMinutesAreReviewedInFewMegabytes() throws Exception {
    // the sound alone would be 106 MB as it is listened to, 4 bytes a sample
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx32m",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                LongRecording.class.getName(),
                "10",
                folder.toString())
            .redirectErrorStream(true)
            .start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(printed).isZero();
    assertThat(printed).contains("You began 41 times");
  }

  @Test
  void recordingThatIsCancelledLeavesWhatWasThere() {
    List<Runnable> waiting = new ArrayList<>();
    RecordingModel recording =
        new RecordingModel(waiting::add, Runnable::run, read::add, said::add);
    recording.start(file, drill, Optional.empty());
    assertThat(recording.running().get()).isTrue();
    assertThat(recording.name().get()).isEqualTo("take.wav");
    recording.cancel();
    assertThat(recording.running().get()).isFalse();
    waiting.forEach(Runnable::run);
    assertThat(read).isEmpty();
    assertThat(said).singleElement().asString().contains("take.wav").contains("cancelled");
  }

  @Test
  void fileThatIsNoSoundIsOneLine() throws Exception {
    Path text = Files.writeString(folder.resolve("notes.txt"), "not a sound at all, but words");
    RecordingModel recording =
        new RecordingModel(Runnable::run, Runnable::run, read::add, said::add);
    recording.start(text, drill, Optional.empty());
    assertThat(read).isEmpty();
    assertThat(said).singleElement().asString().contains("notes.txt").doesNotContain("\n");
    assertThat(recording.running().get()).isFalse();
  }

  // ---- a recording read again

  private RecordingModel readRecording(Path recorded) {
    RecordingModel recording =
        new RecordingModel(Runnable::run, Runnable::run, read::add, said::add);
    recording.start(recorded, drill, Optional.empty());
    assertThat(read).hasSize(1);
    return recording;
  }

  @Test
  void firstBeatThatIsWrittenIsTheOneOfTheNextReview() {
    RecordingModel recording = readRecording(file);
    assertThat(recording.firstBeat().get()).as("found").isEmpty();
    assertThat(read.get(0).review().grid().source()).isNotEqualTo(Grid.Source.GIVEN);
    double late = Math.round(1000 * take.firstBeat()) / 1000.0 + 0.1;
    recording.firstBeat().set(" " + String.format(Locale.ROOT, "%.3f", late).replace('.', ','));
    recording.again(read.get(0));
    assertThat(read).hasSize(2);
    Review again = read.get(1).review();
    assertThat(again.grid().source()).isEqualTo(Grid.Source.GIVEN);
    assertThat(again.grid().firstBeat()).isCloseTo(late, within(1e-9));
    assertThat(again.summary().right()).isEqualTo(24);
    assertThat(again.notes().get(0).offMs()).isCloseTo(-100, within(15.0));
    assertThat(read.get(1).drill()).as("resolved once").isSameAs(drill);
    assertThat(Double.parseDouble(recording.firstBeat().get())).isCloseTo(late, within(1e-9));
    recording.firstBeat().set("");
    recording.again(read.get(1));
    assertThat(read.get(2).review().grid()).isEqualTo(read.get(0).review().grid());
    assertThat(said).isEmpty();
  }

  @Test
  void channelThatIsChosenIsTheOneThatIsHeard() throws Exception {
    RecordingModel recording = readRecording(stereoWithTheGuitarOnTheLeft());
    assertThat(recording.channel().get()).isEqualTo(Channel.AUTO);
    assertThat(read.get(0).review().summary().right()).isEqualTo(24);
    recording.channel().set(Channel.RIGHT);
    recording.again(read.get(0));
    assertThat(read.get(1).review().notes()).isEmpty();
    recording.channel().set(Channel.LEFT);
    recording.again(read.get(1));
    assertThat(read.get(2).review().summary().right()).isEqualTo(24);
    assertThat(said).isEmpty();
  }

  private Path stereoWithTheGuitarOnTheLeft() throws Exception {
    ByteBuffer bytes =
        ByteBuffer.allocate(4 * take.samples().length).order(ByteOrder.LITTLE_ENDIAN);
    for (float sample : take.samples()) {
      bytes.putShort((short) Math.round(32767 * sample)).putShort((short) 0);
    }
    Path stereo = folder.resolve("stereo.wav");
    AudioFormat format = new AudioFormat(take.sampleRate(), 16, 2, true, false);
    try (AudioInputStream sound =
        new AudioInputStream(
            new ByteArrayInputStream(bytes.array()), format, take.samples().length)) {
      AudioSystem.write(sound, AudioFileFormat.Type.WAVE, stereo.toFile());
    }
    return stereo;
  }

  @ParameterizedTest
  @ValueSource(strings = {"soon", "-1", "1e3", "NaN", "2.5.1", "999", "1234567"})
  void firstBeatThatCannotBeIsOneLineAndWhatWasReadStays(String written) {
    RecordingModel recording = readRecording(file);
    recording.firstBeat().set(written);
    recording.again(read.get(0));
    assertThat(read).hasSize(1);
    assertThat(recording.running().get()).isFalse();
    assertThat(recording.firstBeat().get()).as("stays, to be mended").isEqualTo(written);
    assertThat(said).singleElement().asString().contains(written).contains("give").hasLineCount(1);
  }

  @Test
  void firstBeatOutsideTheRecordingIsToldHowLongThatIs() {
    RecordingModel recording = readRecording(file);
    double seconds = (double) take.samples().length / take.sampleRate();
    recording.firstBeat().set("999");
    recording.again(read.get(0));
    assertThat(said.get(0)).contains(String.format(Locale.ROOT, "%.1f", seconds));
  }

  @Test
  void recordingThatIsGoneWhenItIsReadAgainLeavesWhatWasRead() throws Exception {
    RecordingModel recording = readRecording(file);
    Files.delete(file);
    recording.firstBeat().set("1.5");
    recording.again(read.get(0));
    assertThat(read).hasSize(1);
    assertThat(said).singleElement().asString().contains("take.wav");
    assertThat(recording.running().get()).isFalse();
  }

  @Test
  void takeThatWasPlayedLiveIsNotReadAgain() {
    RecordingModel recording =
        new RecordingModel(Runnable::run, Runnable::run, read::add, said::add);
    recording.again(ReadTake.played(drill, review, Optional.of(file), OptionalInt.empty()));
    assertThat(read).isEmpty();
    assertThat(said).isEmpty();
  }

  @Test
  void faultOfTheProgramLeavesNothingRunning() {
    RecordingModel recording =
        new RecordingModel(
            task -> assertThatThrownBy(task::run).isInstanceOf(IllegalStateException.class),
            task -> task.run(),
            other -> {
              throw new IllegalStateException("a fault");
            },
            said::add);
    recording.start(file, drill, Optional.empty());
    assertThat(recording.running().get()).isFalse();
  }
}
