package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.List;

/**
 * The plan that a person would make: longest first, each piece into the first stick with room; then
 * the cheapest stick that holds what came together. Uses nothing that is on hand and rips nothing.
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

  /** One pattern a stick; together they hold exactly what is wanted. */
  static List<Pattern> of(CuttingOrder order, int[] wanted) {
    long longest = order.greatestRoom();
    List<Begun> sticks = new ArrayList<>();
    for (int block = 0; block < order.blocks().size(); block++) {
      List<Integer> sizes = order.blocks().get(block).sizes();
      int pieces = sizes.size() == 1 ? wanted[sizes.get(0)] : 0;
      for (int n = 0; n < pieces; n++) {
        put(sticks, block, order.blocks().get(block).need(), longest);
      }
    }
    return sticks.stream()
        .map(
            s ->
                order.pattern(
                    order.cheapestWith(longest - s.room),
                    s.blocks.stream().mapToInt(Integer::intValue).toArray()))
        .toList();
  }

  private static void put(List<Begun> sticks, int block, long need, long longest) {
    Begun first =
        sticks.stream()
            .filter(s -> s.room >= need)
            .findFirst()
            .orElseGet(
                () -> {
                  Begun begun = new Begun(longest);
                  sticks.add(begun);
                  return begun;
                });
    first.blocks.add(block);
    first.room -= need;
  }
}
