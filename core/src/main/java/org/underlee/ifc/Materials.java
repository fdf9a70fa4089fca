package org.underlee.ifc;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** Names of the materials of an element, its own or else its type's, in the order of the file. */
final class Materials {
  /** Sets used by sets deeper than this are a loop; the standard allows two levels. */
  private static final int MAX_DEPTH = 8;

  private final StepFile step;
  private final Relations relations;

  Materials(StepFile step, Relations relations) {
    this.step = step;
    this.relations = relations;
  }

  List<String> of(long element) {
    OptionalLong own = relations.material(element);
    OptionalLong type = relations.type(element);
    if (own.isEmpty() && type.isPresent()) {
      own = relations.material(type.getAsLong());
    }
    List<String> names = new ArrayList<>();
    own.ifPresent(id -> add(step.instance(id), names, 0));
    return List.copyOf(names);
  }

  private void add(StepInstance m, List<String> names, int depth) {
    if (depth == MAX_DEPTH) {
      throw m.error("this material is made of itself");
    }
    switch (m.keyword()) {
      case "IFCMATERIAL" -> names.add(m.optionalText(0).orElse(""));
      case "IFCMATERIALLAYERSETUSAGE",
          "IFCMATERIALPROFILESETUSAGE",
          "IFCMATERIALPROFILESETUSAGETAPERING" ->
          add(m.follow(0), names, depth + 1);
      case "IFCMATERIALLAYERSET", "IFCMATERIALLIST" ->
          m.followAll(0).forEach(part -> add(part, names, depth + 1));
      case "IFCMATERIALPROFILESET", "IFCMATERIALCONSTITUENTSET" ->
          m.followAll(2).forEach(part -> add(part, names, depth + 1));
      case "IFCMATERIALLAYER", "IFCMATERIALLAYERWITHOFFSETS" ->
          m.optionalFollow(0).ifPresent(part -> add(part, names, depth + 1));
      case "IFCMATERIALPROFILE", "IFCMATERIALPROFILEWITHOFFSETS", "IFCMATERIALCONSTITUENT" ->
          m.optionalFollow(2).ifPresent(part -> add(part, names, depth + 1));
      default -> throw m.error("a material is expected here");
    }
  }
}
