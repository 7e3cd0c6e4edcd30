package neckway.calls;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import neckway.calls.CalledRun.Outcome;
import neckway.drill.Cue;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.file.CallsFile;
import neckway.file.ReviewReader;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.page.PageModel;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.practice.RoundsOfRun;
import neckway.practice.State;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Reviewed;
import neckway.run.Run;
import neckway.sound.CueTones;
import neckway.sound.CueWords;
import neckway.sound.PlayedSound;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The virtual player plays what is called, or not; what is said is held against that. */
class CalledRunTests {
  private static final long FIRST_SEED = 100;

  /** Players drawn; {@code -Dneckway.calls.takes=30} draws as many as in the figures of docs. */
  private static final int TAKES = Integer.getInteger("neckway.calls.takes", 12);

  private static final double SECONDS = 60;
  private static final PlayerSettings PLAYER = PlayerSettings.plain();

  private static Caller caller(long seed) {
    Caller caller = new Caller(Drills.example(), exercise -> State.NEW, seed);
    caller.growTo(SECONDS);
    return caller;
  }

  private static Review review(PlayableDrill called, Route played, List<Mistake> mistakes) {
    return review(PLAYER, called, played, mistakes);
  }

  private static Review review(
      PlayerSettings player, PlayableDrill called, Route played, List<Mistake> mistakes) {
    Performance take =
        new VirtualPlayer(player).play(played, called.pulse(), mistakes, played.steps().size());
    return Reviewed.of(called, take);
  }

  private static Route without(Route route, Set<Integer> left) {
    List<Step> steps = new ArrayList<>();
    route.steps().stream()
        .filter(s -> !left.contains(s.index()))
        .forEach(
            s -> steps.add(new Step(steps.size(), s.place(), s.midi(), s.finger(), s.stand())));
    return new Route(route.shapes(), steps, List.of(), 1);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void whatIsFollowedIsMade(long seed) {
    Caller caller = caller(seed);
    PlayableDrill called = caller.drill();
    Review review = review(called, called.route(), List.of());
    CalledRun run = CalledRun.of(called, caller.calls(), review);
    assertThat(run.heard()).hasSizeGreaterThan(5);
    assertThat(run.heard())
        .as(review.summary().toString())
        .allMatch(h -> h.outcome() == Outcome.MADE);
    assertThat(run.words().get(0)).startsWith(run.heard().size() + " calls, all made");
    assertThat(Math.abs(run.lateMsMedian().orElseThrow())).isLessThan(40);
  }

  /** A hand that stays turns round a note sooner: the pitches lack the turn and the one after. */
  @ParameterizedTest
  @ValueSource(longs = {1, 3, 4, 5, 6, 7})
  void aCallThatIsNotFollowedIsMissedAndNoOther(long seed) {
    Caller caller = caller(seed);
    PlayableDrill called = caller.drill();
    int missed = upThenDown(caller.calls()).orElseThrow();
    int turn = caller.calls().get(missed).turnStep();
    Route played = without(called.route(), Set.of(turn, turn + 1));
    CalledRun run = CalledRun.of(called, caller.calls(), review(called, played, List.of()));
    for (int i = 0; i < run.heard().size(); i++) {
      assertThat(run.heard().get(i).outcome())
          .as("call " + i + ", not followed " + missed)
          .isEqualTo(i == missed ? Outcome.MISSED : Outcome.MADE);
    }
    String words = caller.calls().get(missed).words(called.tuning());
    assertThat(run.costliest().orElseThrow().words()).isEqualTo(words);
    assertThat(run.words()).anyMatch(said -> said.contains("\"" + words + "\" cost most"));
    assertThat(run.words()).hasSizeLessThanOrEqualTo(3);
  }

  /** The first switch up after which the hand is called down again. */
  private static OptionalInt upThenDown(List<Call> calls) {
    return IntStream.range(0, calls.size() - 1)
        .filter(
            i ->
                calls.get(i).cue().move() == Cue.Move.UP
                    && calls.get(i + 1).cue().move() == Cue.Move.DOWN
                    && calls.get(i + 1).landingStep() < calls.get(i).turnStep() + 13)
        .findFirst();
  }

  /**
   * The turn and its neighbour left out, a rest in their place: the hand may well have switched.
   */
  @Test
  void aRestAtTheTurnIsNotHeldAgainstTheHand() {
    Caller caller = caller(1);
    PlayableDrill called = caller.drill();
    int turn = caller.calls().get(upThenDown(caller.calls()).orElseThrow()).turnStep();
    Performance whole =
        new VirtualPlayer(PLAYER).play(called.route(), called.pulse(), List.of(), 2);
    float[] samples = whole.samples().clone();
    int from = at(whole, turn);
    int to = at(whole, turn + 2);
    for (int i = from; i < to; i++) {
      samples[i] = 0;
    }
    Run run =
        new Run(
            called,
            Optional.empty(),
            whole.sampleRate(),
            OptionalDouble.of(whole.firstBeat()),
            Clock.MEASURED,
            verdict -> {});
    run.feed(samples, 0, samples.length);
    CalledRun heard = CalledRun.of(called, caller.calls(), run.finish());
    assertThat(heard.count(Outcome.MISSED)).isZero();
    assertThat(heard.count(Outcome.UNHEARD)).isOne();
  }

  /** A little before a note begins. */
  private static int at(Performance take, int step) {
    double seconds =
        take.notes().stream()
            .filter(n -> n.step().isPresent() && n.step().getAsInt() == step)
            .findFirst()
            .orElseThrow()
            .time();
    return (int) ((seconds - 0.01) * take.sampleRate());
  }

  @Test
  void aLandingThatComesLateIsToldWithItsCall() {
    Caller caller = caller(3);
    PlayableDrill called = caller.drill();
    Call late = caller.calls().stream().filter(c -> c.join().isPresent()).findFirst().orElseThrow();
    Mistake slow = new Mistake.Late(late.landingStep(), 150);
    Review review = review(called, called.route(), List.of(slow));
    CalledRun run = CalledRun.of(called, caller.calls(), review);
    assertThat(run.count(Outcome.MISSED)).isZero();
    assertThat(
            run.heard().stream()
                .filter(h -> h.call().equals(late))
                .findFirst()
                .orElseThrow()
                .lateMs()
                .orElseThrow())
        .isBetween(110.0, 190.0);
  }

  @Test
  void stoppingEarlyLeavesTheRestUnplayed() {
    Caller caller = caller(2);
    PlayableDrill called = caller.drill();
    int stop = caller.calls().get(2).turnStep() + 4;
    Set<Integer> rest = new HashSet<>();
    IntStream.range(stop, called.route().steps().size()).forEach(rest::add);
    CalledRun run =
        CalledRun.of(
            called, caller.calls(), review(called, without(called.route(), rest), List.of()));
    assertThat(run.count(Outcome.MADE)).isEqualTo(3);
    assertThat(run.count(Outcome.UNPLAYED)).isEqualTo(caller.calls().size() - 3);
  }

  @Test
  void whatIsWrittenIsReadAgainAndCountsForNoJoin() {
    Caller caller = caller(4);
    PlayableDrill called = caller.drill();
    Review review = review(called, called.route(), List.of());
    CalledRun run = CalledRun.of(called, caller.calls(), review);
    ObjectNode json = CallsFile.review(review, "take.wav", run);
    ReviewReader.DrillReviewed read = ReviewReader.read(json, "review");
    assertThat(read.drill().route().steps()).isEqualTo(called.route().steps());
    assertThat(read.drill().cues()).isEqualTo(called.cues());
    assertThat(read.review().steps()).hasSameSizeAs(review.steps());
    assertThat(RoundsOfRun.of(read.drill(), read.review(), OffsetDateTime.now())).isEmpty();
    assertThat(json.at("/calls/made").asInt()).isEqualTo(caller.calls().size());
    assertThat(json.at("/calls/said/0/words").asText())
        .isEqualTo(caller.calls().get(0).words(called.tuning()));
  }

  @Test
  void thePageShowsEachNoteWhereItWasCalledTo() {
    Caller caller = caller(5);
    PlayableDrill called = caller.drill();
    PageModel page = new PageModel(called);
    page.review(review(called, called.route(), List.of()));
    for (Step step : called.route().steps()) {
      assertThat(page.at(step.index()).played().place()).as("" + step).isEqualTo(step.place());
      assertThat(page.stand(step.index())).isEqualTo(step.stand());
    }
  }

  /** The calls come back into the microphone, a tenth as loud as the guitar at its loudest. */
  @Test
  void aCallThatLeaksIsNoNote() {
    Caller caller = caller(3);
    PlayableDrill called = caller.drill();
    Performance take = new VirtualPlayer(PLAYER).play(called.route(), called.pulse(), List.of(), 9);
    float peak = 0;
    for (float sample : take.samples()) {
      peak = Math.max(peak, Math.abs(sample));
    }
    double perBeat = called.pulse().beatSeconds() * take.sampleRate();
    ToDoubleFunction<Cue> frame =
        cue -> take.firstBeat() * take.sampleRate() + cue.beat() * perBeat;
    List<CueTones.At> tones =
        called.cues().stream()
            .map(cue -> new CueTones.At(frame.applyAsDouble(cue), CueTones.Way.RISING))
            .toList();
    // a tone's peak is half of its gain
    PlayedSound sounding = new CueTones(take.sampleRate(), tones, 0.2 * peak);
    List<CueWords.At> words =
        called.cues().stream()
            .map(cue -> new CueWords.At(frame.applyAsDouble(cue), cue.spoken(called.tuning())))
            .toList();
    PlayedSound spoken = new CueWords(take.sampleRate(), words, 0.11 * peak);
    for (PlayedSound call : List.of(sounding, spoken)) {
      Review review = heardThrough(call, take, called);
      assertThat(review.summary().extra()).as(review.summary().toString()).isZero();
      assertThat(review.summary().wrong()).isZero();
      assertThat(review.summary().skipped()).isZero();
    }
  }

  private static Review heardThrough(PlayedSound call, Performance take, PlayableDrill called) {
    float[] leaked = new float[take.samples().length];
    call.fill(0, leaked);
    float[] samples = take.samples().clone();
    for (int i = 0; i < samples.length; i++) {
      samples[i] += leaked[i];
    }
    return Reviewed.of(called, take, samples, verdict -> {});
  }

  /** Players, guitars and rooms drawn at random, each call followed or one not. */
  @Tag("slow")
  @Test
  void nobodyIsToldFalselyThatACallWasMissed() {
    int missed = 0;
    int unheard = 0;
    int all = 0;
    int found = 0;
    int takes = 0;
    for (long seed = FIRST_SEED; seed < FIRST_SEED + TAKES; seed++) {
      Caller caller = caller(seed);
      PlayableDrill called = caller.drill();
      PlayerSettings player =
          PlayerSettings.random(
              seed,
              seed % 2 == 0 ? PlayerSettings.Condition.CLEAN : PlayerSettings.Condition.DIRTY);
      CalledRun followed =
          CalledRun.of(called, caller.calls(), review(player, called, called.route(), List.of()));
      missed += followed.count(Outcome.MISSED);
      unheard += followed.count(Outcome.UNHEARD);
      all += followed.heard().size();
      OptionalInt not = upThenDown(caller.calls());
      if (not.isPresent()) {
        int turn = caller.calls().get(not.getAsInt()).turnStep();
        Route stayed = without(called.route(), Set.of(turn, turn + 1));
        CalledRun run =
            CalledRun.of(called, caller.calls(), review(player, called, stayed, List.of()));
        takes++;
        found += run.heard().get(not.getAsInt()).outcome() == Outcome.MISSED ? 1 : 0;
        missed += run.count(Outcome.MISSED);
        missed -= run.heard().get(not.getAsInt()).outcome() == Outcome.MISSED ? 1 : 0;
      }
    }
    String figures =
        "of %d calls followed %d unheard; %d falsely missed; %d of %d not followed are found"
            .formatted(all, unheard, missed, found, takes);
    assertThat(missed).as(figures).isZero();
    assertThat(found).as(figures).isGreaterThan(takes * 8 / 10);
    assertThat(unheard).as(figures).isLessThan(all / 20);
  }
}
