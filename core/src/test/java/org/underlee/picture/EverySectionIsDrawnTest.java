package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
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
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** Each bay of the samples: one with a downspout was left empty, since its straps lie too low. */
class EverySectionIsDrawnTest {
  private static final Path SAMPLES =
      Path.of(System.getProperty("underlee.root", "..")).resolve("samples");

  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void noBayOfASampleHasASectionThatCannotBeDrawn(String name) {
    Survey survey = DeckRun.survey(SAMPLES.resolve(name).resolve(name + ".ifc"));
    Layout layout = layout(survey);
    for (FieldBays field : survey.bays()) {
      for (Bay bay : field.bays()) {
        ScaledDrawing section =
            BaySection.of(field, bay.id(), own(layout, field), UnitSystem.METRIC);
        Image image = PlanRaster.draw(section.at(50), PlanSheet.of(section, 50, 5), 2, 1, Ink.DAY);
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

  /** Once a low seat was without its number, and a run too: on a screen they were left out. */
  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void atEveryScaleEachNumberOfEachSectionCanBeRead(String name) {
    Survey survey = DeckRun.survey(SAMPLES.resolve(name).resolve(name + ".ifc"));
    Layout layout = layout(survey);
    for (FieldBays field : survey.bays()) {
      Optional<FieldLayout> own = own(layout, field);
      for (Bay bay : field.bays()) {
        for (UnitSystem units : UnitSystem.values()) {
          ScaledDrawing section = BaySection.of(field, bay.id(), own, units);
          for (int scale : List.of(5, 20, 35, 50, 75, 100, 200, 500)) {
            eachNumberCanBeRead(
                section.at(scale), scale, Lengths.format(own.orElseThrow().run(), units));
          }
        }
      }
    }
  }

  private static void eachNumberCanBeRead(PlanDrawing section, int scale, String run) {
    List<PlanItem> read = section.legibleOn(PlanSheet.of(section, scale, 5)).items();
    assertThat(read).as(section.title() + " at 1:" + scale).hasSameSizeAs(section.items());
    List<String> texts =
        read.stream()
            .filter(PlanItem.Label.class::isInstance)
            .map(i -> ((PlanItem.Label) i).text())
            .toList();
    for (String needed : List.of("high seat ", "low seat ", "gutter ", "1:", run)) {
      assertThat(texts).as(section.title()).anyMatch(t -> t.startsWith(needed));
    }
    assertThat(texts).anyMatch(t -> t.endsWith(" to the ground"));
  }

  private static Layout layout(Survey survey) {
    return DeckRun.layOut(
        survey, Scope.OUTSIDE, KitReader.builtIn(), RainData.builtIn().service(RainData.ANYWHERE));
  }

  private static Optional<FieldLayout> own(Layout layout, FieldBays field) {
    return layout.fields().stream()
        .filter((FieldLayout l) -> l.field().equals(field.field().id()))
        .findFirst();
  }
}
