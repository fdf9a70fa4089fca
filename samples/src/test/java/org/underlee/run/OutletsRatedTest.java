package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.check.OutletRatings;
import org.underlee.drainage.flow.CapacityData;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Rating;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.KitReader;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.report.ExplainJson;
import org.underlee.report.RatingsText;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;
import org.underlee.units.Flows;
import org.underlee.units.Lengths.UnitSystem;

/** All that the methods say of an outlet is shown, not what governs alone. */
class OutletsRatedTest {
  private static final Storm RAIN = RainData.builtIn().service(RainData.ANYWHERE);
  private static final Design DESIGN =
      DeckRun.design(
          DeckRun.survey(IfcEmitter.emit(SampleDecks.all().get(1), Mix.PLAIN), "deck.ifc"),
          Scope.OUTSIDE,
          KitReader.builtIn(),
          RAIN);

  private static OutletRatings rated() {
    List<OutletRatings> all = OutletsRated.of(DESIGN, Wishes.NONE, RAIN);
    assertThat(all).hasSize(1);
    return all.get(0);
  }

  /**
   * Of one outlet: all that drains, by area times rain; NSPC 2006 has 23 gpm for what is under 3
   * in.
   */
  @Test
  void everyMethodIsThereAndTheLeastOfThoseThatMayDecideGoverns() {
    OutletRatings rated = rated();
    assertThat(rated.ratings())
        .extracting(r -> r.capacity().id())
        .containsAll(
            CapacityData.builtIn().methods().stream()
                .map(CapacityData.Method::id)
                .filter(id -> !id.startsWith("manning"))
                .toList());
    List<Rating> spout = rated.of(Rating.Part.DOWNSPOUT);
    Rating governing = spout.stream().filter(rated::governs).findFirst().orElseThrow();
    assertThat(governing.capacity().name()).isEqualTo("NSPC 2006, Table 13.6.1");
    assertThat(governing.capacity().flow() / Flows.GPM).isCloseTo(23, within(1e-9));
    assertThat(governing.demand())
        .isCloseTo(RAIN.flow(DESIGN.proof().drained() + 0.5 * 4 * (6 - 3.122)), within(1e-8));
    assertThat(spout).filteredOn(rated::governs).hasSize(1);
    assertThat(spout)
        .filteredOn(r -> r.capacity().accepted())
        .allMatch(r -> r.capacity().flow() >= governing.capacity().flow());
  }

  @Test
  void marksAndWhatGovernsAreInTheTextAndInTheFile() {
    String text = RatingsText.write(rated(), UnitSystem.IMPERIAL);
    assertThat(text)
        .contains("23.0 gpm", "NSPC 2006, Table 13.6.1; governs")
        .contains("EN 12056-3 outlet (from memory — verify)")
        .contains("EN 12056-3, downspout 0.33 full (from memory — verify); shown only");
    List<Part> outlet =
        DESIGN.layout().parts().stream().filter(p -> p.kind() == PartKind.OUTLET).toList();
    assertThat(ExplainJson.write(DESIGN.survey().source(), outlet, List.of(rated())))
        .contains("\"id\" : \"nspc-2006-leader\"", "\"governs\" : true", "\"unit\" : \"L/s\"");
  }
}
