package neckway.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import neckway.player.Performance;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedShift;

/** Says in plain sentences what the virtual player did. */
final class TruthWords {
  private TruthWords() {}

  static List<String> of(Performance played, List<PlayedNote> notes) {
    List<String> words = new ArrayList<>();
    if (notes.isEmpty()) {
      return List.of("Nothing was played.");
    }
    for (PlayedNote note : notes) {
      switch (note.kind()) {
        case WRONG -> words.add("Step %d was a wrong note.".formatted(note.step().getAsInt()));
        case REPEAT -> words.add("Step %d was struck again.".formatted(note.step().getAsInt()));
        case EXTRA ->
            words.add(
                String.format(Locale.ROOT, "A note at %.2f s belongs to no step.", note.time()));
        case RIGHT -> {}
      }
    }
    for (int step : played.skipped()) {
      words.add("Step %d was left out.".formatted(step));
    }
    for (PlayedShift shift : played.shifts()) {
      String which =
          "The shift %s in round %d"
              .formatted(
                  shift.planned().direction().name().toLowerCase(Locale.ROOT),
                  shift.planned().round());
      switch (shift.outcome()) {
        case MOVED -> words.add(which + " was made on string " + shift.string().get() + ".");
        case MISSED -> words.add(which + " was missed.");
        case UNPLAYED -> words.add(which + " was not reached.");
        case MADE -> {}
      }
    }
    if (words.isEmpty()) {
      words.add("Every note was played as written.");
    }
    return words;
  }
}
