package org.underlee.bay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.underlee.bay.Bay.Depth;
import org.underlee.bay.Bay.Width;
import org.underlee.geom.Interval;

/** What room a bay leaves along its run. */
final class Widths {
  /** Usable depths nearer than this are one. */
  private static final double SAME_DEPTH = 0.0005;

  private Widths() {}

  /**
   * Only the places that say something: an inner place on the straight line from the last one kept
   * to the next is left out.
   */
  static List<Width> simplified(List<Width> all, double straight) {
    List<Width> kept = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      boolean inner = i > 0 && i < all.size() - 1;
      if (!inner || !isOnTheWay(kept.get(kept.size() - 1), all.get(i), all.get(i + 1), straight)) {
        kept.add(all.get(i));
      }
    }
    return kept;
  }

  private static boolean isOnTheWay(Width before, Width here, Width after, double straight) {
    double run = after.at() - before.at();
    double expected =
        run <= 0
            ? after.width()
            : before.width() + (after.width() - before.width()) * (here.at() - before.at()) / run;
    return Math.abs(here.width() - expected) <= straight;
  }

  /** The stretches between the faces of what stands in the bay. */
  static List<Depth> depths(Bay bay) {
    List<Block> standing =
        Stream.concat(bay.blocking().stream(), bay.bridging().stream())
            .sorted(Comparator.comparingDouble(Block::at))
            .toList();
    TreeSet<Double> ends = new TreeSet<>(List.of(bay.stretch().from(), bay.stretch().to()));
    for (Block block : standing) {
      Interval within = block.stretch().meet(bay.stretch());
      if (!within.isEmpty()) {
        ends.add(within.from());
        ends.add(within.to());
      }
    }
    List<Depth> depths = new ArrayList<>();
    Double from = null;
    for (double to : ends) {
      if (from != null) {
        add(depths, bay, standing, new Interval(from, to));
      }
      from = to;
    }
    return depths;
  }

  private static void add(List<Depth> depths, Bay bay, List<Block> standing, Interval stretch) {
    double v = stretch.middle();
    double top = bay.joistTop(v);
    for (Block block : standing) {
      if (block.stretch().contains(v)) {
        top = Math.min(top, block.heights().from());
      }
    }
    double depth = Math.max(0, top - bay.joistBottom(v));
    double start = bay.stretch().from();
    int last = depths.size() - 1;
    if (last >= 0 && Math.abs(depths.get(last).depth() - depth) <= SAME_DEPTH) {
      Depth before = depths.remove(last);
      depths.add(new Depth(before.from(), stretch.to() - start, before.depth()));
    } else {
      depths.add(new Depth(stretch.from() - start, stretch.to() - start, depth));
    }
  }
}
