package org.underlee.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.kit.Items;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Why;
import org.underlee.units.Words;

class TakeoffBuilderTest {
  private static final String FIELD = "deck-1/field-1";

  private static Part cut(String id, PartKind kind, String item, double length) {
    Extrusion body =
        Extrusion.straight(Transform.IDENTITY, Outline.rectangle(0, 0, 0.1, 0.001), length);
    return new Part(
        FIELD + "/" + id,
        id,
        kind,
        FIELD,
        Optional.empty(),
        item,
        length,
        0.1,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(body),
        Optional.empty(),
        1,
        List.of(),
        Why.because(""));
  }

  private static Part screws(String id, int count) {
    return new Part(
        FIELD + "/" + id,
        id,
        PartKind.FASTENER,
        FIELD,
        Optional.empty(),
        Items.SCREW,
        0,
        0,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(),
        Optional.empty(),
        count,
        List.of(),
        Why.because(""));
  }

  private static Takeoff takeoff(Part... parts) {
    FieldLayout field =
        new FieldLayout(
            "deck-1",
            FIELD,
            Optional.empty(),
            0,
            0.01,
            3,
            "",
            Words.of(""),
            List.of(parts),
            List.of());
    return TakeoffBuilder.of(new Layout(KitReader.builtIn(), List.of(field), List.of()));
  }

  @Test
  void eachPartIsCountedOnceUnderItsItem() {
    Takeoff takeoff =
        takeoff(
            cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B1/rail-2", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B2/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 1.0),
            cut("gutter/cap-1", PartKind.END_CAP, Items.END_CAP, 0.1),
            screws("B1/screws-1", 14),
            screws("B1/screws-2", 16));
    assertThat(takeoff.lines())
        .extracting(Takeoff.Line::item)
        .containsExactly(Items.SIDE_RAIL, Items.END_CAP, Items.SCREW);
    assertThat(takeoff.lines().stream().flatMap(l -> l.parts().stream()))
        .doesNotHaveDuplicates()
        .hasSize(6);
    assertThat(takeoff.lines()).extracting(Takeoff.Line::quantity).containsExactly(5.0, 1.0, 30.0);
    assertThat(takeoff.lines())
        .extracting(Takeoff.Line::unit)
        .containsExactly("m", "piece", "piece");
  }

  @Test
  void equalPiecesAreOneRowOfTheCutListWithEveryPlaceOnce() {
    Takeoff takeoff =
        takeoff(
            cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 1.0),
            cut("B1/rail-2", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.00004),
            cut("B1/rail-3", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.00008),
            cut("B2/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0));
    assertThat(takeoff.cuts()).hasSize(2);
    Takeoff.Cut longest = takeoff.cuts().get(0);
    // rounded down to a tenth of a millimetre, so that pieces fit
    assertThat(longest.length()).isCloseTo(2.0, within(1e-9));
    assertThat(longest.count()).isEqualTo(3);
    assertThat(longest.bays()).containsExactly(FIELD + "/B1", FIELD + "/B2");
    assertThat(takeoff.cuts().get(1).length()).isCloseTo(1.0, within(1e-9));
  }

  /** By hand: 2.0 and 1.0 fill 3.048; the other 2.0 is cut from 2.4384. */
  @Test
  void whatIsBoughtHoldsWhatIsCut() {
    Takeoff takeoff =
        takeoff(
            cut("B1/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B1/rail-2", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 2.0),
            cut("B2/rail-1", PartKind.SIDE_RAIL, Items.SIDE_RAIL, 1.0));
    assertThat(takeoff.stock()).extracting(Takeoff.Stock::pieces).containsExactly(1, 1);
    assertThat(takeoff.bought(Items.SIDE_RAIL)).isCloseTo(3.048 + 2.4384, within(1e-9));
    assertThat(takeoff.bought().get(Items.SIDE_RAIL).isProvenLeast()).isTrue();
    assertThat(takeoff.bought(Items.PAN_SHEET)).isZero();
  }

  @Test
  void anEmptyLayoutNeedsNothing() {
    Takeoff takeoff = takeoff();
    assertThat(takeoff.lines()).isEmpty();
    assertThat(takeoff.cuts()).isEmpty();
    assertThat(takeoff.stock()).isEmpty();
    assertThat(takeoff.bought()).isEmpty();
  }
}
