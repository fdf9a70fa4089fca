package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.geom.Vec2;

/**
 * The partition of the plan and who lies beside whom, against the slow obvious way: which outlines
 * hold a place, one by one.
 */
class SweepAgainstPointsTest {
  private static final int PLACES = 600;

  private static final double CLEAR = RandomPlan.CLEAR;

  private static List<Integer> pieces(Column column) {
    return Stream.of(column.layers()).map(Layer::piece).toList();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void theColumnAtAPlaceHasTheTilesThatHoldIt(long seed) {
    RandomPlan plan = new RandomPlan(seed, 3);
    Random random = new Random(seed);
    for (int i = 0; i < PLACES; i++) {
      Vec2 p = new Vec2(6 * random.nextDouble() - 1, 6 * random.nextDouble() - 1);
      if (!plan.isNearAnEdge(p)) {
        Column column = plan.neighbours.at(p.x(), p.y());
        assertThat(pieces(column)).as("%s", p).isEqualTo(plan.over(p));
        assertThat(column.catchment()).as("%s", p).isEqualTo(plan.bay(p));
        assertThat(column.outlet())
            .as("%s", p)
            .isEqualTo(RandomPlan.holds(plan.opening, p) ? 0 : -1);
        for (Layer layer : column.layers()) {
          assertThat(layer.topAt() - layer.bottomAt()).isEqualTo(0.5);
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void theColumnsOfATileAddUpToItsArea(long seed) {
    RandomPlan plan = new RandomPlan(seed, 3);
    double[] areas = new double[RandomPlan.TILES];
    double[] bays = new double[2];
    for (Column column : plan.sweep.columns()) {
      pieces(column).forEach(i -> areas[i] += column.area());
      if (column.catchment() >= 0) {
        bays[column.catchment()] += column.area();
      }
    }
    for (int i = 0; i < RandomPlan.TILES; i++) {
      double area = org.underlee.geom.Outline.signedArea(plan.tiles.get(i));
      assertThat(areas[i]).as("tile %d", i).isCloseTo(area, within(1e-3));
    }
    assertThat(bays[0]).isCloseTo(2.8 * 1.3, within(1e-3));
    assertThat(bays[1]).isCloseTo(2.8 * 2.2, within(1e-3));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void itComesOutTheSameInOneStretchAndInMany(long seed) {
    List<List<Vec2>> one =
        new RandomPlan(seed, 1).sweep.columns().stream().map(Column::outline).toList();
    assertThat(new RandomPlan(seed, 7).sweep.columns().stream().map(Column::outline).toList())
        .isEqualTo(one);
    assertThat(one).hasSizeGreaterThan(100);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void columnsAndLayersAreNumberedInOrder(long seed) {
    RandomPlan plan = new RandomPlan(seed, 3);
    int layers = 0;
    List<Column> columns = plan.sweep.columns();
    for (int i = 0; i < columns.size(); i++) {
      assertThat(columns.get(i).number()).isEqualTo(i);
      assertThat(columns.get(i).firstLayer()).isEqualTo(layers);
      layers += columns.get(i).layers().length;
      int[] slab = plan.sweep.slabs().get(columns.get(i).slab());
      assertThat(i).isBetween(slab[0], slab[1] - 1);
    }
    assertThat(plan.sweep.layers()).isEqualTo(layers);
    assertThat(columns).isSortedAccordingTo(Comparator.comparingDouble(Column::left));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void whatLiesBesideASideIsWhatHoldsThePlaceJustBeyondIt(long seed) {
    RandomPlan plan = new RandomPlan(seed, 3);
    int asked = 0;
    for (Column column : plan.sweep.columns()) {
      List<Side> sides = new ArrayList<>(plan.neighbours.along(column));
      sides.addAll(plan.neighbours.across(column));
      for (Side side : sides) {
        Vec2 beyond = new Vec2(side.u() + CLEAR / 2 * side.du(), side.v() + CLEAR / 2 * side.dv());
        if (side.length() > CLEAR
            && !isNarrow(side.beyond())
            && !isNearAnotherColumn(plan, side, beyond)) {
          assertThat(plan.neighbours.at(beyond.x(), beyond.y())).isSameAs(side.beyond());
          asked++;
        }
      }
    }
    assertThat(asked).isGreaterThan(200);
  }

  private static boolean isNarrow(Column c) {
    return c != Column.NOTHING && Math.min(c.width(), c.high() - c.low()) < CLEAR;
  }

  /** Where the place is not clearly within one column, as the next one is narrow or slanted. */
  private static boolean isNearAnotherColumn(RandomPlan plan, Side side, Vec2 p) {
    Column here = plan.neighbours.at(p.x(), p.y());
    double step = 0.45 * CLEAR;
    return Stream.of(
            plan.neighbours.at(p.x() + step, p.y()),
            plan.neighbours.at(p.x() - step, p.y()),
            plan.neighbours.at(p.x(), p.y() + step),
            plan.neighbours.at(p.x(), p.y() - step))
        .anyMatch(c -> c != here);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void theSidesOfAColumnAreAsLongAsItsEdges(long seed) {
    RandomPlan plan = new RandomPlan(seed, 3);
    for (Column c : plan.sweep.columns()) {
      assertThat(length(plan.neighbours.across(c, -1)))
          .isCloseTo(c.highLeft() - c.lowLeft(), within(2 * Neighbours.LEFT_OUT));
      assertThat(length(plan.neighbours.across(c, 1)))
          .isCloseTo(c.highRight() - c.lowRight(), within(2 * Neighbours.LEFT_OUT));
      assertThat(plan.neighbours.along(c)).hasSize(2).allMatch(s -> s.length() == c.width());
    }
  }

  private static double length(List<Side> sides) {
    return sides.stream().mapToDouble(Side::length).sum();
  }
}
