package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.InputException;
import org.underlee.ifc.IfcModel;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.GutterPlaces;
import org.underlee.layout.OutletWishes;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.step.StepFile;

/** Outlets are where the user wants them, or it is said with numbers why not. */
class OutletWishesTest {
  private static final Path SAMPLE =
      Path.of(System.getProperty("underlee.root", "."), "samples/pine-deck/pine-deck.ifc");
  private static final double SAME = 1e-6;
  private static final Storm STORM = RainData.builtIn().service(RainData.ANYWHERE);
  private static Survey survey;
  private static FieldLayout own;

  @BeforeAll
  static void read() {
    survey = DeckRun.survey(SAMPLE);
    own = layOut(OutletWishes.NONE, STORM);
  }

  private static Scope scope(OutletWishes wishes) {
    return Scope.OUTSIDE.with(Wishes.NONE.withOutlets(wishes));
  }

  private static FieldLayout layOut(OutletWishes wishes, Storm storm) {
    return DeckRun.layOut(survey, scope(wishes), KitReader.builtIn(), storm).fields().get(0);
  }

  private static OutletWishes at(Double... metres) {
    return OutletWishes.NONE.with(survey.bays().get(0).field().id(), List.of(metres));
  }

  private static GutterPlaces gutter(FieldLayout layout) {
    return layout.gutter().orElseThrow();
  }

  private static List<Part> outlets(FieldLayout layout) {
    return layout.parts().stream().filter(p -> p.kind() == PartKind.OUTLET).toList();
  }

  @Test
  void eachOutletIsWhereItWasAskedForAndTheGutterFallsToIt() {
    double middle = Math.rint(gutter(own).length() * 5) / 10 + 0.05;
    FieldLayout one = layOut(at(middle), STORM);
    assertThat(gutter(one).outlets()).hasSize(1);
    assertThat(gutter(one).outlets().get(0)).isCloseTo(middle, within(SAME));
    Part outlet = outlets(one).get(0);
    assertThat(gutter(one).along(outlet.bounds().centre())).isCloseTo(middle, within(SAME));
    assertThat(outlet.why().reason().toString()).contains("where you asked for it");

    FieldLayout two = layOut(at(0.5, middle), STORM);
    assertThat(outlets(two)).hasSize(2);
    assertThat(two.parts().stream().filter(p -> p.kind() == PartKind.GUTTER)).hasSize(4);
  }

  @Test
  void aPlaceBesideAPostIsFixedToThePostThoughItIsAMillimetreOff() {
    double post = gutter(own).posts().get(0);
    FieldLayout beside = layOut(at(post + 0.004), STORM);
    assertThat(gutter(beside).outlets().get(0)).isCloseTo(post, within(SAME));
    assertThat(beside.parts()).anyMatch(p -> p.kind() == PartKind.STRAP);
    FieldLayout off = layOut(at(post + 0.3), STORM);
    assertThat(off.parts()).noneMatch(p -> p.kind() == PartKind.STRAP);
  }

  @Test
  void whatCannotBeIsRefusedWithItsNumbers() {
    double length = gutter(own).length();
    assertThatThrownBy(() -> layOut(at(length + 1), STORM))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(String.format("%.3f m is not on the gutter", length + 1))
        .hasMessageContaining(String.format("to %.3f m", length - 0.1));
    assertThatThrownBy(() -> layOut(at(1.0, 1.05), STORM))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("1.000 m and 1.050 m");
    OutletWishes elsewhere = OutletWishes.NONE.with("deck-9/field-1", List.of(1.0));
    assertThatThrownBy(() -> layOut(elsewhere, STORM))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("deck-9/field-1");
  }

  @Test
  void anOutletThatLacksMoreThanTheProgramsOwnIsRefusedWithHowMuchOfTheRainItCarries() {
    Storm storm = hardestForOne();
    assertThatThrownBy(() -> layOut(at(0.5), storm))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("% of the rain");
  }

  /** The first rain that takes the program two outlets or more. */
  private static Storm hardestForOne() {
    for (int rate = 4; rate < 60; rate += 2) {
      Storm storm = RainData.builtIn().meant(rate + "in/h").orElseThrow();
      if (outlets(layOut(OutletWishes.NONE, storm)).size() > 1) {
        return storm;
      }
    }
    throw new AssertionError("no rain takes two outlets");
  }

  @Test
  void placesAreKeptInTheModelAndReadAgain() {
    double post = gutter(own).posts().get(0);
    OutletWishes wishes = at(post);
    Design design = DeckRun.design(survey, scope(wishes), KitReader.builtIn(), STORM);
    StepFile drained =
        StepFile.of(design.written().bytes(), "drained.ifc", survey.request().limits());
    assertThat(Decisions.in(IfcModel.of(drained)).scope().wishes().outlets()).isEqualTo(wishes);
  }

  @Test
  void theTextSaysTheSameAgainAndASlipIsTold() {
    OutletWishes two = OutletWishes.parse("deck-1/field-2=1 deck-1/field-1=3.2,0.45");
    assertThat(two.text()).isEqualTo("deck-1/field-1=0.45,3.2 deck-1/field-2=1");
    assertThat(OutletWishes.parse(two.text())).isEqualTo(two);
    assertThat(two.with("deck-1/field-1", List.of()).places()).containsOnlyKeys("deck-1/field-2");
    for (String slip : List.of("deck-1/field-1", "=1", "deck-1/field-1=a", "deck-1/field-1=NaN")) {
      assertThatThrownBy(() -> OutletWishes.parse(slip))
          .isInstanceOf(InputException.class)
          .hasMessageContaining(slip);
    }
  }

  @Test
  void noFieldIsToldWhereNothingIsAsked() {
    assertThat(OutletWishes.NONE.of("deck-1/field-1")).isEmpty();
    assertThat(Optional.of(OutletWishes.NONE.text())).contains("");
  }
}
