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
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
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
   * Of one outlet: all that drains, by area times rain; 27.8 (7/24)^(5/3) 2.937^(8/3) = 63.1 gpm by
   * Wyly and Eaton for 74.6 mm clear, NSPC 2006 has 67 for 3 in, by which the kit calls it.
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
    assertThat(governing.capacity().id()).isEqualTo("wyly-eaton");
    assertThat(governing.capacity().flow() / Flows.GPM).isCloseTo(63.1, within(0.05));
    assertThat(spout)
        .filteredOn(r -> r.capacity().id().equals("nspc-2006-leader"))
        .allMatch(r -> Math.abs(r.capacity().flow() / Flows.GPM - 67) < 1e-9)
        .hasSize(1);
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
        .contains("tables read at 3\", the size that it is called by")
        .contains("67.0 gpm", "Wyly-Eaton, downspout 7/24 full (from memory — verify); governs")
        .contains("EN 12056-3 outlet (from memory — verify)")
        .contains("EN 12056-3, downspout 0.33 full (from memory — verify); shown only");
    List<Part> outlet =
        DESIGN.layout().parts().stream().filter(p -> p.kind() == PartKind.OUTLET).toList();
    assertThat(ExplainJson.write(DESIGN.survey().source(), outlet, List.of(rated())))
        .contains("\"id\" : \"nspc-2006-leader\"", "\"governs\" : true", "\"unit\" : \"L/s\"")
        .contains("\"downspoutSizeMm\" : 76.2", "\"downspoutSizedBy\" : \"nominal\"");
  }

  /** 74.6 mm clear and 0.032 in of wall at each side, 76.2256 mm: the row of 3 in still. */
  @Test
  void withoutASizeThatItIsCalledByTheClearOneCountsWithItsWall() {
    Kit unnamed = KitReader.builtIn().without(DrainValue.DOWNSPOUT_NOMINAL);
    Design design = DeckRun.design(DESIGN.survey(), Scope.OUTSIDE, unnamed, RAIN);
    OutletRatings rated = OutletsRated.of(design, Wishes.NONE, RAIN).get(0);
    assertThat(rated.spout().size()).isCloseTo(0.0762256, within(1e-9));
    assertThat(RatingsText.write(rated, UnitSystem.METRIC))
        .contains("tables read at 76 mm, what is clear in it with an allowance for its wall");
  }
}
