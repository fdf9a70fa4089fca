package org.underlee.framing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.bay.Bay;
import org.underlee.bay.BayFinder;
import org.underlee.bay.CrossingFinder;
import org.underlee.finding.InputException;
import org.underlee.finding.NotMeasured;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

class AssumedFramingTest {
  private static final double INCH = 0.0254;
  private static final double TOP = 3;

  @Test
  void aSlabOnTheHouseGetsJoistsAtTheSpacingFromTheLedgerToTheRim() {
    Framing framing = frame(List.of(slab(rectangle(4.8, 3.6), 0.03), house()), "joists=2x10@16in");
    Field field = framing.fields().findFirst().orElseThrow();
    assertThat(framing.fields()).hasSize(1);
    // 4800 mm: 11 at 406.4 mm from the left edge, the one at 4470 mm clears the last; 13 in all
    assertThat(field.lines()).hasSize(13);
    assertThat(field.frame().y().y()).isCloseTo(1, within(1e-9));
    List<Bay> bays = bays(field, List.of());
    assertThat(bays).hasSize(12);
    assertThat(bays.subList(0, 11))
        .allSatisfy(b -> assertThat(b.clearWidthHigh()).isCloseTo(14.5 * INCH, within(1e-4)));
    assertThat(bays)
        .allSatisfy(b -> assertThat(b.length()).isCloseTo(3.6 - 3 * INCH, within(1e-4)));
    assertThat(field.supports(Role.LEDGER)).hasSize(1);
    assertThat(field.supports(Role.RIM)).hasSize(1);
    assertThat(field.lines().get(0).depth()).isCloseTo(9.25 * INCH, within(1e-6));
    assertThat(field.top()).isCloseTo(TOP - 0.03, within(1e-6));
  }

  @Test
  void everyRoleOfAssumedFramingSaysSoAndIsHeldNoMoreLikelyThanNot() {
    Framing framing = frame(List.of(slab(rectangle(4.8, 3.6), 0.03), house()), "joists=2x10@16in");
    assertThat(framing.roles())
        .isNotEmpty()
        .allSatisfy(r -> assertThat(r.why()).startsWith("assumed, not in the model"))
        .allSatisfy(r -> assertThat(r.confidence()).isEqualTo(0.5))
        .allSatisfy(r -> assertThat(r.member().element().isAssumed()).isTrue());
  }

  @Test
  void theSlabItselfIsNoCrossing() {
    List<BuildingElement> model = List.of(slab(rectangle(4.8, 3.6), 0.3), house());
    AssumedFraming assumed =
        AssumedFraming.in(new Given(model), AssumedJoists.parse("joists=2x10@16in"));
    Field field = Framer.frame(assumed).fields().findFirst().orElseThrow();
    assertThat(bays(field, assumed.elements()))
        .allSatisfy(b -> assertThat(b.crossings()).isEmpty());
  }

  @Test
  void joistsLieInsideASlabThatStandsForTheWholeDeck() {
    Framing framing = frame(List.of(slab(rectangle(4.8, 3.6), 0.3), house()), "joists=2x10@16in");
    assertThat(framing.fields().findFirst().orElseThrow().top())
        .isCloseTo(TOP - INCH, within(1e-6));
  }

  @Test
  void joistsUnderASkewedEdgeEndAtTheRimAlongIt() {
    List<Vec2> skewed =
        List.of(new Vec2(0, 0), new Vec2(4.8, 0), new Vec2(4.8, 3.0), new Vec2(0, 3.6));
    Field field =
        frame(List.of(slab(skewed, 0.03), house()), "joists=2x10@16in")
            .fields()
            .findFirst()
            .orElseThrow();
    // 0.6 m over 4.8 m: the edge drops an eighth; the rim takes 1.5 in square to itself
    double rim = 1.5 * INCH * Math.hypot(1, 0.125);
    for (JoistLine line : field.lines()) {
      double u = line.right().at(0);
      double most = 3.6 - 0.125 * u - rim - 1.5 * INCH;
      assertThat(line.stretch().to()).isBetween(most - 0.01, most + 2e-4);
    }
  }

  @Test
  void aHoleInTheSlabEndsTheJoistsAtItsEdges() {
    Outline plan =
        new Outline(
            rectangle(4.8, 3.6),
            List.of(
                List.of(new Vec2(2, 1.5), new Vec2(3, 1.5), new Vec2(3, 2.5), new Vec2(2, 2.5))));
    Framing framing = frame(List.of(slab(plan, 0.03), house()), "joists=2x10@16in");
    assertThat(framing.fields().flatMap(f -> f.lines().stream()).flatMap(l -> l.plies().stream()))
        .hasSizeGreaterThan(13)
        .allSatisfy(
            j -> {
              Vec3 c = j.box().centre();
              boolean inHole = c.x() > 2 && c.x() < 3 && c.y() > 1.5 && c.y() < 2.5;
              assertThat(inHole).isFalse();
            });
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 17, 90, 133.7, 271})
  void theFramingTurnsWithTheModel(double degrees) {
    Transform turn = turn(Math.toRadians(degrees), new Vec3(3e5, -2e5, 12));
    List<BuildingElement> still = List.of(slab(rectangle(4.8, 3.6), 0.03), house());
    List<BuildingElement> turned = still.stream().map(e -> moved(e, turn)).toList();
    Field a = frame(still, "joists=2x10@16in").fields().findFirst().orElseThrow();
    Field b = frame(turned, "joists=2x10@16in").fields().findFirst().orElseThrow();
    assertThat(b.lines()).hasSameSizeAs(a.lines());
    List<Bay> before = bays(a, List.of());
    List<Bay> after = bays(b, List.of());
    assertThat(after).hasSameSizeAs(before);
    for (int i = 0; i < before.size(); i++) {
      assertThat(after.get(i).length()).isCloseTo(before.get(i).length(), within(1e-4));
      assertThat(after.get(i).clearWidthHigh())
          .isCloseTo(before.get(i).clearWidthHigh(), within(1e-4));
    }
  }

  @Test
  void withoutAWallTheWayOfTheWaterMustBeSaid() {
    List<BuildingElement> model = List.of(slab(rectangle(4.8, 3.6), 0.03));
    assertThatThrownBy(() -> frame(model, "joists=2x10@16in"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("the way of the water is unknown");
    Field field = frame(model, "joists=2x10@16in,direction=180").fields().findFirst().orElseThrow();
    assertThat(field.frame().y().x()).isCloseTo(-1, within(1e-9));
  }

  @Test
  void ofSeveralSlabsOneMustBeNamed() {
    BuildingElement first = slab(rectangle(4.8, 3.6), 0.03);
    BuildingElement second =
        new BuildingElement(
            77, "other", "IfcSlab", "roof", "", "", Optional.empty(), first.shape());
    assertThatThrownBy(() -> frame(List.of(first, second), "joists=2x8@400mm,direction=0"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("any of 2 slabs: slab \"slab\", other \"roof\"");
    assertThat(frame(List.of(first, second), "joists=2x8@400mm,direction=0,outline=slab").fields())
        .hasSize(1);
    assertThatThrownBy(
            () -> frame(List.of(first, second), "joists=2x8@400mm,direction=0,outline=none"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("outline=none: no element with a body has this GlobalId");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "joists=2x10 | does not say which joists at which spacing",
        "joists=3x11@16in | no size of lumber known here",
        "joists=2x10@16 | is not a length",
        "joists=2x10@1in | leave -13 mm between them",
        "joists=2x10@2m | leave 1962 mm between them",
        "spacing=16in | is none of joists=, direction=, outline=",
        "joists=2x10@16in,direction=north | is not a number of degrees",
        "joists=2x10@16in,joists=2x8@16in | gives joists twice"
      })
  void whatCannotBeAssumedIsRefusedWithTheReason(String text, String reason) {
    assertThatThrownBy(() -> AssumedJoists.parse(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(reason);
  }

  private record Given(List<BuildingElement> elements) implements ElementSource {
    @Override
    public List<NotMeasured> notMeasured() {
      return List.of();
    }
  }

  private static Framing frame(List<BuildingElement> model, String joists) {
    return Framer.frame(AssumedFraming.in(new Given(model), AssumedJoists.parse(joists)));
  }

  private static List<Bay> bays(Field field, List<BuildingElement> others) {
    List<BuildingElement> crossing = new ArrayList<>(others);
    crossing.removeIf(BuildingElement::isAssumed);
    return BayFinder.find(
            field,
            new CrossingFinder(
                crossing, new Framing(List.of(), List.of(), List.of(), List.of()), List.of()))
        .bays();
  }

  private static List<Vec2> rectangle(double x, double y) {
    return List.of(new Vec2(0, 0), new Vec2(x, 0), new Vec2(x, y), new Vec2(0, y));
  }

  private static BuildingElement slab(List<Vec2> plan, double thick) {
    return slab(Outline.of(plan), thick);
  }

  private static BuildingElement slab(Outline plan, double thick) {
    return prism(1, "IfcSlab", "slab", plan, TOP - thick, TOP);
  }

  /** A wall on the side y &lt; 0. */
  private static BuildingElement house() {
    return prism(2, "IfcWall", "house", Outline.rectangle(-1, -0.3, 6, -0.02), 0, 6);
  }

  private static BuildingElement prism(
      long instance, String ifcClass, String name, Outline plan, double z0, double z1) {
    return new BuildingElement(
        instance,
        name,
        ifcClass,
        name,
        "",
        "",
        Optional.empty(),
        Extrusion.straight(Transform.translation(new Vec3(0, 0, z0)), plan, z1 - z0).mesh());
  }

  private static BuildingElement moved(BuildingElement e, Transform map) {
    return new BuildingElement(
        e.instance(),
        e.globalId(),
        e.ifcClass(),
        e.name(),
        "",
        "",
        Optional.empty(),
        e.shape().transformed(map));
  }

  private static Transform turn(double angle, Vec3 by) {
    Vec3 x = new Vec3(Math.cos(angle), Math.sin(angle), 0);
    return new Transform(by, x, Vec3.Z.cross(x), Vec3.Z);
  }
}
