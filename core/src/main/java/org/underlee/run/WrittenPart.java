package org.underlee.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.underlee.finding.StopSign;
import org.underlee.framing.BuildingElement;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.PartKind;
import org.underlee.step.StepInstance;
import org.underlee.writeback.GlobalIds;

/**
 * A part of an assembly as it is in a model: where it is there, and of what shape, someone may have
 * changed. It is known for ours by our property set, or by the GlobalId that only we give.
 *
 * @param id as the layout gave it: {@code deck-1/field-1/B3/pan-1}
 */
public record WrittenPart(String id, PartKind kind, BuildingElement element) {
  // Positions of attributes of an element, the same in all three schemas.
  private static final int OBJECT_TYPE = 4;
  private static final int TAG = 7;

  private static final String OWN_SET = "Underlee_Part";

  private static final Map<String, PartKind> KINDS =
      Arrays.stream(PartKind.values())
          .collect(Collectors.toMap(PartKind::word, Function.identity()));

  /** All parts of ours in a model that have a body. */
  static List<WrittenPart> in(IfcModel model) {
    GlobalIds ids = new GlobalIds(model.projectGlobalId());
    List<WrittenPart> parts = new ArrayList<>();
    StopSign stop = StopSign.here();
    for (BuildingElement element : model.elements()) {
      stop.obey();
      StepInstance instance = model.step().instance(element.instance());
      Optional<PartKind> kind =
          instance.optionalText(OBJECT_TYPE).flatMap(k -> Optional.ofNullable(KINDS.get(k)));
      String tag = instance.optionalText(TAG).orElse("");
      if (kind.isPresent() && tag.contains("/")) {
        String own = ids.of(field(tag), kind.get().word(), tag);
        if (own.equals(element.globalId())
            || model.properties(element.instance()).containsKey(OWN_SET)) {
          parts.add(new WrittenPart(tag, kind.get(), element));
        }
      }
    }
    return parts;
  }

  /** {@code deck-1/field-1} */
  String field() {
    return field(id);
  }

  private static String field(String id) {
    String[] steps = id.split("/", -1);
    return steps.length < 2 ? id : steps[0] + "/" + steps[1];
  }
}
