package org.underlee.drainage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.geom.Vec3;

/** The ends of all ways: outlets, and leaks told apart by cause, part and bay. */
final class Sinks {
  /**
   * An end.
   *
   * @param outlet number of the outlet, or −1 for a leak
   * @param piece that the water leaves last, or −1
   * @param bay number of the catchment, or −1
   */
  record Sink(int outlet, Optional<LeakCause> cause, int piece, int bay) {
    static Sink outlet(int outlet, int gutter) {
      return new Sink(outlet, Optional.empty(), gutter, -1);
    }

    static Sink leak(LeakCause cause, int piece, int bay) {
      return new Sink(-1, Optional.of(cause), piece, bay);
    }
  }

  /** What all water has that ends in one, by the end. */
  private final Map<Sink, Fate> known = new HashMap<>();

  private final List<Sink> all = new ArrayList<>();
  private final List<Vec3> places = new ArrayList<>();

  /** Starts with the ends of others, and adds its own without a change to theirs. */
  Sinks copy() {
    Sinks copy = new Sinks();
    copy.known.putAll(known);
    copy.all.addAll(all);
    copy.places.addAll(places);
    return copy;
  }

  /**
   * Water came to an end. Where it first did is the end's place; that a way there is known, as from
   * each sill of a pool, does not say that water takes it.
   *
   * @param at in the frame of the field
   * @return what all water has that comes there
   */
  Fate reached(Sink sink, Vec3 at) {
    Fate fate = known.get(sink);
    if (fate == null) {
      fate = Fate.of(all.size());
      known.put(sink, fate);
      all.add(sink);
      places.add(at);
    }
    return fate;
  }

  /** Where water first came to an end. */
  Vec3 at(int sink) {
    return places.get(sink);
  }

  /** By number: whether the end is in an outlet. */
  boolean[] in(int outlet) {
    boolean[] in = new boolean[all.size()];
    for (int i = 0; i < in.length; i++) {
      in[i] = all.get(i).outlet() == outlet;
    }
    return in;
  }

  Sink get(int number) {
    return all.get(number);
  }

  int size() {
    return all.size();
  }
}
