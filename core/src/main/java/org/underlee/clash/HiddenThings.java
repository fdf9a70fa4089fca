package org.underlee.clash;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.bay.FieldBays;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;

/** What must be reached and ends between a pan and the deck boards. */
final class HiddenThings {
  private HiddenThings() {}

  static List<Clash> in(List<FieldBays> fields, List<Ours> parts, List<Theirs> things) {
    Map<String, List<Ours>> covers =
        parts.stream().filter(Ours::isCover).collect(Collectors.groupingBy(Ours::bay));
    List<Clash> found = new ArrayList<>();
    for (FieldBays field : fields) {
      for (Bay bay : field.bays()) {
        List<Ours> own = covers.getOrDefault(field.field().id() + "/" + bay.id(), List.of());
        for (Crossing crossing : bay.crossings()) {
          things.stream()
              .filter(t -> t.kind().access() && isSame(t.element(), crossing.element()))
              .forEach(t -> add(t, own, found));
        }
      }
    }
    return found;
  }

  private static boolean isSame(BuildingElement a, BuildingElement b) {
    return a.instance() == b.instance() && a.file().equals(b.file());
  }

  private static void add(Theirs thing, List<Ours> covers, List<Clash> found) {
    Box box = thing.element().shape().bounds();
    for (Ours cover : covers) {
      if (isUnder(cover.bounds(), box)) {
        double above = Math.max(0, box.min().z() - cover.bounds().min().z());
        Vec3 at = box.centre();
        found.add(new Clash(cover, thing, Cause.HIDDEN, above, 0, true, at));
      }
    }
  }

  /** Whether a cover lies under the middle of a thing, and below all of it. */
  private static boolean isUnder(Box cover, Box thing) {
    Vec3 at = thing.centre();
    return cover.min().x() <= at.x()
        && at.x() <= cover.max().x()
        && cover.min().y() <= at.y()
        && at.y() <= cover.max().y()
        && cover.centre().z() <= at.z();
  }
}
