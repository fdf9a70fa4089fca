package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;

class StepInstanceTest {
  private static StepInstance of(String values) {
    return StepTexts.data("#1=IFCWALL(" + values + ");", "#2=IFCDOOR('d');", "#3=IFCSLAB($);")
        .decode(0);
  }

  @Test
  void rowsOfNumbersAreReadThroughTheirTypes() {
    StepInstance grid = of("((1.,2.),(IFCLENGTHMEASURE(3.)),()),(1.,(2.)),$");
    assertThat(grid.numberRows(0)).isDeepEqualTo(new double[][] {{1, 2}, {3}, {}});
    assertThat(grid.numberRows(2)).isEmpty();
    assertThatThrownBy(() -> grid.numberRows(1))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("attribute 2 should be a list of lists but is the number 1.");
  }

  @Test
  void referencesAreFollowedOneAndMany() {
    StepInstance wall = of("#2,(#3,#2),(#2,'x'),$");
    assertThat(wall.refs(1)).containsExactly(3, 2);
    assertThat(wall.refs(3)).isEmpty();
    assertThat(wall.followAll(1))
        .extracting(StepInstance::keyword)
        .containsExactly("IFCSLAB", "IFCDOOR");
    assertThat(wall.follow(0).text(0)).isEqualTo("d");
    assertThat(wall.optionalFollow(0).orElseThrow().id()).isEqualTo(2);
    assertThat(wall.optionalFollow(3)).isEmpty();
    assertThat(wall.optionalRef(0)).hasValue(2);
    assertThat(wall.resolve(3).keyword()).isEqualTo("IFCSLAB");
    assertThatThrownBy(() -> wall.resolve(9)).hasMessageContaining("IFCWALL refers to #9");
    assertThatThrownBy(() -> wall.refs(2)).hasMessageContaining("a list of references");
  }

  @Test
  void whatMayBeLeftOutIsEmptyAndElseItsValue() {
    StepInstance wall = of("$,*,'name',2.5,.NOTDEFINED.");
    for (int left : List.of(0, 1, 5, 99)) {
      assertThat(wall.isOmitted(left)).as("attribute %s", left).isTrue();
      assertThat(wall.optionalText(left)).isEmpty();
      assertThat(wall.optionalNumber(left)).isEmpty();
      assertThat(wall.optionalEnumeration(left)).isEmpty();
      assertThat(wall.list(left)).isEmpty();
    }
    assertThat(wall.optionalText(2)).contains("name");
    assertThat(wall.optionalNumber(3)).hasValue(2.5);
    assertThat(wall.optionalEnumeration(4)).contains("NOTDEFINED");
    assertThat(wall.isOmitted(4)).isFalse();
    assertThat(wall.size()).isEqualTo(5);
    assertThat(wall.value(4)).isEqualTo(new StepValue.Enumeration("NOTDEFINED"));
  }

  @Test
  void onlyAWrittenTrueIsTrue() {
    StepInstance flags = of(".T.,.F.,.U.,$,IFCBOOLEAN(.T.),'T'");
    assertThat(flags.isTrue(0)).isTrue();
    assertThat(flags.isTrue(4)).isTrue();
    for (int other : List.of(1, 2, 3, 17)) {
      assertThat(flags.isTrue(other)).as("attribute %s", other).isFalse();
    }
    assertThatThrownBy(() -> flags.isTrue(5)).hasMessageContaining("an enumeration");
  }

  @Test
  void itsTextShowsItsNumberKeywordAndValues() {
    assertThat(of("'a',#2").toString()).startsWith("#1=IFCWALL").contains("a").contains("2");
  }

  @Test
  void aComplexInstanceHasPartsAndNoKeywordOfItsOwn() {
    StepInstance unit =
        StepTexts.data("#1=( IFCNAMEDUNIT(*,.LENGTHUNIT.) IFCSIUNIT($,.METRE.) );").decode(0);
    assertThat(unit.keyword()).isEmpty();
    assertThat(unit.values()).isEmpty();
    assertThat(unit.parts())
        .extracting(StepInstance::keyword)
        .containsExactly("IFCNAMEDUNIT", "IFCSIUNIT");
    assertThat(unit.parts().get(1).enumeration(1)).isEqualTo("METRE");
    assertThat(unit.parts()).allSatisfy(p -> assertThat(p.id()).isEqualTo(1));
  }
}
