package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.bay.Bay;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanItem;
import org.underlee.run.DeckRun;
import org.underlee.units.Lengths.UnitSystem;

/** What is said of bays that are not drawn is what their own drawings would say. */
class SectionSheetTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final Pattern BAY = Pattern.compile("F\\d+-B\\d+");

  private static Job job(String sample) {
    return new Job(
        DeckRun.design(
            DeckRun.survey(ROOT.resolve("samples/" + sample + "/" + sample + ".ifc")),
            Scope.OUTSIDE,
            KitReader.builtIn()),
        new Writing(UnitSystem.IMPERIAL, "en"));
  }

  /** All texts of the two drawings that a bay would have, but for their titles. */
  private static List<String> drawn(Job job, String label) {
    List<String> texts = new ArrayList<>();
    for (Job.Place place : job.places()) {
      for (Bay bay : place.served()) {
        if (place.label(bay).equals(label)) {
          BaySections own = new BaySections(job, place, SectionCut.of(place), bay);
          Stream.of(own.along(), own.across()).forEach(d -> texts.addAll(texts(d)));
        }
      }
    }
    assertThat(texts).as(label).isNotEmpty();
    return texts;
  }

  private static List<String> texts(PlanDrawing drawing) {
    return drawing.items().stream()
        .filter(PlanItem.Label.class::isInstance)
        .map(i -> ((PlanItem.Label) i).text())
        .toList();
  }

  private static List<String> bays(String text) {
    List<String> bays = new ArrayList<>();
    for (Matcher m = BAY.matcher(text); m.find(); ) {
      bays.add(m.group());
    }
    return bays;
  }

  @Test
  void everyBayThatIsNotDrawnHasItsOwnFiguresOrThoseOfTheDrawing() {
    for (String sample : List.of("pine-deck", "harbour-balcony")) {
      Job job = job(sample);
      Set<String> named = new HashSet<>();
      String last = "";
      for (Block block : new SectionSheet(job).sheet().blocks()) {
        if (block instanceof Block.Heading h) {
          last = bays(h.text()).get(0);
          named.add(last);
        } else if (block instanceof Block.Text t) {
          for (String bay : bays(t.text())) {
            named.add(bay);
            assertThat(drawn(job, bay)).as(bay + " as " + last).isEqualTo(drawn(job, last));
          }
        } else if (block instanceof Block.Table t) {
          theRowsAreWhatIsDrawn(job, t, last, named);
        }
      }
      assertThat(named).hasSize(job.places().stream().mapToInt(p -> p.served().size()).sum());
    }
  }

  /** What has no column is as drawn. */
  private static void theRowsAreWhatIsDrawn(
      Job job, Block.Table table, String drawnBay, Set<String> named) {
    for (List<String> row : table.rows()) {
      for (String bay : bays(row.get(0))) {
        named.add(bay);
        List<String> left = new ArrayList<>(drawn(job, bay));
        List<String> asDrawn = new ArrayList<>(drawn(job, drawnBay));
        for (int c = 1; c < row.size(); c++) {
          if (!table.columns().get(c).name().startsWith("In it")) {
            takeOut(left, row.get(c));
            takeOut(asDrawn, table.rows().get(0).get(c));
          }
        }
        assertThat(left).as(bay + " but for its own figures").isEqualTo(asDrawn);
      }
    }
  }

  private static void takeOut(List<String> texts, String figure) {
    String spaced = figure.replace('\u00a0', ' ');
    if (!texts.removeIf(t -> t.equals(spaced) || t.endsWith(" " + spaced))) {
      // the length of a bay is in no text of a section
      assertThat(figure).as("drawn").matches("\\d+' \\d+.*");
    }
  }
}
