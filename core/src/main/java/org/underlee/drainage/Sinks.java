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
  record Sink(int outlet, Optional<LeakCause> cause, int piece, int bay) {}

  private final Map<Sink, Integer> known = new HashMap<>();
  private final List<Sink> all = new ArrayList<>();
  private final Map<Integer, Vec3> places = new HashMap<>();

  int outlet(int outlet, int gutter) {
    return number(new Sink(outlet, Optional.empty(), gutter, -1));
  }

  int leak(LeakCause cause, int piece, int bay) {
    return number(new Sink(-1, Optional.of(cause), piece, bay));
  }

  private int number(Sink sink) {
    Integer number = known.putIfAbsent(sink, all.size());
    if (number == null) {
      all.add(sink);
      return all.size() - 1;
    }
    return number;
  }

  /**
   * Water came to an end. Where it first did is the end's place; that a way there is known, as from
   * each sill of a pool, does not say that water takes it.
   *
   * @param at in the frame of the field
   */
  void reached(int sink, Vec3 at) {
    places.putIfAbsent(sink, at);
  }

  /** Where water first came to an end. */
  Vec3 at(int sink) {
    return places.getOrDefault(sink, Vec3.ZERO);
  }

  Sink get(int number) {
    return all.get(number);
  }

  int size() {
    return all.size();
  }
}
