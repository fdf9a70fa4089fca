package org.underlee.framing;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.underlee.finding.StopSign;
import org.underlee.geom.BarMeasure;

/**
 * Every bar-shaped element that framing may be made of, measured.
 *
 * @param all in the classes that framing is modelled with
 * @param coverings bar-shaped coverings, which may be deck boards
 * @param small elements of any class but services, small enough to be a hanger or another fitting
 */
record Members(List<Member> all, List<Member> coverings, List<Member> small) {
  /**
   * Classes that framing is modelled with. Services and furniture are left out by class, so that a
   * pipe is never taken for a joist; a proxy may be anything and is judged by its place.
   */
  static final Set<String> CLASSES =
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
          "IfcBuiltElement",
          "IfcElementAssembly",
          "IfcPile",
          "IfcRailing",
          "IfcStair",
          "IfcStairFlight");

  private static final Set<String> COVERINGS = Set.of("IfcCovering");

  /** Words in the names of classes that are no part of a building's structure. */
  private static final List<String> NO_FITTING =
      List.of("Flow", "Pipe", "Duct", "Cable", "Distribution", "Terminal", "Fixture", "Furni");

  /** The longest way through a joist hanger, an angle or a post cap. */
  private static final double LARGEST_FITTING = 0.6;

  static Members of(List<BuildingElement> elements, Told told) {
    return new Members(
        measured(elements, told, e -> CLASSES.contains(e.ifcClass()) || told.roleOf(e).isPresent()),
        measured(elements, told, e -> COVERINGS.contains(e.ifcClass())),
        measured(elements, told, Members::isSmall));
  }

  private static boolean isSmall(BuildingElement e) {
    return e.shape().bounds().size().length() <= LARGEST_FITTING
        && NO_FITTING.stream().noneMatch(e.ifcClass()::contains);
  }

  private static List<Member> measured(
      List<BuildingElement> elements, Told told, Predicate<BuildingElement> which) {
    StopSign stop = StopSign.here();
    return elements.parallelStream()
        .peek(e -> stop.obey())
        .filter(told::isFraming)
        .filter(which)
        .flatMap(e -> BarMeasure.of(e.shape()).map(b -> new Member(e, b, told.roleOf(e))).stream())
        .toList();
  }

  Stream<Member> level() {
    return all.stream().filter(Member::isLevel);
  }

  /** Bars that joists may end on: the level ones, and bent ones such as a curved rim. */
  List<Member> edges() {
    return all.stream().filter(m -> m.isLevel() || m.isBent()).toList();
  }

  Stream<Member> upright() {
    return all.stream().filter(m -> m.isUpright() && !m.isBent());
  }

  /** Neither level nor upright: struts, braces, stringers. */
  Stream<Member> inclined() {
    return all.stream().filter(m -> !m.isLevel() && !m.isUpright());
  }
}
