package org.underlee.run;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;

/** Which parts of a bay are as they were, by their names. */
final class PartChanges {
  /** A piece whose measures agree to this is the same piece: finer than any saw. */
  private static final double SAME = 0.0001;

  private final Map<String, Part> before = new HashMap<>();
  private final Map<String, Part> after = new HashMap<>();

  PartChanges(Layout before, Layout after) {
    before.parts().forEach(p -> this.before.put(p.id(), p));
    after.parts().forEach(p -> this.after.put(p.id(), p));
  }

  BayChange.Parts of(String field, String bay) {
    int same = 0;
    int changed = 0;
    int added = 0;
    int gone = 0;
    for (Part now : after.values()) {
      if (isOf(now, field, bay)) {
        Optional<Part> was = Optional.ofNullable(before.get(now.id()));
        added += was.isEmpty() ? 1 : 0;
        boolean alike = was.filter(w -> same(w, now)).isPresent();
        same += alike ? 1 : 0;
        changed += was.isPresent() && !alike ? 1 : 0;
      }
    }
    for (Part was : before.values()) {
      gone += isOf(was, field, bay) && !after.containsKey(was.id()) ? 1 : 0;
    }
    return new BayChange.Parts(same, changed, added, gone);
  }

  private static boolean isOf(Part part, String field, String bay) {
    return part.field().equals(field) && part.bay().equals(Optional.of(bay));
  }

  private static boolean same(Part a, Part b) {
    return Objects.equals(a.item(), b.item())
        && Math.abs(a.cutLength() - b.cutLength()) < SAME
        && Math.abs(a.width() - b.width()) < SAME
        && Math.abs(a.sheetWidth().orElse(0) - b.sheetWidth().orElse(0)) < SAME
        && a.count() == b.count()
        && a.cuts().size() == b.cuts().size();
  }
}
