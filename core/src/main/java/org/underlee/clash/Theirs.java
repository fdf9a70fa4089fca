package org.underlee.clash;

import java.util.List;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;

/**
 * A thing that is not of the assembly.
 *
 * @param kind what it needs
 * @param pieces the bodies it is made of
 * @param zones room that it needs beyond its body
 */
public record Theirs(
    BuildingElement element, Clearances.Kind kind, List<Solid> pieces, List<Zone> zones) {
  public Theirs {
    pieces = List.copyOf(pieces);
    zones = List.copyOf(zones);
  }

  /** Room that must stay free, and what for. */
  public record Zone(Cause cause, Solid room) {}

  public static Theirs of(BuildingElement element, Clearances clearances, List<Zone> zones) {
    return new Theirs(element, clearances.of(element), Pieces.of(element.shape()), zones);
  }

  Box reach() {
    Box own = element.shape().bounds().grown(kind.clearance());
    for (Zone zone : zones) {
      own = own.union(zone.room.bounds());
    }
    return own;
  }

  /** {@code pipe "Drain 3 in" #45 in plumbing.ifc} */
  public String words() {
    String name = element.name().isEmpty() ? "" : " \"" + element.name() + "\"";
    String file = element.file().map(f -> " in " + f).orElse("");
    return kind.words() + name + " #" + element.instance() + file;
  }
}
