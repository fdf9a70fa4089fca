package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.bay.BayFinder;
import org.underlee.bay.CrossingFinder;
import org.underlee.bay.FieldBays;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Framer;
import org.underlee.framing.Framing;
import org.underlee.ifc.IfcModel;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.step.StepFile;

class BigBuildingTest {
  /** Ledger, 8 joists, rim, 2 posts, 13 boards, pipe, railing and wall, as the generator says. */
  private static final int A_BALCONY = 28;

  @TempDir Path folder;

  @Test
  void itHasTheBalconiesAndElementsAskedForAndAllOfThemAreRead() throws IOException {
    Path file = folder.resolve("building.ifc");
    BigBuilding.write(file, 4, 100);
    Survey survey = DeckRun.survey(file);
    IfcModel model = IfcModel.of(StepFile.read(file));
    assertThat(model.notMeasured()).isEmpty();
    assertThat(model.elements()).hasSize(4 * A_BALCONY + 100);
    assertThat(survey.framing().fields()).hasSize(4);
    assertThat(survey.bays()).allSatisfy(f -> assertThat(f.bays()).hasSize(7));
    assertThat(survey.bays())
        .allSatisfy(
            f -> assertThat(f.bays().stream().flatMap(b -> b.crossings().stream())).hasSize(1));
  }

  @Test
  void itsFramingIsTheSameWhenAllOfItIsMeasured() throws IOException {
    Path file = folder.resolve("building.ifc");
    BigBuilding.write(file, 4, 3000);
    Survey survey = DeckRun.survey(file);
    List<BuildingElement> all = survey.model().elements();
    Framing whole = Framer.frame(survey.model().whole());
    assertThat(told(survey.framing())).isEqualTo(told(whole)).hasSize(4 * 25);
    CrossingFinder crossings = new CrossingFinder(all, whole, List.of());
    assertThat(survey.bays()).hasSize(4);
    for (FieldBays bays : survey.bays()) {
      FieldBays same = BayFinder.find(bays.field(), crossings);
      assertThat(bays.bays()).isEqualTo(same.bays());
    }
  }

  private static List<String> told(Framing framing) {
    return framing.roles().stream()
        .map(r -> r.member().element().instance() + " " + r.role() + " " + r.why())
        .toList();
  }

  @Test
  void theSameArgumentsGiveTheSameBytes() throws IOException {
    Path one = folder.resolve("one.ifc");
    Path two = folder.resolve("two.ifc");
    BigBuilding.write(one, 1, 40);
    BigBuilding.write(two, 1, 40);
    assertThat(Files.mismatch(one, two)).isEqualTo(-1);
  }
}
