package org.underlee.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.flow.Mark;
import org.underlee.drainage.flow.ProofData;
import org.underlee.drainage.flow.Storm;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Field;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.run.DeckRun;
import org.underlee.units.Flows;
import org.underlee.units.Lengths;
import org.underlee.units.RainRates;

class WallsAboveTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final double SHARE = ProofData.builtIn().get(ProofData.Key.WALL_SHARE);

  private static final Field FIELD =
      DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc")).bays().get(0).field();

  /** A box in the field's frame, heights from the joist tops. */
  private static BuildingElement wall(
      String ifcClass, double u0, double u1, double v0, double v1, double low, double high) {
    Vec3 top = new Vec3(0, 0, FIELD.top() - FIELD.frame().origin().z() + low);
    Mesh local =
        Extrusion.straight(
                Transform.translation(top), Outline.rectangle(u0, v0, u1, v1), high - low)
            .mesh();
    return new BuildingElement(
        7, "0wall", ifcClass, "", "", "", Optional.empty(), local.transformed(FIELD.frame()));
  }

  private static double area(List<BuildingElement> walls, Interval across) {
    return WallsAbove.among(walls, SHARE).area(FIELD, across);
  }

  /** Trade facts C31: 192 ft² of deck, a wall of 16 by 9 ft, 8 in/h: 264 ft², 21.94 gpm. */
  @Test
  void aWallOfSixteenByNineFeetAddsSeventyTwoSquareFeet() {
    double foot = Lengths.FOOT;
    Interval whole = new Interval(-0.5 * foot, 15.5 * foot);
    BuildingElement wall = wall("IfcWall", whole.from(), whole.to(), -0.5, -0.05, -3, 9 * foot);
    double area = 192 * foot * foot + area(List.of(wall), whole);
    assertThat(area / (foot * foot)).isCloseTo(264, within(0.01));
    Storm storm =
        new Storm("C31", 8 * RainRates.INCH_PER_HOUR, Storm.Kind.CODE, "trade facts", Mark.DERIVED);
    assertThat(storm.flow(area) / Flows.GPM).isCloseTo(21.94, within(0.01));
  }

  @Test
  void bayByBayTheSameComesTogether() {
    BuildingElement wall = wall("IfcWallStandardCase", 0.7, 3.2, -0.5, -0.05, -3, 2);
    double sum = 0;
    for (double u = 0; u < 4; u += 0.5) {
      sum += area(List.of(wall), new Interval(u, u + 0.5));
    }
    assertThat(sum).isCloseTo(area(List.of(wall), new Interval(0, 4)), within(1e-9));
    assertThat(sum).isCloseTo(SHARE * 2.5 * 2, within(1e-9));
  }

  @Test
  void wallsBehindAndOverEachOtherCountOnce() {
    BuildingElement one = wall("IfcWall", 0, 4, -0.3, -0.05, -3, 2);
    BuildingElement cladding = wall("IfcWall", 0, 4, -0.05, -0.01, 0, 2);
    BuildingElement upper = wall("IfcWall", 0, 4, -0.3, -0.05, 2, 3);
    assertThat(area(List.of(one, cladding, upper), new Interval(0, 4)))
        .isCloseTo(SHARE * 4 * 3, within(1e-9));
  }

  @Test
  void aWallAtTheSideAddsToTheOutermostBayOnly() {
    Interval width = FIELD.across();
    Interval along = FIELD.along();
    BuildingElement side =
        wall("IfcWall", width.to() + 0.05, width.to() + 0.3, along.from(), along.to(), 0, 2);
    Interval first = new Interval(width.from(), width.from() + 0.4);
    Interval last = new Interval(width.to() - 0.4, width.to());
    assertThat(area(List.of(side), first)).isZero();
    assertThat(area(List.of(side), last)).isCloseTo(SHARE * along.length() * 2, within(1e-9));
  }

  @Test
  void whatStandsApartOrBelowOrIsNoWallAddsNothing() {
    Interval whole = new Interval(0, 4);
    assertThat(area(List.of(wall("IfcWall", 0, 4, -3, -2, 0, 2)), whole)).isZero();
    assertThat(area(List.of(wall("IfcWall", 0, 4, -0.3, -0.05, -3, -0.1)), whole)).isZero();
    assertThat(area(List.of(wall("IfcRailing", 0, 4, -0.3, -0.05, 0, 2)), whole)).isZero();
  }
}
