package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec2;

/** Cuts a line into the dashes of a pattern of lengths drawn and left out by turns. */
final class Dashes {
  private Dashes() {}

  static List<List<Vec2>> of(List<Vec2> line, List<Double> pattern) {
    List<List<Vec2>> dashes = new ArrayList<>();
    List<Vec2> open = new ArrayList<>(List.of(line.get(0)));
    int turn = 0;
    double left = pattern.get(0);
    for (int i = 0; i + 1 < line.size(); i++) {
      Vec2 from = line.get(i);
      Vec2 way = line.get(i + 1).minus(from);
      double length = way.length();
      double done = 0;
      while (length - done > left) {
        done += left;
        open.add(from.plus(way.times(done / length)));
        keep(open, turn, dashes);
        open = new ArrayList<>(open.subList(open.size() - 1, open.size()));
        turn++;
        left = pattern.get(turn % pattern.size());
      }
      left -= length - done;
      open.add(line.get(i + 1));
    }
    keep(open, turn, dashes);
    return dashes;
  }

  private static void keep(List<Vec2> dash, int turn, List<List<Vec2>> dashes) {
    if (turn % 2 == 0) {
      dashes.add(List.copyOf(dash));
    }
  }
}
