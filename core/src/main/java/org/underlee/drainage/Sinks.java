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
   * @param at in the frame of the field
   */
  record Sink(int outlet, Optional<LeakCause> cause, int piece, int bay, Vec3 at) {}

  private record Key(int outlet, Optional<LeakCause> cause, int piece, int bay) {}

  private final Map<Key, Integer> known = new HashMap<>();
  private final List<Sink> all = new ArrayList<>();

  int outlet(int outlet, int gutter, Vec3 at) {
    return number(new Sink(outlet, Optional.empty(), gutter, -1, at));
  }

  int leak(LeakCause cause, int piece, int bay, Vec3 at) {
    return number(new Sink(-1, Optional.of(cause), piece, bay, at));
  }

  private int number(Sink sink) {
    Key key = new Key(sink.outlet, sink.cause, sink.piece, sink.bay);
    Integer number = known.putIfAbsent(key, all.size());
    if (number == null) {
      all.add(sink);
      return all.size() - 1;
    }
    return number;
  }

  Sink get(int number) {
    return all.get(number);
  }

  int size() {
    return all.size();
  }
}
