package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.flow.RainData;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.units.Lengths.UnitSystem;

/** Each bay of the samples: one with a downspout was left empty, since its straps lie too low. */
class EverySectionIsDrawnTest {
  private static final Path SAMPLES =
      Path.of(System.getProperty("underlee.root", "..")).resolve("samples");

  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void noBayOfASampleHasASectionThatCannotBeDrawn(String name) {
    Survey survey = DeckRun.survey(SAMPLES.resolve(name).resolve(name + ".ifc"));
    Layout layout =
        DeckRun.layOut(
            survey,
            Scope.OUTSIDE,
            KitReader.builtIn(),
            RainData.builtIn().service(RainData.ANYWHERE));
    for (FieldBays field : survey.bays()) {
      for (Bay bay : field.bays()) {
        PlanDrawing section =
            BaySection.of(
                field,
                bay.id(),
                layout.fields().stream()
                    .filter((FieldLayout l) -> l.field().equals(field.field().id()))
                    .findFirst(),
                UnitSystem.METRIC);
        Image image = PlanRaster.draw(section, PlanSheet.of(section, 50, 5), 2, 1, Ink.DAY);
        assertThat(
                IntStream.range(0, image.width() * image.height())
                    .map(i -> image.argb(i % image.width(), i / image.width()))
                    .distinct()
                    .count())
            .as("colours in the section of %s", bay.id())
            .isGreaterThan(3);
      }
    }
  }
}
