package org.underlee.framing;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.underlee.geom.BarMeasure;

/** Every bar-shaped element that framing may be made of, measured. */
record Members(List<Member> all) {
  /**
   * Classes that framing is modelled with. Services and furniture are left out by class, so that a
   * pipe is never taken for a joist; a proxy may be anything and is judged by its place.
   */
  private static final Set<String> CLASSES =
      Set.of(
          "IfcBeam",
          "IfcBeamStandardCase",
          "IfcMember",
          "IfcMemberStandardCase",
          "IfcColumn",
          "IfcColumnStandardCase",
          "IfcPlate",
          "IfcPlateStandardCase",
          "IfcBuildingElementProxy",
          "IfcBuildingElementPart",
          "IfcElementAssembly");

  static Members of(List<BuildingElement> elements) {
    return new Members(
        elements.stream()
            .filter(e -> CLASSES.contains(e.ifcClass()))
            .flatMap(e -> BarMeasure.of(e.shape()).map(b -> new Member(e, b)).stream())
            .toList());
  }

  Stream<Member> level() {
    return all.stream().filter(Member::isLevel);
  }

  Stream<Member> upright() {
    return all.stream().filter(Member::isUpright);
  }
}
