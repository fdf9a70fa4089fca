package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The plan that a person would make: longest first, each piece into the first stick with room; then
 * the cheapest stick that holds what came together. Uses nothing that is on hand.
 */
final class FirstFit {
  /** A stick that is being filled. */
  private static final class Begun {
    private final List<Integer> blocks = new ArrayList<>();
    private long room;

    Begun(long room) {
      this.room = room;
    }
  }

  private FirstFit() {}

  /** One pattern a stick; together they hold exactly what is wanted, and nothing is ripped. */
  static List<Pattern> of(CuttingOrder order, int[] wanted) {
    long longest = order.greatestRoom();
    List<Begun> sticks = new ArrayList<>();
    for (int block = 0; block < order.blocks().size(); block++) {
      List<Integer> sizes = order.blocks().get(block).sizes();
      int pieces = sizes.size() == 1 ? wanted[sizes.get(0)] : 0;
      int at = 0;
      for (int n = 0; n < pieces; n++) {
        at = put(sticks, at, block, order.blocks().get(block).need(), longest);
      }
    }
    return patterns(order, sticks);
  }

  /**
   * The same with pieces ripped from side by side: beside the longest piece that is left come the
   * longest that fit there.
   */
  static List<Pattern> ripped(CuttingOrder order, int[] wanted) {
    Map<List<Integer>, Integer> numbers = new HashMap<>();
    for (int block = 0; block < order.blocks().size(); block++) {
      numbers.put(order.blocks().get(block).sizes(), block);
    }
    int[] left = wanted.clone();
    List<Begun> sticks = new ArrayList<>();
    for (int size = 0; size < order.sizes(); size++) {
      while (left[size] > 0) {
        int block = fullest(numbers, size, order.sizes(), left);
        order.blocks().get(block).sizes().forEach(s -> left[s]--);
        put(sticks, 0, block, order.blocks().get(block).need(), order.greatestRoom());
      }
    }
    return patterns(order, sticks);
  }

  private static int fullest(
      Map<List<Integer>, Integer> numbers, int longest, int sizes, int[] left) {
    List<Integer> beside = List.of(longest);
    for (int size = longest; size < sizes; size++) {
      List<Integer> more = with(beside, size);
      while (numbers.containsKey(more) && Collections.frequency(more, size) <= left[size]) {
        beside = more;
        more = with(beside, size);
      }
    }
    return numbers.getOrDefault(beside, longest);
  }

  private static List<Integer> with(List<Integer> sizes, int more) {
    List<Integer> all = new ArrayList<>(sizes);
    all.add(more);
    return all;
  }

  private static List<Pattern> patterns(CuttingOrder order, List<Begun> sticks) {
    return sticks.stream()
        .map(
            s ->
                order.pattern(
                    order.cheapestWith(order.greatestRoom() - s.room),
                    s.blocks.stream().mapToInt(Integer::intValue).toArray()))
        .toList();
  }

  /**
   * Into the first stick with room.
   *
   * @param from sticks before this one have no room for it
   * @return which stick it is: those before have no room for one more of its kind
   */
  private static int put(List<Begun> sticks, int from, int block, long need, long longest) {
    int at = from;
    while (at < sticks.size() && sticks.get(at).room < need) {
      at++;
    }
    if (at == sticks.size()) {
      sticks.add(new Begun(longest));
    }
    sticks.get(at).blocks.add(block);
    sticks.get(at).room -= need;
    return at;
  }
}
