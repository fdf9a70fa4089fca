package org.underlee.framing;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.underlee.geom.Tolerance;

/**
 * Takes rims and ledgers of one field out of the joists of another that runs beside it, square to
 * it: round a corner the rim of the one side lies parallel to the joists of the other. Such a bar
 * holds joists of another set, and neither it nor a ply of it is held as the joists beside it are.
 *
 * @param edges every bar that joists may end on
 */
record SetEdges(MemberIndex edges, Tolerance tolerance) {
  /** One joist may butt against any bar; two and more hang on it. */
  private static final int HOLDS = 2;

  List<List<Member>> without(List<List<Member>> sets) {
    List<List<Member>> kept = new ArrayList<>();
    MemberIndex joists = new MemberIndex(sets.stream().flatMap(List::stream).toList());
    for (List<Member> set : sets) {
      List<Member> left = set.stream().filter(m -> !isEdge(m, set, joists)).toList();
      if (left.size() == set.size() || JoistSets.isField(left, tolerance)) {
        kept.add(left);
      }
    }
    return kept;
  }

  private boolean isEdge(Member bar, List<Member> set, MemberIndex joists) {
    return Contact.holdsEndsOf(bar, joists, tolerance) >= HOLDS
        && Stream.concat(Stream.of(bar), new Bounds(edges, Set.of(), tolerance).plies(bar).stream())
            .noneMatch(m -> isHeldAsOthers(m, -1, set) && isHeldAsOthers(m, 1, set));
  }

  /** Whether a bar ends on what another joist of its set ends on at that side. */
  private boolean isHeldAsOthers(Member bar, int end, List<Member> set) {
    Set<Member> own = holders(bar, end);
    Set<Member> others = new HashSet<>();
    for (Member m : set) {
      int same = m.box().axis().dot(bar.box().axis()) < 0 ? -end : end;
      if (!m.equals(bar)) {
        others.addAll(holders(m, same));
      }
    }
    return others.isEmpty() || own.stream().anyMatch(others::contains);
  }

  private Set<Member> holders(Member bar, int end) {
    Set<Member> holders = new HashSet<>();
    for (Member o : edges.near(bar, Contact.END_GAP + tolerance.touch())) {
      if (!o.equals(bar) && Contact.endsOn(bar, end, o)) {
        holders.add(o);
      }
    }
    return holders;
  }
}
