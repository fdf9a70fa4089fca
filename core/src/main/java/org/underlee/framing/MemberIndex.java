package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.underlee.geom.Box;

/** Members by place in plan, for questions about what is near. Answers come in file order. */
final class MemberIndex {
  private final STRtree tree = new STRtree();
  private final Map<Member, Integer> order = new HashMap<>();

  MemberIndex(List<Member> members) {
    for (Member member : members) {
      order.put(member, order.size());
      Box box = bounds(member);
      tree.insert(envelope(box), member);
    }
    tree.build();
  }

  /** Members whose box comes within {@code reach} metres of the given one, in plan and height. */
  List<Member> near(Member member, double reach) {
    return near(bounds(member).grown(reach));
  }

  List<Member> near(Box box) {
    List<Member> found = new ArrayList<>();
    for (Object hit : tree.query(envelope(box))) {
      Member member = (Member) hit;
      if (bounds(member).meets(box)) {
        found.add(member);
      }
    }
    found.sort(Comparator.comparing(order::get));
    return found;
  }

  private static Box bounds(Member member) {
    Box box = Box.EMPTY;
    for (var corner : member.box().corners()) {
      box = box.with(corner);
    }
    return box;
  }

  private static Envelope envelope(Box box) {
    return new Envelope(box.min().x(), box.max().x(), box.min().y(), box.max().y());
  }
}
