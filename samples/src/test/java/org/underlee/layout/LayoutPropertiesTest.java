package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDeck;
import org.underlee.samples.SampleDecks;
import org.underlee.samples.Xyz;

/** What must hold of every layout, for every family, whatever the deck. */
class LayoutPropertiesTest {
  private static final int DECKS = 12;

  /** Inches and metres are rounded in a file: a thousandth of a millimetre. */
  private static final double SAME = 1e-6;

  private static final List<String> KITS =
      List.of("formed-aluminium", "membrane-drape", "ribbed-sheet");

  static Stream<Arguments> layouts() {
    return LongStream.rangeClosed(1, DECKS)
        .boxed()
        .flatMap(seed -> KITS.stream().map(kit -> Arguments.of(seed, kit)));
  }

  private static Survey survey(SampleDeck deck, Mix mix) {
    return DeckRun.survey(IfcEmitter.emit(deck, mix), "deck.ifc");
  }

  private static Layout layOut(Survey survey, Kit kit) {
    Scope scope = Scope.OUTSIDE.with(Wishes.NONE.withBoardsOff());
    return Layouter.layOut(survey.framing(), survey.bays(), scope, kit);
  }

  @ParameterizedTest(name = "deck {0}, {1}")
  @MethodSource("layouts")
  void theUnitAndThePlaceOfAModelChangeNoPart(long seed, String name) {
    SampleDeck deck = SampleDecks.random(seed);
    Kit kit = KitReader.named(name);
    List<Part> here = layOut(survey(deck, Mix.PLAIN), kit).parts();
    Mix inches = Mix.PLAIN.with(Mix.LengthUnit.INCH);
    Mix turned =
        Mix.PLAIN.placed(27.3 + seed, new Xyz(420, -170, 12), Mix.Where.SITE, Mix.Nesting.ELEMENT);
    for (Mix mix : List.of(inches, turned)) {
      assertSame(here, layOut(survey(deck, mix), kit).parts());
    }
  }

  private static void assertSame(List<Part> here, List<Part> there) {
    assertThat(there).extracting(Part::id).isEqualTo(here.stream().map(Part::id).toList());
    for (int i = 0; i < here.size(); i++) {
      Part a = here.get(i);
      Part b = there.get(i);
      assertThat(b.length()).as(a.id()).isCloseTo(a.length(), within(SAME));
      assertThat(b.width()).as(a.id()).isCloseTo(a.width(), within(SAME));
      assertThat(b.count()).as(a.id()).isEqualTo(a.count());
    }
  }

  /**
   * More clearance asked for above what is hung never serves more of the deck: the limits of a
   * greater clearance are those of a smaller one and more.
   */
  @ParameterizedTest(name = "deck {0}, {1}")
  @MethodSource("layouts")
  void moreClearanceNeverServesMore(long seed, String name) {
    FieldBays bays = survey(SampleDecks.random(seed), Mix.PLAIN).bays().get(0);
    double before = Double.POSITIVE_INFINITY;
    for (double clearance = 0.002; clearance < 0.15; clearance += 0.012) {
      Kit kit = KitReader.named(name).with(DrainValue.CLEARANCE_ABOVE, clearance, "test");
      double area = FieldPlanner.plan(bays, kit).area();
      assertThat(area).isLessThanOrEqualTo(before + SAME);
      before = area;
    }
  }

  @ParameterizedTest(name = "deck {0}, {1}")
  @MethodSource("layouts")
  void whatHangsInABayStaysBetweenItsJoistsAndSheetsBetweenTheOuterFaces(long seed, String name) {
    Survey survey = survey(SampleDecks.random(seed), Mix.PLAIN);
    FieldBays field = survey.bays().get(0);
    for (Part part : layOut(survey, KitReader.named(name)).parts()) {
      switch (part.kind()) {
        case PAN, SIDE_RAIL, COLLAR_PIECE, SADDLE -> isInside(part, field, Double.MAX_VALUE);
        case MEMBRANE -> isInside(part, field, bay(part, field).joistTop(0));
        case SHEET, BATTEN -> isBetweenOuterFaces(part, field);
        default -> {}
      }
    }
  }

  /** What lies on the joist tops is above {@code below}. */
  private static void isInside(Part part, FieldBays field, double below) {
    Bay bay = bay(part, field);
    Mesh local = local(part, field);
    for (int i = 0; i < local.vertexCount(); i++) {
      Vec3 p = local.vertex(i);
      if (p.z() < below - SAME) {
        assertThat(p.x())
            .as(part.id())
            .isBetween(bay.leftFace().at(p.y()) - SAME, bay.rightFace().at(p.y()) + SAME);
      }
    }
  }

  private static void isBetweenOuterFaces(Part part, FieldBays field) {
    Bay first = field.bays().get(0);
    Bay last = field.bays().get(field.bays().size() - 1);
    Mesh local = local(part, field);
    for (int i = 0; i < local.vertexCount(); i++) {
      Vec3 p = local.vertex(i);
      assertThat(p.x())
          .as(part.id())
          .isBetween(first.left().leftAt(p.y()) - SAME, last.right().rightAt(p.y()) + SAME);
    }
  }

  private static Mesh local(Part part, FieldBays field) {
    return part.mesh().transformed(field.field().frame().inverse());
  }

  private static Bay bay(Part part, FieldBays field) {
    String id = part.bay().orElseThrow();
    return field.bays().stream().filter(b -> b.id().equals(id)).findFirst().orElseThrow();
  }
}
