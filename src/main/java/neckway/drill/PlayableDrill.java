package neckway.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.Direction;
import neckway.neck.Join;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.PlacedShape;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.RouteBuilder;
import neckway.neck.Shape;
import neckway.neck.Step;
import neckway.neck.Tuning;

/**
 * A drill that can be played: asked for once, resolved once into its shapes in their places, its
 * joins and its steps, and handed from room to room as it is. Immutable.
 */
public final class PlayableDrill {
  private final Drill drill;
  private final Neck neck;
  private final List<PlacedShape> chain;
  private final List<List<Join>> pairs;
  private final Route route;
  private final List<Cue> cues;

  /**
   * @throws neckway.neck.BadInput if the route does not fit, or a join does not exist
   */
  PlayableDrill(Drill asked) {
    neck = new Neck(asked.key(), asked.tuning(), asked.frets());
    chain = List.copyOf(neck.chain(asked.shapes(), asked.start()));
    pairs = RouteBuilder.pairs(neck, chain);
    route = RouteBuilder.build(neck, chain, asked.up(), asked.down(), asked.rounds());
    cues = List.of();
    drill =
        new Drill(
            Optional.of(asked.title()),
            asked.tuning(),
            asked.frets(),
            asked.key(),
            asked.shapes(),
            OptionalInt.of(route.steps().get(0).place().fret()),
            joins(route, Direction.UP),
            joins(route, Direction.DOWN),
            asked.rounds(),
            asked.pulse());
  }

  private PlayableDrill(PlayableDrill other, Route route, List<Cue> cues) {
    drill = other.drill;
    neck = other.neck;
    chain = other.chain;
    pairs = other.pairs;
    this.route = route;
    this.cues = List.copyOf(cues);
  }

  /**
   * The same shapes played as they are called: an open drill.
   *
   * @param along its steps; its shifts are those that are called, and none of its own
   * @param called at least one, in the order in which they sound
   */
  public PlayableDrill called(Route along, List<Cue> called) {
    return new PlayableDrill(this, along, called);
  }

  /** What is called and when; empty where nothing is, and the route is one up and down. */
  public List<Cue> cues() {
    return cues;
  }

  /** Whether it is played as it is called. */
  public boolean isCalled() {
    return !cues.isEmpty();
  }

  private static List<JoinChoice> joins(Route route, Direction direction) {
    List<JoinChoice> joins = new ArrayList<>();
    for (PlannedShift shift : route.shifts()) {
      if (shift.round() == 0 && shift.direction() == direction) {
        joins.add(JoinChoice.on(shift.string().number(), shift.finger()));
      }
    }
    return joins;
  }

  /** The drill with everything said: title, start, and each join with its finger. */
  public Drill drill() {
    return drill;
  }

  /** Its title. */
  public String title() {
    return drill.title();
  }

  /** Its title as {@link Drill#spokenTitle}. */
  public String spokenTitle() {
    return drill.spokenTitle();
  }

  /** The neck with the key on it. */
  public Neck neck() {
    return neck;
  }

  public Key key() {
    return drill.key();
  }

  public Tuning tuning() {
    return drill.tuning();
  }

  /** Frets of the neck. */
  public int frets() {
    return drill.frets();
  }

  /** One to five neighbours, low to high. */
  public List<Shape> shapes() {
    return drill.shapes();
  }

  /** The shapes in their places with their fingers, low to high. */
  public List<PlacedShape> chain() {
    return chain;
  }

  /** The joins of each pair of neighbours, low to high, cleanest first. */
  public List<List<Join>> pairs() {
    return pairs;
  }

  /** Fret of the first note. */
  public int start() {
    return route.steps().get(0).place().fret();
  }

  /** How often the route is played without a pause. */
  public int rounds() {
    return drill.rounds();
  }

  /** The same played once through. */
  public PlayableDrill once() {
    return rounds() == 1 ? this : drill.withRounds(1).playable();
  }

  /** Tempo and beats. */
  public Pulse pulse() {
    return drill.pulse();
  }

  /** All steps and shifts of the take. */
  public Route route() {
    return route;
  }

  /** Fret of the first finger when a step is played, where the hand is as planned. */
  public int hand(int step) {
    Step planned = route.steps().get(step);
    return chain.get(planned.stand()).hand(planned.place().string());
  }

  /** Drills of which the same is asked are equal. */
  @Override
  public boolean equals(Object other) {
    return other instanceof PlayableDrill that
        && that.drill.equals(drill)
        && that.cues.equals(cues);
  }

  @Override
  public int hashCode() {
    return drill.hashCode();
  }
}
