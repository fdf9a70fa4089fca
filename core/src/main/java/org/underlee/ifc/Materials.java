package org.underlee.ifc;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** Names of the materials of an element, its own or else its type's, in the order of the file. */
final class Materials {
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
    own.ifPresent(id -> add(step.instance(id), names, new HashSet<>()));
    return List.copyOf(names);
  }

  private void add(StepInstance m, List<String> names, Set<Long> path) {
    if (!path.add(m.id())) {
      throw m.error("this material is made of itself");
    }
    switch (m.keyword()) {
      case "IFCMATERIAL" -> names.add(m.optionalText(0).orElse(""));
      case "IFCMATERIALLAYERSETUSAGE",
          "IFCMATERIALPROFILESETUSAGE",
          "IFCMATERIALPROFILESETUSAGETAPERING" ->
          add(m.follow(0), names, path);
      case "IFCMATERIALLAYERSET", "IFCMATERIALLIST" ->
          m.followAll(0).forEach(part -> add(part, names, path));
      case "IFCMATERIALPROFILESET", "IFCMATERIALCONSTITUENTSET" ->
          m.followAll(2).forEach(part -> add(part, names, path));
      case "IFCMATERIALLAYER", "IFCMATERIALLAYERWITHOFFSETS" ->
          m.optionalFollow(0).ifPresent(part -> add(part, names, path));
      case "IFCMATERIALPROFILE", "IFCMATERIALPROFILEWITHOFFSETS", "IFCMATERIALCONSTITUENT" ->
          m.optionalFollow(2).ifPresent(part -> add(part, names, path));
      default -> throw m.error("a material is expected here");
    }
    path.remove(m.id());
  }
}
