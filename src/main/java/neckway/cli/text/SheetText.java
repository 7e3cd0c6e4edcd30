package neckway.cli.text;

import java.util.ArrayList;
import java.util.List;
import neckway.drill.PlayableDrill;
import neckway.neck.NeckMap;
import neckway.sheet.PracticeWords;
import neckway.words.Wording;

/** A drill on paper as plain text: the shapes with their joins, the tab, how to practise it. */
public final class SheetText {
  /** Columns of a page of text that any printer and mail takes. */
  private static final int PAGE_COLUMNS = 78;

  private SheetText() {}

  /** The lines of the page. */
  public static List<String> of(PlayableDrill drill) {
    List<String> lines = new ArrayList<>();
    lines.add(Wording.of("files.sheet.title", drill.spokenTitle()));
    lines.addAll(Wrapped.lines(PracticeWords.facts(drill), PAGE_COLUMNS));
    lines.add("");
    PracticeWords.advice(drill).forEach(s -> lines.addAll(Wrapped.lines(s, PAGE_COLUMNS)));
    lines.add("");
    lines.addAll(TabText.of(drill.neck(), drill.route(), PAGE_COLUMNS));
    lines.add("");
    NeckMap map =
        new NeckMap(
            drill.neck(),
            drill.chain(),
            drill.pairs().stream().flatMap(List::stream).toList(),
            true);
    lines.addAll(MapText.of(map, PAGE_COLUMNS, Handed.RIGHT));
    while (lines.get(lines.size() - 1).isEmpty()) {
      lines.remove(lines.size() - 1);
    }
    return lines;
  }
}
