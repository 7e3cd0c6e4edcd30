package neckway.drill;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.words.Tongue;
import neckway.words.Wording;

/**
 * A drill as a player asks for it: what is left out stays left out until the route is built.
 *
 * @param givenTitle its title, if it was given one
 * @param tuning the open strings
 * @param frets of the neck, 12 to 24
 * @param key whose pentatonic scale is played
 * @param shapes one to five neighbours, low to high
 * @param start fret of the first note; left out, the lowest place where the route fits
 * @param up a join for each pair in the order met; empty, the cleanest ones
 * @param down a join for each pair in the order met; empty, the same strings as up
 * @param rounds 1 to 99
 * @param pulse tempo and beats
 */
public record Drill(
    Optional<String> givenTitle,
    Tuning tuning,
    int frets,
    Key key,
    List<Shape> shapes,
    OptionalInt start,
    List<JoinChoice> up,
    List<JoinChoice> down,
    int rounds,
    Pulse pulse) {
  /** The pulse of a drill that says nothing else: 80, two notes a beat, four beats a bar. */
  public static final Pulse USUAL_PULSE = new Pulse(80, 2, 4, 4);

  public Drill {
    shapes = List.copyOf(shapes);
    up = List.copyOf(up);
    down = List.copyOf(down);
  }

  /**
   * Its title, or one made of the key and the shapes: "A major: major to Dorian". That is made in
   * English, whatever is spoken: it is kept in files, and the same drill has the same one.
   */
  public String title() {
    return givenTitle.orElseGet(this::usualTitle);
  }

  /** Its title; one that only names key and shapes is said in the language that is spoken. */
  public String spokenTitle() {
    return title().equals(usualTitle()) ? madeTitle() : title();
  }

  private String usualTitle() {
    return Wording.in(Tongue.ENGLISH, this::madeTitle);
  }

  private String madeTitle() {
    return key + ": " + Shape.spokenChain(shapes);
  }

  /**
   * The drill resolved: its shapes in their places, its joins, its steps.
   *
   * @throws neckway.neck.BadInput if the number of frets is out of range, the route does not fit,
   *     or a join does not exist
   */
  public PlayableDrill playable() {
    return new PlayableDrill(this);
  }

  /** The same played so many times without a pause. */
  public Drill withRounds(int times) {
    return new Drill(givenTitle, tuning, frets, key, shapes, start, up, down, times, pulse);
  }

  /** The same to another pulse. */
  public Drill withPulse(Pulse other) {
    return new Drill(givenTitle, tuning, frets, key, shapes, start, up, down, rounds, other);
  }
}
