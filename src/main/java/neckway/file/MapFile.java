package neckway.file;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import neckway.neck.Join;
import neckway.neck.Neck;
import neckway.neck.NeckMap;
import neckway.neck.PlacedNote;
import neckway.neck.PlacedShape;

/** Maps of the neck as JSON, format {@value #FORMAT}. */
public final class MapFile {
  /** The format's name and version. */
  public static final String FORMAT = "neckway-map/1";

  private MapFile() {}

  /**
   * A map as JSON. {@code degree} is that of the major scale, in a minor key that of its relative
   * major, as in the names of the shapes. A join whose {@code change} is true has no finger that
   * stays down. {@code number} counts the shapes from the major one; {@code tuningName} is left out
   * where players have no name for the tuning.
   */
  public static ObjectNode toJson(NeckMap map) {
    Neck neck = map.neck();
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.put("key", neck.key().toString());
    neck.tuning().names().forEach(json.putArray("tuning")::add);
    neck.tuning().name().ifPresent(name -> json.put("tuningName", name));
    json.put("frets", neck.frets());
    ArrayNode shapes = json.putArray("shapes");
    map.shapes().forEach(shape -> putShape(shapes.addObject(), shape, neck));
    ArrayNode joins = json.putArray("joins");
    map.joins().forEach(join -> putJoin(joins.addObject(), join));
    return json;
  }

  private static void putShape(ObjectNode json, PlacedShape shape, Neck neck) {
    json.put("name", shape.shape().word());
    json.put("number", shape.shape().number());
    json.put("start", shape.start());
    ArrayNode notes = json.putArray("notes");
    for (PlacedNote note : shape.notes()) {
      notes
          .addObject()
          .put("string", note.place().string().number())
          .put("fret", note.place().fret())
          .put("finger", note.finger())
          .put("midi", note.midi())
          .put("name", neck.key().spell(note.midi()).toString())
          .put("degree", neck.key().degree(note.midi()).orElseThrow().toString());
    }
  }

  private static void putJoin(ObjectNode json, Join join) {
    json.put("lower", join.lower().word())
        .put("upper", join.upper().word())
        .put("string", join.string().number())
        .put("finger", join.finger())
        .put("from", join.from())
        .put("to", join.to())
        .put("travel", join.travel())
        .put("rank", join.rank())
        .put("change", join.lead() == Join.Lead.CHANGE)
        .put("why", join.why());
  }
}
