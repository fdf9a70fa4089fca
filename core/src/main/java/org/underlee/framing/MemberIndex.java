package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.underlee.geom.Box;

/**
 * Members by place in plan, for questions about what is near. Answers come in file order. May be
 * asked by several threads at once.
 */
final class MemberIndex {
  private record Entry(int order, Member member, Box bounds) {}

  private final STRtree tree = new STRtree();

  MemberIndex(List<Member> members) {
    int order = 0;
    for (Member member : members) {
      Box box = member.box().bounds();
      tree.insert(envelope(box), new Entry(order++, member, box));
    }
    tree.build();
  }

  /** Members whose box comes within {@code reach} metres of the given one, in plan and height. */
  List<Member> near(Member member, double reach) {
    return near(member.box().bounds().grown(reach));
  }

  List<Member> near(Box box) {
    return entries(box).stream().map(Entry::member).toList();
  }

  /** As {@link #near(Member, double)}: their places in the list that the index was made of. */
  int[] placesNear(Member member, double reach) {
    return entries(member.box().bounds().grown(reach)).stream().mapToInt(Entry::order).toArray();
  }

  private List<Entry> entries(Box box) {
    List<Entry> found = new ArrayList<>();
    tree.query(
        envelope(box),
        hit -> {
          Entry entry = (Entry) hit;
          if (entry.bounds.meets(box)) {
            found.add(entry);
          }
        });
    found.sort(Comparator.comparingInt(Entry::order));
    return found;
  }

  private static Envelope envelope(Box box) {
    return new Envelope(box.min().x(), box.max().x(), box.min().y(), box.max().y());
  }
}
