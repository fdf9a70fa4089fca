package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Vec2;

/** What parts the plan besides the faces: bays, openings of outlets, middles of joists. */
record Outlines(List<Piece> pieces, Places places) {
  /** The bays, then the openings of the outlets. */
  List<double[]> areas(List<Catchment> catchments) {
    List<double[]> areas = new ArrayList<>();
    catchments.forEach(c -> areas.add(edges(c.outline())));
    places.outlets().forEach(o -> areas.add(edges(opening(places.extent(o)))));
    return areas;
  }

  /** One half of each joist that runs down the fall, so that no column lies in both halves. */
  List<double[]> halves() {
    List<double[]> halves = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      Places.Extent e = places.extent(i);
      if (pieces.get(i).kind() == Kind.JOIST && !e.isAlongV()) {
        Places.Centre centre = places.centre(i);
        halves.add(
            edges(
                List.of(
                    new Vec2(e.min().x(), e.min().y()),
                    new Vec2(e.max().x(), e.min().y()),
                    new Vec2(e.max().x(), centre.at(e.max().x())),
                    new Vec2(e.min().x(), centre.at(e.min().x())))));
      }
    }
    return halves;
  }

  /** Where joists that run across have their middles. */
  double[] middles() {
    return IntStream.range(0, pieces.size())
        .filter(i -> pieces.get(i).kind() == Kind.JOIST && places.extent(i).isAlongV())
        .mapToDouble(i -> places.extent(i).middleU())
        .toArray();
  }

  /** The largest square in a round outlet. */
  private static List<Vec2> opening(Places.Extent e) {
    double half = (e.max().x() - e.min().x()) / 2 * Math.sqrt(0.5);
    double u = e.middleU();
    double v = e.middleV();
    return List.of(
        new Vec2(u - half, v - half),
        new Vec2(u + half, v - half),
        new Vec2(u + half, v + half),
        new Vec2(u - half, v + half));
  }

  private static double[] edges(List<Vec2> ring) {
    double[] edges = new double[4 * ring.size()];
    for (int i = 0; i < ring.size(); i++) {
      Vec2 p = ring.get(i);
      Vec2 q = ring.get((i + 1) % ring.size());
      boolean turned = q.x() < p.x();
      edges[4 * i] = turned ? q.x() : p.x();
      edges[4 * i + 1] = turned ? q.y() : p.y();
      edges[4 * i + 2] = turned ? p.x() : q.x();
      edges[4 * i + 3] = turned ? p.y() : q.y();
    }
    return edges;
  }
}
