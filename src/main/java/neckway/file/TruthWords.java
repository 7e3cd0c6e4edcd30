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
      words.addAll(
          switch (note.kind()) {
            case WRONG -> List.of("Step %d was a wrong note.".formatted(note.step().getAsInt()));
            case REPEAT -> List.of("Step %d was struck again.".formatted(note.step().getAsInt()));
            case EXTRA ->
                List.of(
                    String.format(
                        Locale.ROOT, "A note at %.2f s does not belong there.", note.time()));
            case RIGHT -> List.<String>of();
          });
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
      words.addAll(
          switch (shift.outcome()) {
            case MOVED -> List.of(which + " was made on string " + shift.string().get() + ".");
            case MISSED -> List.of(which + " was missed.");
            case UNPLAYED -> List.of(which + " was not reached.");
            case MADE -> List.<String>of();
          });
    }
    if (words.isEmpty()) {
      words.add("Every note was played as written.");
    }
    return words;
  }
}
