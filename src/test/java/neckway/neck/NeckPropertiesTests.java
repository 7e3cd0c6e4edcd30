package neckway.neck;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** What holds for every key, shape, tuning and number of frets. */
class NeckPropertiesTests {
  private static final String[] TONICS =
      "C G D A E B F# C# F Bb Eb Ab Db Gb Cb G# D# A#".split(" ");
  private static final String[] NOTES = "C C# D D# E F F# G G# A A# B".split(" ");

  @Provide
  Arbitrary<Neck> necks() {
    Arbitrary<Key> keys =
        Combinators.combine(Arbitraries.of(TONICS), Arbitraries.of("major", "minor"))
            .as((tonic, mode) -> Key.parse(tonic + " " + mode));
    Arbitrary<Tuning> odd =
        Combinators.combine(
                Arbitraries.integers().between(28, 40),
                Arbitraries.integers().between(3, 6).list().ofMinSize(3).ofMaxSize(7))
            .as(NeckPropertiesTests::tuning);
    Arbitrary<Tuning> known =
        Arbitraries.of(
                "E2 A2 D3 G3 B3 E4",
                "Eb2 Ab2 Db3 Gb3 Bb3 Eb4",
                "D2 A2 D3 G3 B3 E4",
                "D2 A2 D3 F#3 A3 D4",
                "D2 A2 D3 G3 A3 D4",
                "D2 G2 D3 G3 B3 D4",
                "B1 E2 A2 D3 G3 B3 E4",
                "F#1 B1 E2 A2 D3 G3 B3 E4",
                "E1 A1 D2 G2",
                "C2 G2 D3 A3 E4 G4")
            .map(Tuning::parse);
    return Combinators.combine(
            keys, Arbitraries.oneOf(known, odd), Arbitraries.integers().between(12, 24))
        .as(Neck::new);
  }

  private static Tuning tuning(int lowest, List<Integer> intervals) {
    List<String> names = new ArrayList<>();
    int midi = lowest;
    names.add(name(midi));
    for (int interval : intervals) {
      midi += interval;
      names.add(name(midi));
    }
    return Tuning.of(names);
  }

  private static String name(int midi) {
    return NOTES[midi % 12] + (midi / 12 - 1);
  }

  @Property(tries = 400)
  void aShapeIsConsecutiveNotesOfTheScaleTwoAString(
      @ForAll("necks") Neck neck, @ForAll Shape shape) {
    for (PlacedShape placed : everywhere(neck, shape)) {
      assertThat(placed.notes()).hasSize(2 * neck.tuning().count());
      int midi = placed.notes().get(0).midi();
      assertThat(neck.key().degree(midi)).contains(new int[] {1, 2, 3, 5, 6}[shape.ordinal()]);
      for (int i = 0; i < placed.notes().size(); i++) {
        PlacedNote note = placed.notes().get(i);
        assertThat(note.midi()).isEqualTo(midi);
        assertThat(neck.tuning().midi(note.place())).isEqualTo(midi);
        assertThat(note.place().string()).isEqualTo(neck.tuning().strings().get(i / 2));
        assertThat(note.place().fret()).isBetween(0, neck.frets());
        assertThat(neck.key().isPentatonic(midi)).isTrue();
        midi = neck.key().nextPentatonic(midi);
      }
    }
  }

  @Property(tries = 400)
  void oneFingerAFretAndNothingOutOfTheHandsReach(@ForAll("necks") Neck neck, @ForAll Shape shape) {
    for (PlacedShape placed : everywhere(neck, shape)) {
      int before = placed.hand(neck.tuning().lowest());
      for (GuitarString string : neck.tuning().strings()) {
        int hand = placed.hand(string);
        assertThat(hand).isPositive();
        assertThat(Math.abs(hand - before)).isLessThanOrEqualTo(Fingering.FURTHEST_SHIFT);
        before = hand;
        for (PlacedNote note : List.of(placed.first(string), placed.second(string))) {
          if (note.place().fret() == 0) {
            assertThat(note.finger()).isZero();
          } else {
            assertThat(note.finger()).isBetween(1, 4);
            assertThat(note.place().fret()).isEqualTo(hand + note.finger() - 1);
          }
        }
      }
    }
  }

  /** The fewest moves: no other way to put the hands, tried one and all, has fewer. */
  @Property(tries = 100)
  void noOtherFingeringMovesTheHandLess(@ForAll("necks") Neck neck, @ForAll Shape shape) {
    for (PlacedShape placed : everywhere(neck, shape)) {
      assertThat(HandMoves.of(placed)).isEqualTo(fewestMoves(placed, neck.tuning().strings()));
    }
  }

  /** Plain reckoning: stay with every hand that still reaches, else start again from all. */
  private static int fewestMoves(PlacedShape placed, List<GuitarString> strings) {
    Set<Integer> hands = reaching(placed, strings.get(0));
    int moves = 0;
    for (GuitarString string : strings) {
      Set<Integer> now = reaching(placed, string);
      Set<Integer> staying = now.stream().filter(hands::contains).collect(Collectors.toSet());
      if (staying.isEmpty()) {
        moves++;
        hands = now;
      } else {
        hands = staying;
      }
    }
    return moves;
  }

  private static Set<Integer> reaching(PlacedShape placed, GuitarString string) {
    int first = placed.first(string).place().fret();
    int second = placed.second(string).place().fret();
    return IntStream.rangeClosed(1, 24)
        .filter(hand -> first == 0 || first >= hand)
        .filter(hand -> second >= hand && second <= hand + 3)
        .boxed()
        .collect(Collectors.toSet());
  }

  @Property(tries = 300)
  void everyStringHasAJoinAndTheRanksRunFromOne(@ForAll("necks") Neck neck, @ForAll Shape lower) {
    for (PlacedShape below : everywhere(neck, lower)) {
      Optional<PlacedShape> above = neck.neighbourAbove(below);
      if (above.isEmpty()) {
        continue;
      }
      List<Join> joins = Joins.between(below, above.get(), neck.tuning().strings());
      assertThat(joins.stream().map(Join::string).distinct()).hasSize(neck.tuning().count());
      assertThat(joins.stream().map(j -> j.string() + " " + j.finger())).doesNotHaveDuplicates();
      boolean changes = false;
      for (int i = 0; i < joins.size(); i++) {
        Join join = joins.get(i);
        assertThat(join.rank()).isEqualTo(i + 1);
        assertThat(join.travel()).isBetween(2, 3);
        assertThat(join.finger()).isBetween(1, 4);
        assertThat(join.downFinger()).isBetween(1, 4);
        assertThat(changes && join.lead() != Join.Lead.CHANGE).isFalse();
        changes |= join.lead() == Join.Lead.CHANGE;
      }
    }
  }

  /** Common practice, no published source: see the table of the decision on joins. */
  @Property(tries = 400)
  void anInnerStringComesBeforeAnOuterOneAndTheUsualFingerBeforeTheUnusual(
      @ForAll("necks") Neck neck, @ForAll Shape lower) {
    int strings = neck.tuning().count();
    for (PlacedShape below : everywhere(neck, lower)) {
      List<Join> joins =
          neck.neighbourAbove(below)
              .map(above -> Joins.between(below, above, neck.tuning().strings()))
              .orElse(List.of());
      for (Join first : joins) {
        for (Join second : joins) {
          boolean sameLead =
              (first.lead() == Join.Lead.CHANGE) == (second.lead() == Join.Lead.CHANGE);
          if (!sameLead || first.travel() > second.travel()) {
            continue;
          }
          boolean better =
              first.travel() < second.travel()
                  || inner(first, strings) && !inner(second, strings)
                  || inner(first, strings) == inner(second, strings)
                      && "1342".indexOf("" + first.finger()) < "1342".indexOf("" + second.finger());
          if (better) {
            assertThat(first.rank()).isLessThan(second.rank());
          }
        }
      }
    }
  }

  private static boolean inner(Join join, int strings) {
    return join.string().number() > 1 && join.string().number() < strings;
  }

  /** Five shapes on six strings leave one way only: a join on each inner string. */
  @Property(tries = 300)
  void inALongChainEachShapeIsPlayedOnTwoStringsWhereThereAreEnough(
      @ForAll("necks") Neck neck,
      @ForAll Shape first,
      @ForAll @IntRange(min = 3, max = 5) int length) {
    List<Shape> shapes = new ArrayList<>(List.of(first));
    while (shapes.size() < length) {
      shapes.add(shapes.get(shapes.size() - 1).next());
    }
    Optional<List<PlacedShape>> chain = chain(neck, shapes);
    if (chain.isEmpty()) {
      return;
    }
    Route route = RouteBuilder.build(neck, chain.get(), List.of(), List.of(), 1);
    int strings = neck.tuning().count();
    for (Direction direction : Direction.values()) {
      List<Integer> played = route.stringsPlayed(direction);
      assertThat(played).hasSize(length);
      assertThat(played.stream().mapToInt(n -> n).sum()).isEqualTo(strings + length - 1);
      if (length < strings) {
        assertThat(played).allMatch(n -> n >= 2);
      } else {
        // Strings do not go round: as few shapes as can be have one string only.
        assertThat(played.stream().filter(n -> n < 2)).hasSize(length - strings + 1);
      }
    }
    assertThat(route.stringsPlayed(Direction.DOWN)).isEqualTo(route.stringsPlayed(Direction.UP));
    if (length < strings) {
      assertThat(changes(route)).isEqualTo(fewestChanges(neck, chain.get(), 0, strings));
    }
  }

  /** Landings of one round's way up that another finger plays than the note before. */
  private static long changes(Route route) {
    return route.shifts().stream()
        .filter(shift -> shift.direction() == Direction.UP)
        .filter(
            shift ->
                route.steps().get(shift.landingStep() - 1).finger()
                    != route.steps().get(shift.landingStep()).finger())
        .count();
  }

  /** Plain reckoning: every way through the chain on which each shape has two strings. */
  private static long fewestChanges(Neck neck, List<PlacedShape> chain, int pair, int enters) {
    if (pair == chain.size() - 1) {
      return 0;
    }
    int pairsAfter = chain.size() - 2 - pair;
    List<Join> joins = Joins.between(chain.get(pair), chain.get(pair + 1), neck.tuning().strings());
    long fewest = Long.MAX_VALUE;
    for (int string = enters - 1; string >= 2 + pairsAfter; string--) {
      int here = string;
      boolean led =
          joins.stream().anyMatch(j -> j.string().number() == here && j.lead() != Join.Lead.CHANGE);
      fewest = Math.min(fewest, (led ? 0 : 1) + fewestChanges(neck, chain, pair + 1, here));
    }
    return fewest;
  }

  @Property(tries = 300)
  void stepsAreNeighboursInTheScaleAndPlayedByTheirStand(
      @ForAll("necks") Neck neck,
      @ForAll Shape first,
      @ForAll @IntRange(min = 1, max = 5) int length,
      @ForAll @IntRange(min = 1, max = 3) int rounds) {
    List<Shape> shapes = new ArrayList<>(List.of(first));
    while (shapes.size() < length) {
      shapes.add(shapes.get(shapes.size() - 1).next());
    }
    Optional<List<PlacedShape>> chain = chain(neck, shapes);
    if (chain.isEmpty()) {
      return;
    }
    Route route = RouteBuilder.build(neck, chain.get(), List.of(), List.of(), rounds);
    int up = 2 * neck.tuning().count() + length - 1;
    assertThat(route.stepsPerRound()).isEqualTo(2 * up - 1);
    assertThat(route.steps()).hasSize(rounds * (2 * up - 2) + 1);
    for (int i = 0; i < route.steps().size(); i++) {
      Step step = route.steps().get(i);
      PlacedShape stand = chain.get().get(step.stand());
      assertThat(step.index()).isEqualTo(i);
      assertThat(stand.notes()).contains(new PlacedNote(step.place(), step.midi(), step.finger()));
      if (i > 0) {
        int before = route.steps().get(i - 1).midi();
        boolean rising = (i - 1) % (2 * up - 2) < up - 1;
        int low = rising ? before : step.midi();
        assertThat(neck.key().nextPentatonic(low)).isEqualTo(rising ? step.midi() : before);
      }
    }
    checkShifts(route, length, rounds);
  }

  private static void checkShifts(Route route, int length, int rounds) {
    assertThat(route.shifts()).hasSize(2 * (length - 1) * rounds);
    int stand = 0;
    for (PlannedShift shift : route.shifts()) {
      Step landing = route.steps().get(shift.landingStep());
      int lands = shift.direction() == Direction.UP ? shift.pair() + 1 : shift.pair();
      assertThat(landing.stand()).isEqualTo(lands);
      assertThat(landing.finger()).isEqualTo(shift.finger());
      assertThat(landing.place().string()).isEqualTo(shift.string());
      assertThat(route.steps().get(shift.landingStep() - 1).stand()).isEqualTo(stand);
      stand = lands;
    }
  }

  private static Optional<List<PlacedShape>> chain(Neck neck, List<Shape> shapes) {
    try {
      return Optional.of(neck.chain(shapes, OptionalInt.empty()));
    } catch (BadInput doesNotFit) {
      assertThat(doesNotFit.getMessage()).contains("does not fit");
      return Optional.empty();
    }
  }

  private static List<PlacedShape> everywhere(Neck neck, Shape shape) {
    List<PlacedShape> places = new ArrayList<>();
    for (int start : neck.starts(shape)) {
      try {
        places.add(place(neck, shape, start));
      } catch (BadInput doesNotFit) {
        assertThat(doesNotFit.getMessage()).contains("does not fit").doesNotContain("\n");
      }
    }
    return places;
  }

  private static PlacedShape place(Neck neck, Shape shape, int start) {
    return neck.chain(List.of(shape), OptionalInt.of(start)).get(0);
  }
}
