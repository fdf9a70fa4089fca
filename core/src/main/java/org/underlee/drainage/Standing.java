package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.underlee.drainage.Piece.Kind;
import org.underlee.drainage.Sinks.Sink;
import org.underlee.geom.Vec3;

/** Tells of water that stands: how deep, how heavy, and where it runs over. */
record Standing(DrainCase given, Places places, PlanSweep plan, Sinks sinks) {
  /** Water that stands with every outlet open. */
  List<StandingWater> ponds(Fates fates) {
    return fates.pools().stream()
        .filter(p -> p.depth() > WaterRules.FILM)
        .map(p -> standing(p, Optional.empty()))
        .toList();
  }

  /** What the outlets' openings are in, by outlet: where the water stands first when it is shut. */
  private List<List<Layer>> floors() {
    List<List<Layer>> floors = new ArrayList<>();
    places.outlets().forEach(o -> floors.add(new ArrayList<>()));
    for (Column column : plan.columns()) {
      if (column.outlet() >= 0) {
        column.layers().stream()
            .filter(l -> given.pieces().get(l.piece()).kind() == Kind.GUTTER)
            .filter(l -> places.takes(column.outlet(), l))
            .forEach(floors.get(column.outlet())::add);
      }
    }
    return floors;
  }

  /**
   * Each outlet shut in turn.
   *
   * @param open where the water goes with none shut
   */
  List<StandingWater> blocked(Fates open) {
    List<StandingWater> all = new ArrayList<>();
    List<List<Layer>> floors = floors();
    for (int i = 0; i < floors.size(); i++) {
      Optional<String> outlet = Optional.of(pieceId(places.outlets().get(i)));
      Fates fates = open.without(i);
      floors.get(i).forEach(fates::of);
      fates.pools().stream()
          .max(Comparator.comparingDouble(Pool::volume))
          .ifPresent(p -> all.add(standing(p, outlet)));
    }
    return all;
  }

  private StandingWater standing(Pool pool, Optional<String> blocked) {
    Fate end = pool.end();
    String to = end == null ? "nowhere" : words(sinks.get(end.main()));
    return new StandingWater(
        pieceId(pool.piece()),
        blocked,
        pool.depth(),
        pool.area(),
        pool.volume(),
        world(pool.deepest()),
        world(pool.spillsAt()),
        to);
  }

  private String words(Sink sink) {
    return sink.cause()
        .map(c -> sink.piece() < 0 ? c.why() : c.why() + ": " + pieceId(sink.piece()))
        .orElseGet(() -> pieceId(places.outlets().get(sink.outlet())));
  }

  private String pieceId(int piece) {
    return given.pieces().get(piece).id();
  }

  private Vec3 world(Vec3 p) {
    return given.frame().apply(p);
  }
}
