package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDeck;
import org.underlee.samples.SampleDecks;

/** Each fault that a builder can make is found, by its cause and where it is; nothing else is. */
class BrokenAssembliesTest {
  /** Doubled and tripled lines, and a bay with a collar and laps. */
  private static final DrainCase PINE = first(SampleDecks.all().get(0));

  private static final DrainCase HARBOUR = first(SampleDecks.all().get(1));

  private static DrainCase first(SampleDeck deck) {
    Design design =
        DeckRun.design(
            DeckRun.survey(IfcEmitter.emit(deck, Mix.PLAIN), "deck.ifc"),
            Scope.OUTSIDE,
            KitReader.builtIn());
    return DrainCases.of(design.survey().bays(), design.layout()).get(0);
  }

  /** The part of the deck that leaks for a cause, in a bay; any bay when it is empty. */
  private static double leaking(DrainCase one, LeakCause cause, String part) {
    return WaterProver.prove(one).leaks().stream()
        .filter(l -> l.cause() == cause)
        .filter(l -> part.isEmpty() || l.parts().stream().anyMatch(p -> p.contains(part)))
        .mapToDouble(Leak::area)
        .sum();
  }

  private static DrainCase changed(
      DrainCase one, Predicate<Piece> which, UnaryOperator<Piece> change) {
    List<Piece> pieces = new ArrayList<>();
    one.pieces().forEach(p -> pieces.add(which.test(p) ? change.apply(p) : p));
    assertThat(pieces).isNotEqualTo(one.pieces());
    return new DrainCase(one.field(), one.frame(), one.catchments(), pieces, one.ground());
  }

  private static DrainCase without(DrainCase one, Predicate<Piece> which) {
    List<Piece> pieces = one.pieces().stream().filter(which.negate()).toList();
    assertThat(pieces).hasSizeLessThan(one.pieces().size());
    return new DrainCase(one.field(), one.frame(), one.catchments(), pieces, one.ground());
  }

  private static Predicate<Piece> named(String end) {
    return p -> p.id().endsWith(end);
  }

  /** Moved in the frame of the case: down the fall, across, up. */
  private static UnaryOperator<Piece> moved(DrainCase one, double down, double across, double up) {
    return reshaped(
        m ->
            m.transformed(
                Transform.translation(one.frame().direction(new Vec3(down, across, up)))));
  }

  private static UnaryOperator<Piece> reshaped(UnaryOperator<Mesh> change) {
    return p -> new Piece(p.id(), p.kind(), change.apply(p.shape()), p.sealed());
  }

  /** Tilted about its head, so that its fall is another. */
  private static UnaryOperator<Piece> tilted(DrainCase one, double rise) {
    return reshaped(
        m -> {
          Vec3 head = one.frame().toLocal(m.bounds().min());
          Transform shear =
              new Transform(new Vec3(0, 0, -rise * head.x()), new Vec3(1, 0, rise), Vec3.Y, Vec3.Z);
          return m.transformed(one.frame().inverse()).transformed(shear).transformed(one.frame());
        });
  }

  @Test
  void aSoundAssemblyIsAccusedOfNoneOfTheFaultsBelow() {
    for (DrainCase one : List.of(PINE, HARBOUR)) {
      for (LeakCause cause :
          List.of(
              LeakCause.REVERSED_LAP,
              LeakCause.SHORT_LAP,
              LeakCause.BACK_FALL,
              LeakCause.OPEN_HOLE,
              LeakCause.NO_DOWNSPOUT)) {
        assertThat(leaking(one, cause, "")).as("%s of %s", cause, one.field()).isZero();
      }
      assertThat(WaterProver.prove(one).flat()).isEmpty();
    }
  }

  @Test
  void aMissingStripLetsThePlySeamThrough() {
    DrainCase broken = without(PINE, p -> p.id().contains("ply-strip"));
    assertThat(leaking(broken, LeakCause.PLY_SEAM, "")).isGreaterThan(0.2);
    assertThat(leaking(PINE, LeakCause.PLY_SEAM, "")).isLessThan(0.002);
  }

  @Test
  void aReversedLapIsFoundAtThePieceAboveIt() {
    // The lower piece is lifted over the upper one: so far that it lies on it.
    DrainCase broken = changed(HARBOUR, named("B3/pan-2"), moved(HARBOUR, 0, 0, 0.0032));
    assertThat(broken.pieces().stream().filter(p -> p.id().contains("/B3/"))).hasSizeGreaterThan(4);
    assertThat(leaking(broken, LeakCause.REVERSED_LAP, "/B3/")).isGreaterThan(0.05);
  }

  @Test
  void aPanTooShortForTheGutterDripsBeforeIt() {
    DrainCase broken = changed(HARBOUR, named("B2/pan-1"), moved(HARBOUR, -0.1, 0, 0.1 / 96));
    assertThat(leaking(broken, LeakCause.EDGE, "B2/pan-1")).isGreaterThan(0.5);
  }

  @Test
  void aPanThatReachesOnlyAFewMillimetresOverTheGutterHasTooShortALap() {
    DrainCase broken = changed(HARBOUR, named("B2/pan-1"), moved(HARBOUR, -0.06, 0, 0.06 / 96));
    assertThat(leaking(broken, LeakCause.SHORT_LAP, "B2/pan-1")).isGreaterThan(0.5);
  }

  @Test
  void aCollarThatIsNotSealedLeaksAtItsPipe() {
    DrainCase broken =
        changed(
            HARBOUR,
            p -> p.id().contains("collar"),
            p -> new Piece(p.id(), p.kind(), p.shape(), false));
    assertThat(leaking(broken, LeakCause.OPEN_HOLE, "")).isGreaterThan(0.05);
  }

  /** Its end dam holds the water, which stands there before it runs back to the drip. */
  @Test
  void aPanThatFallsToTheHouseIsFound() {
    DrainCase broken = changed(HARBOUR, named("B2/pan-1"), tilted(HARBOUR, 2.0 / 96));
    DrainProof proof = WaterProver.prove(broken);
    assertThat(proof.ponds()).anyMatch(p -> p.part().endsWith("B2/pan-1") && p.depth() > 0.01);
  }

  /** At 1:16 to the house the water would stand far above the dam of 20 mm: it is full. */
  @Test
  void aPanThatFallsBeyondItsEndDamIsNamedAndItsDamIsFull() {
    DrainProof proof =
        WaterProver.prove(changed(HARBOUR, named("B2/pan-1"), tilted(HARBOUR, 7.0 / 96)));
    assertThat(proof.flat()).containsExactly("deck-1/field-1/B2/pan-1");
    assertThat(proof.ponds())
        .anyMatch(
            p ->
                p.part().endsWith("B2/pan-1")
                    && Math.abs(p.depth() - 0.0192) < 0.0002
                    && p.spillsAt().distance(p.at()) < 0.05);
  }

  @Test
  void aLevelPanIsNamed() {
    DrainCase broken = changed(HARBOUR, named("B2/pan-1"), tilted(HARBOUR, 1.0 / 96));
    assertThat(WaterProver.prove(broken).flat()).containsExactly("deck-1/field-1/B2/pan-1");
  }

  @Test
  void anOutletWithoutItsDownspoutDrainsNothing() {
    DrainCase broken = without(HARBOUR, p -> p.kind() == Piece.Kind.PIPE);
    assertThat(leaking(broken, LeakCause.NO_DOWNSPOUT, "outlet-1")).isGreaterThan(6);
    assertThat(WaterProver.prove(broken).dryFraction()).isZero();
  }

  @Test
  void aDownspoutThatEndsInTheAirIsFound() {
    DrainCase higher =
        new DrainCase(
            HARBOUR.field(),
            HARBOUR.frame(),
            HARBOUR.catchments(),
            HARBOUR.pieces(),
            java.util.OptionalDouble.of(HARBOUR.ground().orElseThrow() - 1));
    assertThat(leaking(higher, LeakCause.SHORT_DOWNSPOUT, "outlet-1")).isGreaterThan(6);
  }

  @Test
  void aPanMovedSidewaysLeavesAGap() {
    DrainCase broken = changed(HARBOUR, named("B2/pan-1"), moved(HARBOUR, 0, 0.05, 0));
    DrainProof proof = WaterProver.prove(broken);
    assertThat(proof.leaks())
        .anyMatch(l -> l.bay().equals("B2") && l.area() > 0.02 && l.cause() == LeakCause.GAP);
  }

  @Test
  void aGutterWithoutItsEndCapStillDrainsUntilItsOutletIsBlocked() {
    DrainCase open = without(HARBOUR, p -> p.id().contains("end-cap"));
    DrainProof proof = WaterProver.prove(open);
    assertThat(proof.dryFraction())
        .isCloseTo(
            WaterProver.prove(HARBOUR).dryFraction(), org.assertj.core.api.Assertions.within(1e-4));
    double whole = WaterProver.prove(HARBOUR).blocked().get(0).mass();
    assertThat(proof.blocked().get(0).mass()).isLessThan(0.8 * whole);
  }

  @Test
  void everyAreaIsCountedOnce() {
    for (DrainCase one : List.of(PINE, HARBOUR)) {
      DrainProof proof = WaterProver.prove(one);
      double leaks = proof.leaks().stream().mapToDouble(Leak::area).sum();
      assertThat(proof.drained() + leaks)
          .isCloseTo(proof.area(), org.assertj.core.api.Assertions.within(1e-9));
    }
  }
}
