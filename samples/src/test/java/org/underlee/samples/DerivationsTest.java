package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Cut;
import org.underlee.layout.Derivation;
import org.underlee.layout.Derivation.Measured;
import org.underlee.layout.Dimension;
import org.underlee.layout.Layout;
import org.underlee.layout.Layouter;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;

/** Every number of every part comes out of its derivation's steps, worked out again. */
class DerivationsTest {
  private static final double SAME = 1e-9;

  static Stream<SampleDeck> decks() {
    return Stream.concat(
        SampleDecks.all().stream(),
        Stream.concat(
            Stream.of(SampleDecks.twoSpans(2400, 1800, 7), SampleDecks.plain(2438.4, 406.4, 5)),
            LongStream.rangeClosed(1, 25).mapToObj(SampleDecks::random)));
  }

  @ParameterizedTest
  @MethodSource("decks")
  void everyDimensionOfEveryPartIsDerived(SampleDeck deck) {
    SoftAssertions all = new SoftAssertions();
    for (Part part : layout(survey(deck)).parts()) {
      boolean counted = part.kind() == PartKind.FASTENER;
      is(all, part, Dimension.COUNT, counted ? part.count() : Double.NaN);
      is(all, part, Dimension.LENGTH, counted ? Double.NaN : part.length());
      is(all, part, Dimension.WIDTH, counted ? Double.NaN : part.width());
      is(all, part, Dimension.FLAT_WIDTH, orNone(part.sheetWidth()));
      is(all, part, Dimension.FLAT_LENGTH, orNone(part.sheetLength()));
      is(all, part, Dimension.FALL, orNone(part.fall()));
      cuts(all, part);
      all.assertThat(part.why().reason().quantities()).as(part.id()).isEmpty();
    }
    all.assertAll();
  }

  /** The number, or none where it is not one. */
  private static void is(SoftAssertions all, Part part, Dimension dimension, double expected) {
    List<Derivation> own =
        part.why().derivations().stream().filter(d -> d.dimension() == dimension).toList();
    if (Double.isNaN(expected)) {
      all.assertThat(own).as("%s %s", part.id(), dimension).isEmpty();
    } else {
      all.assertThat(own).as("%s %s", part.id(), dimension).hasSize(1);
      own.forEach(
          d ->
              all.assertThat(d.value())
                  .as("%s %s %s", part.id(), dimension, d.steps())
                  .isEqualTo(expected, within(SAME)));
    }
  }

  private static double orNone(OptionalDouble value) {
    return value.orElse(Double.NaN);
  }

  private static void cuts(SoftAssertions all, Part part) {
    List<Cut.Notch> notches = only(part, Cut.Notch.class);
    for (int i = 0; i < notches.size(); i++) {
      at(all, part, Dimension.NOTCH_FROM, i + 1, notches.get(i).from());
      at(all, part, Dimension.NOTCH_LENGTH, i + 1, notches.get(i).length());
      at(all, part, Dimension.NOTCH_DEPTH, i + 1, notches.get(i).depth());
    }
    List<Cut.Hole> holes = only(part, Cut.Hole.class);
    for (int i = 0; i < holes.size(); i++) {
      at(all, part, Dimension.HOLE_ALONG, i + 1, holes.get(i).along());
      at(all, part, Dimension.HOLE_ACROSS, i + 1, holes.get(i).across());
      at(all, part, Dimension.HOLE_SIZE, i + 1, holes.get(i).width());
    }
  }

  private static <T extends Cut> List<T> only(Part part, Class<T> kind) {
    return part.cuts().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private static void at(
      SoftAssertions all, Part part, Dimension dimension, int ordinal, double expected) {
    all.assertThat(
            part.why().derivations().stream()
                .filter(d -> d.dimension() == dimension && d.ordinal() == ordinal)
                .mapToDouble(Derivation::value)
                .toArray())
        .as("%s %s %d", part.id(), dimension, ordinal)
        .containsExactly(new double[] {expected}, within(SAME));
  }

  /** The heights are held against the drawn bodies, which share nothing with the derivation. */
  @ParameterizedTest
  @MethodSource("decks")
  void seatsAndRimsAreWhereTheBodiesAre(SampleDeck deck) {
    Survey survey = survey(deck);
    for (Part part : layout(survey).parts()) {
      Transform frame =
          survey
              .framing()
              .fields()
              .filter(f -> f.id().equals(part.field()))
              .findFirst()
              .get()
              .frame();
      if (part.kind() == PartKind.SIDE_RAIL) {
        // a sheet of 1 mm lies below the seat
        assertThat(value(part, Dimension.SEAT_LOW))
            .isEqualTo(local(part, frame).min().z() + 0.001, within(2e-5));
      } else if (part.kind() == PartKind.GUTTER) {
        assertThat(value(part, Dimension.RIM))
            .isEqualTo(local(part, frame).max().z(), within(1e-6));
      }
    }
  }

  private static double value(Part part, Dimension dimension) {
    return part.why().of(dimension).orElseThrow().value();
  }

  private static Box local(Part part, Transform frame) {
    Mesh mesh = part.mesh();
    Box box = Box.EMPTY;
    for (int i = 0; i < mesh.vertexCount(); i++) {
      box = box.with(frame.toLocal(mesh.vertex(i)));
    }
    return box;
  }

  @Test
  void theSamplesHaveEveryKindOfDimension() {
    assertThat(
            decks()
                .flatMap(d -> KitReader.allBuiltIn().stream().map(k -> layout(survey(d), k)))
                .flatMap(l -> l.parts().stream())
                .flatMap(p -> p.why().derivations().stream())
                .map(Derivation::dimension)
                .distinct())
        .containsExactlyInAnyOrder(Dimension.values());
  }

  @Test
  void aPansLengthBeginsAtTheElementsThatBoundItsBay() {
    Part pan =
        layout(survey(SampleDecks.all().get(0))).parts().stream()
            .filter(p -> p.kind() == PartKind.PAN)
            .findFirst()
            .orElseThrow();
    Derivation length = pan.why().of(Dimension.LENGTH).orElseThrow();
    assertThat(length.steps().get(0).origin())
        .isInstanceOfSatisfying(
            Measured.class,
            m -> assertThat(m.elements()).hasSizeGreaterThan(1).allMatch(e -> e.instance() > 0));
    assertThat(length.steps().stream().map(s -> s.origin().getClass().getSimpleName()))
        .contains("KitValue");
  }

  private static Survey survey(SampleDeck deck) {
    return DeckRun.survey(IfcEmitter.emit(deck, Mix.PLAIN), "deck.ifc");
  }

  private static Layout layout(Survey survey) {
    return layout(survey, KitReader.builtIn());
  }

  private static Layout layout(Survey survey, Kit kit) {
    Scope bare = Scope.OUTSIDE.with(Wishes.NONE.withBoardsOff());
    return Layouter.layOut(survey.framing(), survey.bays(), bare, kit);
  }
}
