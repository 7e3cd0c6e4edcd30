package neckway.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** All that a page shows, as JSON: what a step is, and each label, sign and figure at it. */
public final class PageJson {
  private PageJson() {}

  public static ArrayNode of(PageModel page) {
    ArrayNode steps = JsonNodeFactory.instance.arrayNode();
    for (int i = 0; i < page.steps(); i++) {
      PageStep step = page.at(i);
      ObjectNode json = steps.addObject();
      json.put("step", step.due().index());
      json.put("planned", step.due().place().toString());
      json.put("place", step.played().place().toString());
      json.put("known", step.played().known().name());
      json.put("plannedSign", step.plannedSign());
      json.put("finger", step.due().finger());
      json.put("hand", page.hand(i));
      json.put("stand", page.stand(i));
      json.put("ink", step.ink().name());
      json.put("sign", step.sign());
      json.put("heard", step.heardLabel());
      json.put("stray", step.strayLabel());
      step.strays().forEach(json.withArray("strays")::add);
      json.put("ms", step.timeLabel());
      step.time()
          .ifPresent(
              time -> {
                json.put("measure", time.measure().name());
                json.put("timing", time.timing().name());
                json.put("slots", time.slots());
              });
      json.put("landing", step.landingSign());
      page.note(i).ifPresent(note -> json.put("note", note));
    }
    return steps;
  }
}
