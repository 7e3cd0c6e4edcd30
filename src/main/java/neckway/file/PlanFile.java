package neckway.file;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import neckway.practice.Plan;
import neckway.practice.PlanItem;

/** Plans as JSON, format {@value #FORMAT}. */
public final class PlanFile {
  /** The format's name and version. */
  public static final String FORMAT = "neckway-plan/1";

  private PlanFile() {}

  /** A plan as JSON. */
  public static ObjectNode toJson(Plan plan) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.put("day", plan.day().toString());
    json.put("minutes", plan.minutes());
    ArrayNode items = json.putArray("items");
    for (PlanItem item : plan.items()) {
      ObjectNode one = items.addObject();
      one.put("kind", item.kind().word());
      one.put("minutes", item.minutes());
      one.put("rounds", item.rounds());
      item.drill()
          .ifPresentOrElse(
              drill -> one.set("drill", DrillFile.toJson(drill)), () -> one.putNull("drill"));
      one.put("why", item.why());
    }
    return json;
  }
}
