package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.panel.model.Section.Axis;
import org.underlee.panel.model.Section.Range;

class SectionTest {
  private static final Box WHOLE = new Box(new Vec3(-1, 2, 0), new Vec3(9, 6, 3));

  @Test
  void aRangeNeverTurnsRoundAndNeverLeavesTheWhole() {
    Range range = new Range(0.2, 0.6);
    assertThat(range.withFrom(0.9).from()).isLessThan(0.6);
    assertThat(range.withTo(0.1).to()).isGreaterThan(0.2);
    assertThat(new Range(-3, 7)).isEqualTo(new Range(0, 1));
    assertThat(range.withFrom(0.3)).isEqualTo(new Range(0.3, 0.6));
  }

  @Test
  void sharesOfTheWholeBecomePlacesInTheFrame() {
    Section section = Section.OFF.turned(true).with(Axis.ACROSS, new Range(0.25, 0.5));
    Box box = section.box(Transform.IDENTITY, WHOLE).box();
    assertThat(box.min().x()).isCloseTo(1.5, within(1e-9));
    assertThat(box.max().x()).isCloseTo(4, within(1e-9));
    assertThat(box.min().y()).isLessThan(2);
    assertThat(box.max().z()).isGreaterThan(3);
  }

  @Test
  void aBoxAroundAThingHoldsItWithALittleRoom() {
    Box thing = new Box(new Vec3(2, 3, 1), new Vec3(3, 4, 2));
    Section section = Section.around(thing, WHOLE);
    Box box = section.box(Transform.IDENTITY, WHOLE).box();
    assertThat(section.on()).isTrue();
    for (Axis axis : Axis.values()) {
      assertThat(axis.of(box.min())).isBetween(axis.of(thing.min()) - 0.1, axis.of(thing.min()));
      assertThat(axis.of(box.max())).isBetween(axis.of(thing.max()), axis.of(thing.max()) + 0.1);
    }
  }

  @Test
  void nothingIsCutAwayWhileItIsOffOrLeftWhole() {
    assertThat(Section.OFF.with(Axis.UP, new Range(0, 0.5)).cutsNothing()).isTrue();
    assertThat(Section.OFF.turned(true).cutsNothing()).isTrue();
    assertThat(Section.OFF.turned(true).with(Axis.UP, new Range(0, 0.5)).cutsNothing()).isFalse();
  }
}
