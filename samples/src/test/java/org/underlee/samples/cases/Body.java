package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import org.underlee.samples.Frame;
import org.underlee.samples.Xyz;

/** One solid of an element, millimetres. */
public sealed interface Body {
  Body in(Frame outer);

  /** Its corners; faces index into them. */
  List<Xyz> points();

  List<Face> faces();

  /**
   * A plane face of a body.
   *
   * @param ring corners counter-clockwise seen from outside
   * @param holes corners clockwise seen from outside
   */
  record Face(List<Integer> ring, List<List<Integer>> holes) {}

  /**
   * A plane outline with holes carried along the third axis of its frame from 0 to {@code length}.
   *
   * @param outline counter-clockwise in the first two axes of the frame, open
   * @param holes counter-clockwise too
   */
  record Prism(Frame frame, List<double[]> outline, List<List<double[]>> holes, double length)
      implements Body {
    @Override
    public Body in(Frame outer) {
      return new Prism(outer.then(frame), outline, holes, length);
    }

    @Override
    public List<Xyz> points() {
      List<Xyz> points = new ArrayList<>();
      for (List<double[]> ring : rings()) {
        ring.forEach(p -> points.add(frame.point(new Xyz(p[0], p[1], 0))));
        ring.forEach(p -> points.add(frame.point(new Xyz(p[0], p[1], length))));
      }
      return points;
    }

    @Override
    public List<Face> faces() {
      List<Face> faces = new ArrayList<>();
      List<List<Integer>> bottoms = new ArrayList<>();
      List<List<Integer>> tops = new ArrayList<>();
      int start = 0;
      for (List<double[]> ring : rings()) {
        int n = ring.size();
        List<Integer> bottom = new ArrayList<>();
        List<Integer> top = new ArrayList<>();
        for (int i = 0; i < n; i++) {
          int next = (i + 1) % n;
          List<Integer> side = List.of(start + i, start + next, start + n + next, start + n + i);
          faces.add(new Face(start == 0 ? side : reversed(side), List.of()));
          bottom.add(start + i);
          top.add(start + n + i);
        }
        bottoms.add(start == 0 ? reversed(bottom) : bottom);
        tops.add(start == 0 ? top : reversed(top));
        start += 2 * n;
      }
      faces.add(new Face(bottoms.get(0), bottoms.subList(1, bottoms.size())));
      faces.add(new Face(tops.get(0), tops.subList(1, tops.size())));
      return faces;
    }

    private List<List<double[]>> rings() {
      List<List<double[]>> rings = new ArrayList<>();
      rings.add(outline);
      rings.addAll(holes);
      return rings;
    }

    private static List<Integer> reversed(List<Integer> ring) {
      List<Integer> turned = new ArrayList<>(ring);
      java.util.Collections.reverse(turned);
      return turned;
    }
  }

  /** A closed surface of plane faces; what no sweep can give. */
  record Polyhedron(List<Xyz> points, List<Face> faces) implements Body {
    @Override
    public Body in(Frame outer) {
      return new Polyhedron(points.stream().map(outer::point).toList(), faces);
    }
  }
}
