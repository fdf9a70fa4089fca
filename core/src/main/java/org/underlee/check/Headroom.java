package org.underlee.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** No part hangs before a door or a window, or low over a stair. */
public final class Headroom implements Check {
  static final Rule OPENING =
      new Rule(
          "part-before-opening",
          Level.ERROR,
          "IRC R310 and R311: doors and emergency escape openings stay clear",
          "A part hangs lower than the head of a door or a window close before it.");

  static final Rule STAIR =
      new Rule(
          "low-over-stair",
          Level.ERROR,
          "IRC R311.7.2: 6 ft 8 in plumb over the nosings",
          "A part hangs low over a stair.");

  private static final Set<String> OPENINGS =
      Set.of("IfcDoor", "IfcDoorStandardCase", "IfcWindow", "IfcWindowStandardCase");
  private static final Set<String> STAIRS =
      Set.of("IfcStair", "IfcStairFlight", "IfcRamp", "IfcRampFlight");

  /** The way out of a door: as deep as it is wide, 3 ft; a window's less, kept alike. */
  private static final double BEFORE = 3 * Lengths.FOOT;

  @Override
  public List<Rule> rules() {
    return List.of(OPENING, STAIR);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    List<BuildingElement> openings = input.ofClass(OPENINGS);
    List<BuildingElement> stairs = input.ofClass(STAIRS);
    for (Assembled f : input.fields()) {
      openings.forEach(e -> opening(f, e).ifPresent(found::add));
      stairs.forEach(e -> stair(f, e).ifPresent(found::add));
    }
    return Answer.found(found);
  }

  private static Optional<Finding> opening(Assembled f, BuildingElement e) {
    Box own = f.boxOf(e);
    return f.parts().stream()
        .filter(p -> isBefore(own, p.box()) && p.box().max().z() > own.min().z())
        .min(Comparator.comparingDouble(p -> p.box().min().z()))
        .filter(p -> p.box().min().z() < own.max().z())
        .map(
            p ->
                Finding.measured(
                        OPENING,
                        e.place(),
                        Words.of(
                            "hangs that far below the head of %s #%s.", e.ifcClass(), e.instance()),
                        Measure.lengths(p.box().min().z(), own.max().z()),
                        "Leave the bays before it open, or let the water fall the other way.")
                    .about(
                        f.subject(
                            p.part().label(),
                            e,
                            Optional.of(Quantity.length(own.max().z() - p.box().min().z())))));
  }

  /** Over the opening's own width, and not further before or behind it than a step. */
  private static boolean isBefore(Box opening, Box part) {
    boolean alongX = opening.size().x() > opening.size().y();
    double dx = alongX ? 0 : BEFORE;
    double dy = alongX ? BEFORE : 0;
    return part.max().x() > opening.min().x() - dx
        && part.min().x() < opening.max().x() + dx
        && part.max().y() > opening.min().y() - dy
        && part.min().y() < opening.max().y() + dy;
  }

  private record Over(Placed part, double room) {}

  private static Optional<Finding> stair(Assembled f, BuildingElement e) {
    Mesh mesh = e.shape();
    Box own = f.boxOf(e);
    List<Over> over = new ArrayList<>();
    for (Placed p : f.parts()) {
      if (p.box().meets(new Box(own.min(), own.max().plus(new Vec3(0, 0, Limits.HEADROOM))))) {
        for (int i = 0; i < mesh.vertexCount(); i++) {
          Vec3 nosing = f.frame().toLocal(mesh.vertex(i));
          double room = p.box().min().z() - nosing.z();
          if (room >= 0 && isOver(p.box(), nosing)) {
            over.add(new Over(p, room));
          }
        }
      }
    }
    return over.stream()
        .min(Comparator.comparingDouble(Over::room))
        .filter(o -> o.room < Limits.HEADROOM)
        .map(o -> finding(f, e, o));
  }

  private static boolean isOver(Box part, Vec3 place) {
    return place.x() > part.min().x()
        && place.x() < part.max().x()
        && place.y() > part.min().y()
        && place.y() < part.max().y();
  }

  private static Finding finding(Assembled f, BuildingElement stair, Over over) {
    return Finding.measured(
            STAIR,
            stair.place(),
            Words.of(
                "hangs lower than %s over %s #%s.",
                Quantity.length(Limits.HEADROOM), stair.ifcClass(), stair.instance()),
            Measure.lengths(over.room, Limits.HEADROOM),
            "Leave the bays over the stair open.")
        .about(f.subject(over.part.part().label(), stair, Optional.of(Quantity.length(over.room))));
  }
}
