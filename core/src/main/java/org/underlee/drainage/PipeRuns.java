package org.underlee.drainage;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.underlee.drainage.Piece.Kind;

/** Follows an outlet down its pipes. */
record PipeRuns(List<Piece> pieces, Places places, OptionalDouble ground) {

  /** What is wrong with the way from an outlet to the ground; empty when nothing is. */
  Optional<LeakCause> fault(int outlet) {
    Places.Extent above = places.extent(outlet);
    int found = 0;
    Optional<Places.Extent> next = below(above);
    while (next.isPresent() && found < pieces.size()) {
      found++;
      above = next.get();
      next = below(above);
    }
    if (found == 0) {
      return Optional.of(LeakCause.NO_DOWNSPOUT);
    }
    double bottom = above.min().z();
    boolean high =
        ground.isPresent() && bottom - ground.getAsDouble() > WaterRules.HIGHEST_DISCHARGE;
    return high ? Optional.of(LeakCause.SHORT_DOWNSPOUT) : Optional.empty();
  }

  /** The length of pipe that goes on from the foot of another: around it or right below. */
  private Optional<Places.Extent> below(Places.Extent above) {
    return IntStream.range(0, pieces.size())
        .filter(i -> pieces.get(i).kind() == Kind.PIPE)
        .mapToObj(places::extent)
        .filter(e -> e.min().z() < above.min().z() - WaterRules.PIPE_PLAY)
        .filter(e -> e.max().z() > above.min().z() - WaterRules.PIPE_PLAY)
        .filter(e -> e.holds(above.middleU(), above.middleV()))
        .min(Comparator.comparingDouble(e -> e.min().z()));
  }
}
