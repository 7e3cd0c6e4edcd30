package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import neckway.follow.Verdict;
import neckway.neck.BadInput;
import neckway.review.Remarks;
import neckway.review.Review;
import neckway.words.Wording;

/** A teacher's remarks from JSON and to it, format {@value #FORMAT}. */
public final class RemarksFile {
  public static final String FORMAT = "neckway-remarks/1";
  private static final double LONGEST_SECONDS = 1e7;

  private RemarksFile() {}

  /**
   * Reads a file.
   *
   * @param review the review that the remarks are of
   * @throws BadInput naming the file, the field and the mend
   */
  public static Remarks read(Path file, Review review) {
    return fromJson(JsonFile.read(file), file.toString(), review);
  }

  /**
   * Reads remarks.
   *
   * @param where what a complaint begins with: the file's name
   * @param review the review that the remarks are of
   * @throws BadInput naming the field and the mend
   */
  public static Remarks fromJson(JsonNode json, String where, Review review) {
    Fields fields = Fields.of(json, where);
    String format =
        fields.text("format").orElseThrow(() -> fields.missing("format", "\"" + FORMAT + "\""));
    if (!format.equals(FORMAT)) {
      throw fields.bad("format", Wording.of("files.format.remarks", format, FORMAT));
    }
    List<Remarks.Moment> moments =
        fields.objects("moments", RemarksFile::moment).stream()
            .sorted(Comparator.comparingDouble(Remarks.Moment::time))
            .toList();
    Set<Integer> told = new HashSet<>();
    List<Remarks.Overruled> overruled =
        fields.objects("verdicts", verdict -> overruled(verdict, review, told));
    Optional<String> overall = fields.text("overall").filter(text -> !text.isBlank());
    return new Remarks(overall, moments, overruled);
  }

  /** The same as JSON. */
  public static ObjectNode toJson(Remarks remarks) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    remarks.overall().ifPresent(text -> json.put("overall", text));
    ArrayNode moments = json.putArray("moments");
    for (Remarks.Moment moment : remarks.moments()) {
      moments.addObject().put("time", moment.time()).put("text", moment.text());
    }
    ArrayNode verdicts = json.putArray("verdicts");
    for (Remarks.Overruled by : remarks.overruled()) {
      verdicts.addObject().put("note", by.note()).put("verdict", by.verdict().word());
    }
    return json;
  }

  private static Remarks.Moment moment(Fields moment) {
    double time =
        moment.number("time", 0, LONGEST_SECONDS).orElseThrow(() -> moment.missing("time", "4.2"));
    String text =
        moment
            .text("text")
            .filter(words -> !words.isBlank())
            .orElseThrow(() -> moment.missing("text", Wording.of("files.remarks.text")));
    return new Remarks.Moment(time, text);
  }

  private static Remarks.Overruled overruled(Fields given, Review review, Set<Integer> told) {
    int notes = review.notes().size();
    if (notes == 0) {
      throw given.bad("note", Wording.of("files.remarks.noNotes"));
    }
    int note = given.whole("note", 0, notes - 1).orElseThrow(() -> given.missing("note", "0"));
    if (!told.add(note)) {
      throw given.bad("note", Wording.of("files.remarks.twice", note));
    }
    String word = given.text("verdict").orElseThrow(() -> given.missing("verdict", "\"right\""));
    for (Verdict verdict : Verdict.values()) {
      if (verdict.word().equals(word)) {
        return new Remarks.Overruled(note, verdict);
      }
    }
    throw given.bad("verdict", Wording.of("files.remarks.verdict", word));
  }
}
