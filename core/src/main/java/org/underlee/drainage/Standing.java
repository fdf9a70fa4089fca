package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.underlee.drainage.Piece.Kind;
import org.underlee.drainage.Sinks.Sink;
import org.underlee.finding.StopSign;
import org.underlee.geom.Vec3;

/** Tells of water that stands: how deep, how heavy, and where it runs over. */
record Standing(DrainCase given, Places places, PlanSweep plan) {
  /** Enough that processors wait little for each other, and few enough to cost nothing. */
  private static final int AT_ONCE = 4;

  /** Water that stands with every outlet open. */
  List<StandingWater> ponds(Fates fates) {
    return fates.pools().stream()
        .filter(p -> p.depth() > WaterRules.FILM)
        .map(p -> standing(p, fates.sinks(), Optional.empty()))
        .toList();
  }

  /** What the outlets' openings are in, by outlet: where the water stands first when it is shut. */
  List<List<Layer>> floors() {
    List<List<Layer>> floors = new ArrayList<>();
    places.outlets().forEach(o -> floors.add(new ArrayList<>()));
    for (Column column : plan.columns()) {
      if (column.outlet() >= 0) {
        Arrays.stream(column.layers())
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
    StopSign stop = StopSign.here();
    List<List<Layer>> floors = floors();
    return IntStream.range(0, AT_ONCE)
        .parallel()
        .mapToObj(part -> blocked(part, floors, open, stop))
        .flatMap(List::stream)
        .toList();
  }

  /** One of the equal parts that the outlets are shared out in, one case after the other. */
  private List<StandingWater> blocked(
      int part, List<List<Layer>> floors, Fates open, StopSign stop) {
    List<StandingWater> found = new ArrayList<>();
    FateBoard board = new FateBoard(plan.layers());
    int end = (part + 1) * floors.size() / AT_ONCE;
    for (int i = part * floors.size() / AT_ONCE; i < end; i++) {
      stop.obey();
      blocked(i, open.without(i, board.clear()), floors.get(i)).ifPresent(found::add);
    }
    return found;
  }

  Optional<StandingWater> blocked(int outlet, Fates fates, List<Layer> floor) {
    floor.forEach(fates::of);
    Optional<String> id = Optional.of(pieceId(places.outlets().get(outlet)));
    return fates.pools().stream()
        .max(Comparator.comparingDouble(p -> p.wet().volume()))
        .map(p -> standing(p, fates.sinks(), id));
  }

  private StandingWater standing(Pool pool, Sinks sinks, Optional<String> blocked) {
    Fate end = pool.end();
    String to = end == null ? "nowhere" : words(sinks.get(end.main()));
    return new StandingWater(
        pieceId(pool.piece()),
        blocked,
        pool.depth(),
        pool.wet().area(),
        pool.wet().volume(),
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
