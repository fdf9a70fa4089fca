package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.Sinks.Sink;
import org.underlee.geom.Vec3;

/** Shares of ends, and the boards and lists that they are kept on. */
class FatesByHandTest {
  private static Fate mixed(List<Fate> ends, List<Double> weights) {
    double[] all = weights.stream().mapToDouble(w -> w).toArray();
    return Fate.mixed(ends.toArray(new Fate[0]), all, all.length);
  }

  @Test
  void aMixtureHasTheWeightedSharesOfItsEnds() {
    Fate half = mixed(List.of(Fate.of(7), Fate.of(3)), List.of(2.0, 2.0));
    // A quarter of the half-and-half, and three quarters of end 3.
    Fate mixed = mixed(List.of(half, Fate.of(3), Fate.of(1)), List.of(1.0, 2.0, 1.0));
    assertThat(mixed.ends()).isEqualTo(3);
    assertThat(List.of(mixed.sink(0), mixed.sink(1), mixed.sink(2))).containsExactly(1, 3, 7);
    assertThat(mixed.share(0)).isCloseTo(0.25, within(1e-12));
    assertThat(mixed.share(1)).isCloseTo(0.625, within(1e-12));
    assertThat(mixed.share(2)).isCloseTo(0.125, within(1e-12));
    assertThat(mixed.main()).isEqualTo(3);
    assertThat(half.main()).isEqualTo(3);
    assertThat(Fate.of(9).main()).isEqualTo(9);
  }

  @Test
  void aMixtureOfOneEndIsThatEnd() {
    Fate end = Fate.of(4);
    assertThat(mixed(List.of(end, Fate.of(4)), List.of(1.0, 5.0))).isSameAs(end);
    assertThat(mixed(List.of(end, Fate.of(5)), List.of(1.0, 1.0)).ends()).isEqualTo(2);
    Fate both = mixed(List.of(end, Fate.of(5)), List.of(1.0, 1.0));
    assertThat(mixed(List.of(end, both), List.of(1.0, 1.0)).share(0))
        .isCloseTo(0.75, within(1e-12));
  }

  @Test
  void waterLeadsToAnEndThatTakesAnyOfIt() {
    Fate both = mixed(List.of(Fate.of(0), Fate.of(2)), List.of(1.0, 9.0));
    assertThat(both.leadsTo(new boolean[] {true, false, false})).isTrue();
    assertThat(both.leadsTo(new boolean[] {false, true, false})).isFalse();
    assertThat(both.leadsTo(new boolean[] {false, false, true})).isTrue();
  }

  @Test
  void aClearedBoardForgetsTheFatesOfAThousandLayers() {
    FateBoard board = new FateBoard(1000);
    for (int i = 0; i < 1000; i++) {
      board.set(i, Fate.of(i));
    }
    board.set(999, Fate.of(5));
    assertThat(board.get(999).main()).isEqualTo(5);
    assertThat(board.get(1).main()).isEqualTo(1);
    int pool = board.nextPool();
    board.put(3, pool);
    assertThat(board.isIn(3, pool)).isTrue();
    assertThat(board.isIn(4, pool)).isFalse();
    assertThat(board.clear()).isSameAs(board);
    for (int i = 0; i < 1000; i++) {
      assertThat(board.get(i)).isNull();
    }
    assertThat(board.nextPool()).isNotEqualTo(pool);
  }

  @Test
  void anEndIsToldByTheFirstPlaceThatWaterCameToItAt() {
    Sinks sinks = new Sinks();
    Fate edge = sinks.reached(Sink.leak(LeakCause.EDGE, 2, 0), new Vec3(1, 2, 3));
    Fate outlet = sinks.reached(Sink.outlet(0, 5), new Vec3(4, 5, 6));
    assertThat(sinks.reached(Sink.leak(LeakCause.EDGE, 2, 0), new Vec3(7, 7, 7))).isSameAs(edge);
    assertThat(sinks.size()).isEqualTo(2);
    assertThat(sinks.at(edge.main())).isEqualTo(new Vec3(1, 2, 3));
    assertThat(sinks.get(outlet.main()).piece()).isEqualTo(5);
    assertThat(sinks.get(edge.main()).cause()).isEqualTo(Optional.of(LeakCause.EDGE));
    assertThat(sinks.in(0)).containsExactly(false, true);
    Sinks copy = sinks.copy();
    copy.reached(Sink.outlet(1, 5), Vec3.ZERO);
    assertThat(copy.size()).isEqualTo(3);
    assertThat(copy.reached(Sink.outlet(0, 5), Vec3.ZERO)).isSameAs(outlet);
    assertThat(copy.at(0)).isEqualTo(new Vec3(1, 2, 3));
    assertThat(sinks.size()).isEqualTo(2);
  }
}
