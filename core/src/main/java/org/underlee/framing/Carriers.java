package org.underlee.framing;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Transform;

/**
 * Finds the beams that carry beams: what a drop beam lies on, and what a flush beam or a drop beam
 * ends on, and so on down.
 *
 * @param joists of every field: what ends on a joist is a header
 */
record Carriers(MemberIndex level, Set<Member> joists, Tolerance tolerance) {
  List<Support> of(List<Support> high, List<Support> low, List<Support> drop, Transform frame) {
    Set<Member> known = new HashSet<>();
    Stream.of(high, low, drop).flatMap(List::stream).forEach(s -> known.add(s.member()));
    List<Member> open = new ArrayList<>();
    Stream.of(high, low, drop)
        .flatMap(List::stream)
        .filter(s -> s.role() == Role.FLUSH_BEAM || s.role() == Role.DROP_BEAM)
        .forEach(s -> open.add(s.member()));
    List<Support> found = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      Member beam = open.get(i);
      for (Member m : level.near(beam, Contact.END_GAP)) {
        if (!joists.contains(m) && !known.contains(m)) {
          carrying(beam, m, frame).ifPresent(found::add);
        }
      }
      found.stream().map(Support::member).filter(known::add).forEach(open::add);
    }
    return found;
  }

  private Optional<Support> carrying(Member beam, Member m, Transform frame) {
    PlanShape shape = PlanShape.of(m.element().shape(), frame);
    if (Contact.endsOn(beam, -1, m) || Contact.endsOn(beam, 1, m)) {
      return Optional.of(new Support(m, Role.FLUSH_BEAM, shape, "a beam of the deck ends on it"));
    }
    return Contact.liesOn(beam, m)
        ? Optional.of(new Support(m, Role.DROP_BEAM, shape, "a beam of the deck lies on it"))
        : Optional.empty();
  }
}
