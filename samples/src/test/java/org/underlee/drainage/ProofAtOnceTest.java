package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.drainage.Piece.Kind;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDeck;
import org.underlee.samples.SampleDecks;

/**
 * What the proof does at the same time on several processors, and what its cases share, against the
 * same done one after the other with nothing shared. {@code -Dunderlee.seeds=200} before a release.
 */
class ProofAtOnceTest {
  private static final int SEEDS = Integer.getInteger("underlee.seeds", 20);

  static Stream<SampleDeck> decks() {
    return Stream.concat(
        SampleDecks.all().stream(), LongStream.rangeClosed(1, SEEDS).mapToObj(SampleDecks::random));
  }

  /** The plan of a case and what it takes to follow water over it, made anew each time. */
  private record Plan(DrainCase given, Places places, PlanSweep sweep) {
    static Plan of(DrainCase given, int stretches) {
      Places places = new Places(given);
      List<Facet> facets =
          FacetReader.read(given.pieces(), given.frame()).stream()
              .filter(f -> given.pieces().get(f.piece()).kind() != Kind.OUTLET)
              .filter(f -> given.pieces().get(f.piece()).kind() != Kind.PIPE)
              .toList();
      Outlines outlines = new Outlines(given.pieces(), places);
      PlanSweep sweep =
          new PlanSweep(
                  facets,
                  outlines.areas(given.catchments()),
                  places.outlets().size(),
                  outlines.halves())
              .sweep(outlines.middles(), stretches);
      places.learn(sweep.columns());
      return new Plan(given, places, sweep);
    }

    /** Where water goes; nothing is taken from a case with the outlet open. */
    Fates alone(int blocked) {
      WaterGraph graph = new WaterGraph(given.pieces(), sweep, new Neighbours(sweep), places);
      return new Fates(graph, new FateBoard(sweep.layers()), blocked);
    }

    List<String> columns() {
      return sweep.columns().stream()
          .map(c -> c.slab() + " " + c.outline() + c.catchment() + " " + c.outlet() + layers(c))
          .toList();
    }

    private static String layers(Column column) {
      List<String> layers = new ArrayList<>();
      for (Layer l : column.layers()) {
        layers.add(l.number() + " " + l.piece() + " " + l.topAt() + " " + l.bottomAt());
      }
      return layers.toString();
    }
  }

  private static List<DrainCase> cases(SampleDeck deck) {
    Design design =
        DeckRun.design(
            DeckRun.survey(IfcEmitter.emit(deck, Mix.PLAIN), "deck.ifc"),
            Scope.OUTSIDE,
            KitReader.builtIn());
    return DrainCases.of(design.survey().bays(), design.layout());
  }

  @ParameterizedTest
  @MethodSource("decks")
  void aProofAtOnceIsTheProofOfOneThingAfterTheOther(SampleDeck deck) {
    for (DrainCase one : cases(deck)) {
      DrainProof proof = WaterProver.prove(one);
      Plan plan = Plan.of(one, 1);
      assertThat(Plan.of(one, PlanSweep.STRETCHES).columns()).isEqualTo(plan.columns());
      assertThat(proof.outlets().stream().mapToDouble(OutletShare::area).toArray())
          .as("areas of outlets")
          .containsExactly(areas(plan));
      assertThat(proof.blocked()).isEqualTo(blocked(plan));
    }
  }

  /** By outlet, m². */
  private static double[] areas(Plan plan) {
    Fates fates = plan.alone(-1);
    Tally tally = new Tally(plan.given, plan.places, fates.sinks());
    for (Column column : plan.sweep.columns()) {
      if (column.catchment() >= 0 && column.layers().length > 0) {
        tally.add(column, fates.of(column.layers()[0]));
      }
    }
    return tally.outlets().stream().mapToDouble(OutletShare::area).toArray();
  }

  private static List<StandingWater> blocked(Plan plan) {
    Standing standing = new Standing(plan.given, plan.places, plan.sweep);
    List<List<Layer>> floors = standing.floors();
    List<StandingWater> all = new ArrayList<>();
    for (int i = 0; i < floors.size(); i++) {
      standing.blocked(i, plan.alone(i), floors.get(i)).ifPresent(all::add);
    }
    assertThat(all).hasSameSizeAs(plan.places.outlets());
    return all;
  }
}
