package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.bay.Bay;
import org.underlee.drainage.flow.RainData;
import org.underlee.finding.InputException;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Field;
import org.underlee.framing.Member;
import org.underlee.geom.Interval;
import org.underlee.kit.KitReader;
import org.underlee.layout.Layout;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.run.DeckRun;
import org.underlee.run.DryZones;
import org.underlee.run.Survey;

/** What stands below a deck in the model can be named as what must stay dry. */
class DryZonesTest {
  private static final double TOUCH = 0.001;

  private static final SampleDeck DECK = PineDeck.sample();
  private static final Survey SURVEY =
      DeckRun.survey(IfcEmitter.emit(DECK, DECK.ownMix()), "pine.ifc");

  private static Layout keepingDry(String text) {
    Wishes wishes = Wishes.NONE.keepingDry(DryZones.of(SURVEY, text));
    return DeckRun.layOut(
        SURVEY,
        Scope.OUTSIDE.with(wishes),
        KitReader.builtIn(),
        RainData.builtIn().service(RainData.ANYWHERE));
  }

  @Test
  void theBaysOverAPostAreThoseThatItsPlanReachesInto() {
    Field field = SURVEY.bays().get(0).field();
    Member post = field.posts().get(0);
    Interval across = field.shapeOf(post).across();
    double v = field.shapeOf(post).along().middle();
    List<String> over =
        SURVEY.bays().get(0).bays().stream()
            .filter(b -> clear(b, v).meet(across).length() > TOUCH)
            .map(Bay::id)
            .toList();
    assertThat(over).isNotEmpty().hasSizeLessThan(SURVEY.bays().get(0).bays().size());
    assertThat(keepingDry(post.id()).fields().get(0).bays()).isEqualTo(over);
  }

  private static Interval clear(Bay bay, double v) {
    return new Interval(bay.leftFace().at(v), bay.rightFace().at(v));
  }

  @Test
  void aSlabBelowNoBayIsRefusedAndSoIsANameThatNothingHas() {
    BuildingElement slab =
        SURVEY.model().elements().stream()
            .filter(e -> e.ifcClass().equals("IfcSlab"))
            .findFirst()
            .orElseThrow();
    assertThatThrownBy(() -> keepingDry(slab.name()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no bay");
    assertThatThrownBy(() -> keepingDry("Winter garden"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("Winter garden");
  }
}
