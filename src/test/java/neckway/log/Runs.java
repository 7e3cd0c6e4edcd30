package neckway.log;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.util.List;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.file.ReviewFile;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import neckway.review.Review;
import neckway.run.Reviewed;

/** A run of the virtual player, reviewed once, and lines of a log made of it. */
public final class Runs {
  private static final PlayableDrill DRILL = Drills.example();
  private static final Review REVIEW = reviewed();

  private Runs() {}

  private static Review reviewed() {
    Performance take =
        new VirtualPlayer(PlayerSettings.plain()).play(DRILL.route(), DRILL.pulse(), List.of(), 3);
    return Reviewed.of(DRILL, take);
  }

  /** What was played. */
  public static PlayableDrill drill() {
    return DRILL;
  }

  /** What came of it. */
  public static Review review() {
    return REVIEW;
  }

  /** The review as it is written. */
  public static ObjectNode json() {
    return ReviewFile.toJson(REVIEW, "take.wav", DRILL);
  }

  /** The first of May 2026 and so many days later, in the evening. */
  public static OffsetDateTime day(int days) {
    return OffsetDateTime.parse("2026-05-01T18:30:00+02:00").plusDays(days);
  }

  /** The line of such a run. */
  public static String line(String id, int days) {
    ObjectNode line = JsonNodeFactory.instance.objectNode();
    line.put("id", id);
    line.put("when", RunLine.text(day(days)));
    line.putNull("guitar");
    line.put("source", "live");
    line.set("review", json());
    return RunLine.text(line);
  }
}
