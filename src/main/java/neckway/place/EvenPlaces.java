package neckway.place;

import java.util.ArrayList;
import java.util.List;
import neckway.hear.HeardNote;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.Tuning;

/** Pitch alone: every place that has it is as likely as any other. */
public final class EvenPlaces implements Places {
  private final Tuning tuning;
  private final int frets;

  /**
   * @param tuning the open strings
   * @param frets of the neck, 0 or more
   */
  public EvenPlaces(Tuning tuning, int frets) {
    if (frets < 0) {
      throw new IllegalArgumentException("a neck of " + frets + " frets");
    }
    this.tuning = tuning;
    this.frets = frets;
  }

  @Override
  public List<PlaceGuess> of(HeardNote note, int midi) {
    List<Place> places = new ArrayList<>();
    for (GuitarString string : tuning.strings()) {
      int fret = midi - tuning.openMidi(string);
      if (fret >= 0 && fret <= frets) {
        places.add(new Place(string, fret));
      }
    }
    return places.stream().map(place -> new PlaceGuess(place, 1.0 / places.size())).toList();
  }
}
