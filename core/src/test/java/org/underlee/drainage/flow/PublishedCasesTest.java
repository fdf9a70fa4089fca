package org.underlee.drainage.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.units.Flows;
import org.underlee.units.Lengths;
import org.underlee.units.RainRates;

class PublishedCasesTest {
  private static final double IN = Lengths.INCH;
  private static final double FT = Lengths.FOOT;
  private static final double FT2 = FT * FT;
  private static final double CFS = Flows.CUBIC_FOOT_PER_SECOND;
  private static final double LS = Flows.LITRE_PER_SECOND;
  private static final CapacityData DATA = CapacityData.builtIn();
  private static final ProofData PROOF = ProofData.builtIn();

  private static double gpm(double squareFeet, double inchesPerHour) {
    Storm storm = Storm.given(inchesPerHour * RainRates.INCH_PER_HOUR);
    return storm.flow(squareFeet * FT2) / Flows.GPM;
  }

  private static double tabled(String id, double inches, double perFoot) {
    return DATA.tables().stream()
        .filter(t -> t.id().equals(id))
        .findFirst()
        .orElseThrow()
        .of(inches * IN, perFoot / 12)
        .orElseThrow()
        .flow();
  }

  /** 231 in³ in a US gallon: 720 * 231 / 1728 = 96.25. 16 x 12 ft at 4 and 8 in/h. */
  @ParameterizedTest
  @CsvSource({"1,1,0.0103896104,1e-10", "192,4,7.979,0.001", "192,8,15.958,0.001"})
  void rainOnSquareFeetIsGallonsByTheExactGallon(
      double area, double rain, double expected, double tolerance) {
    assertThat(gpm(area, rain)).isCloseTo(expected, within(tolerance));
  }

  @Test
  void rainOnSquareMetresIsLitresBySiAlone() {
    double flow = Storm.given(150 * RainRates.MM_PER_HOUR).flow(20);
    assertThat(flow / LS).isCloseTo(20 * 150 / 3600.0, within(1e-12));
  }

  /** National Standard Plumbing Code Illustrated 2006, Table 13.6.1. */
  @ParameterizedTest
  @CsvSource({"2,23", "3,67", "4,144", "5,261", "6,424", "8,913", "10,1655", "12,2692", "15,4880"})
  void wylyAndEatonFromMemoryGivesEveryLeaderOfNspc2006(double inches, double expected) {
    double formula = Formulas.wylyEaton(inches * IN, Formulas.DOWNSPOUT_FILLING) / Flows.GPM;
    assertThat(formula).isCloseTo(expected, within(0.5));
    assertThat(tabled("nspc-2006-leader", inches, 0) / Flows.GPM).isCloseTo(expected, within(1e-9));
  }

  /** National Standard Plumbing Code Illustrated 2006, Table 13.6.1, 3 in at 4 in/h. */
  @Test
  void aLeaderOfThreeInchesServesTheAreaOfNspc2006() {
    double area =
        Formulas.wylyEaton(3 * IN, Formulas.DOWNSPOUT_FILLING) / RainRates.INCH_PER_HOUR / 4;
    assertThat(tabled("nspc-2006-leader", 3, 0) / RainRates.INCH_PER_HOUR / 4 / FT2)
        .isCloseTo(1607, within(6.0));
    assertThat(area / FT2).isCloseTo(1607, within(1.0));
  }

  /** A published comparison of IPC 2012 with IPC 2021, with 0.0104 gpm rounded from 1/96.25. */
  @Test
  void theEditionsOfIpcDifferForFourInchPipeAtAnEighth() {
    assertThat(gpm(2506, 3)).isCloseTo(78.2, within(0.1));
    double area = tabled("ipc-current-sloped-pipe", 4, 0.125) / (3 * RainRates.INCH_PER_HOUR);
    assertThat(area / FT2).isCloseTo(3689.6, within(0.1));
    assertThat(115 / (0.0104 * 3)).isCloseTo(3685, within(2.0));
  }

  /**
   * FHWA HEC-22, 4th edition, example 5.1: a street's gutter is a wedge of sheet flow. Its formula
   * is the sum of narrow strips, each a wide sheet; 0.5 %.
   */
  @ParameterizedTest
  @CsvSource({"9.0,1.8", "8.2,1.4"})
  void stripsOfSheetFlowAddUpToTheSpreadOfHec22Example51(double spread, double expected) {
    int strips = 2000;
    double width = spread * FT / strips;
    double flow = 0;
    for (int i = 0; i < strips; i++) {
      double depth = (i + 0.5) * width * 0.02;
      // depth grows as the flow to the power of 3/5
      flow += Math.pow(depth / Formulas.sheetDepth(1, width, 0.01, 0.016), 5.0 / 3);
    }
    assertThat(flow / CFS).isCloseTo(expected, Percentage.withPercentage(0.5));
  }

  /** FHWA HEC-22, 4th edition, example 7.7: a slot. */
  @Test
  void theWeirAndOrificeOfHec22Example77() {
    double flow = 4.9 * CFS;
    double head = 0.3 * FT;
    assertThat(flow / Outlets.weirFlow(Outlets.SLOT_WEIR, FT, head))
        .isCloseTo(12.0, Percentage.withPercentage(1));
    assertThat(Outlets.orificeArea(Outlets.SLOT, flow, head) / (1.75 * IN) / FT)
        .isCloseTo(9.6, Percentage.withPercentage(1));
  }

  /** FHWA HEC-22, 4th edition, examples 10.9 and 10.10. */
  @Test
  void theOrificesOfHec22Examples109And1010() {
    double hole = new Opening.Round(IN).area();
    double plate = 0;
    int[] holes = {3, 4, 3};
    double[] heads = {3.61, 3.94, 4.26};
    for (int i = 0; i < 3; i++) {
      plate += holes[i] * Outlets.orificeFlow(0.6, hole, heads[i] * FT);
    }
    assertThat(plate / CFS).isCloseTo(0.52, Percentage.withPercentage(1));
    double one = Outlets.orificeFlow(0.6, new Opening.Round(0.49 * FT).area(), 3.06 * FT);
    assertThat(one / CFS).isCloseTo(1.59, Percentage.withPercentage(1));
  }

  /** FHWA HEC-22, 4th edition, example 5.5: Manning in a circular swale. */
  @Test
  void theUniformDepthOfHec22Example55() {
    HalfRound swale = new HalfRound(4.92 * FT);
    Momentum momentum = new Momentum(swale, 0.016);
    double low = 0.1 * FT;
    double high = 2 * FT;
    while (high - low > 1e-9) {
      double depth = (low + high) / 2;
      if (momentum.friction(17.6 * CFS, depth) > 0.01) {
        low = depth;
      } else {
        high = depth;
      }
    }
    assertThat(high / FT).isCloseTo(0.98, Percentage.withPercentage(1.5));
    assertThat(swale.topWidth(0.98 * FT) / FT).isCloseTo(3.93, Percentage.withPercentage(1.5));
  }

  /** EN 12056-3, 125 mm half round, and an outlet where weir and orifice meet. */
  @Test
  void theGutterAndOutletOfEn12056FromMemory() {
    HalfRound gutter = new HalfRound(0.125);
    assertThat(gutter.fullArea() * 1e6).isCloseTo(6135.9, within(0.1));
    assertThat(Formulas.enNominal(gutter) / LS).isCloseTo(1.510, within(0.002));
    assertThat(Formulas.enDesign(gutter, 0, 3).orElseThrow() / LS).isCloseTo(1.359, within(0.002));
    assertThat(Formulas.enDesign(gutter, 0, 8).orElseThrow() / LS).isCloseTo(1.216, within(0.002));
    assertThat(Outlets.enFlow(new Opening.Round(0.1), 0.05) / LS).isCloseTo(4.714, within(0.001));
    assertThat(Outlets.enFlow(new Opening.Round(0.1), 0.05001) / LS)
        .isCloseTo(4.714, within(0.001));
    assertThat(Outlets.enFlow(new Opening.Round(0.08), 0.05) / LS).isCloseTo(3.017, within(0.001));
    assertThat(Formulas.enDownpipe(0.075, 0.33) / LS).isCloseTo(4.97, within(0.01));
  }

  /** Beij, NBS RP644 (1934); the trade's table has 2500 for 5 in. */
  @Test
  void theHalfRoundGutterOfBeijFromMemory() {
    double flow = Formulas.beij(new HalfRound(5 * IN), 6) / Flows.GPM;
    assertThat(flow * 96.25).isCloseTo(2508, Percentage.withPercentage(0.1));
    assertThat(Formulas.beij(Trough.box(6 * IN, 4 * IN), 20 * FT) / Flows.GPM)
        .isCloseTo(107.4, within(0.2));
  }

  /** Sheet metal trade rule: one square inch for 1200 square feet at 1 in/h. */
  @Test
  void theAreaRuleAsksForAnInchAndAQuarter() {
    double flow = gpm(192, 8) * Flows.GPM;
    assertThat(flow / Formulas.areaRule(IN * IN)).isCloseTo(1.28, within(1e-9));
  }

  /** Half of the wall: IPC 1106.4. */
  @Test
  void halfOfTheWallAboveCounts() {
    Catchment catchment = new Catchment(192 * FT2, List.of(16 * 9 * FT2), List.of());
    assertThat(catchment.effective() / FT2).isCloseTo(264, within(1e-9));
    assertThat(gpm(264, 8)).isCloseTo(21.94, within(0.01));
  }

  /** Pitch factors of a builders' guide. */
  @ParameterizedTest
  @CsvSource({"3,1", "3.5,1.05", "4,1.05", "5,1.05", "6,1.1", "8,1.1", "9,1.2", "11,1.2", "12,1.3"})
  void aSteepRoofAboveCountsMore(double rise, double factor) {
    assertThat(new Catchment.Roof(100, rise / 12).factor()).isEqualTo(factor);
  }

  /** Elastic line of a simply supported beam; falls in percent. */
  @ParameterizedTest
  @CsvSource({"240,96,-0.2917", "360,96,0.1528", "240,48,0.75", "180,96,-0.7361"})
  void aSagTakesFromTheFallAtTheOutlet(double sag, double run, double expected) {
    assertThat(new PanSurface(3, 1 / run, 3 / sag, 0).atOutlet() * 100)
        .isCloseTo(expected, within(1e-4));
  }

  /** Elastic line of a simply supported beam: 144 in, 1/8 in per ft. */
  @ParameterizedTest
  @CsvSource({"0.6,114.40,0.0564", "0.8,101.83,0.2007", "0.4,144,0"})
  void aSaggingJoistHoldsAPond(double sag, double at, double depth) {
    PanSurface.Pond pond = new PanSurface(144 * IN, 1 / 96.0, sag * IN, 0).pond();
    assertThat(pond.at() / IN).isCloseTo(at, within(0.01));
    assertThat(pond.depth() / IN).isCloseTo(depth, within(0.0005));
  }

  /** A parabola of 3/4 in over 12 ft has 1/4 in per ft at its end. */
  @Test
  void aCrownTakesFromTheFallAtTheHead() {
    PanSurface crowned = new PanSurface(144 * IN, 1 / 48.0, 0, 0.75 * IN);
    assertThat(crowned.atHead()).isCloseTo(0, within(1e-12));
    assertThat(crowned.atOutlet()).isCloseTo(2 / 48.0, within(1e-12));
  }

  /** 33.8e-6 per degree F, conduit tables. */
  @Test
  void sixteenFeetOfPvcGrow() {
    double grown = PROOF.expansion("rigid PVC").orElseThrow().movement(16 * FT, 100 / 1.8);
    assertThat(grown / IN).isCloseTo(0.649, within(0.001));
  }

  /** IBC 2304.12.2.6: 1/150. */
  @Test
  void aSpaceOf192SquareFeetBreathesThrough184SquareInches() {
    assertThat(PROOF.ventArea(192 * FT2) / (IN * IN)).isCloseTo(184.3, within(0.1));
  }

  /** Manning for a wide sheet: 14 1/2 in bay of 12 ft at 8 in/h. */
  @ParameterizedTest
  @CsvSource({"96,0.064", "48,0.052"})
  void theSheetInAPanIsThin(double run, double expected) {
    double width = 14.5 * IN;
    double flow = 8 * RainRates.INCH_PER_HOUR * 12 * FT * width;
    // 1.33 gpm takes the width of a joist with it: 16 in of centres
    double depth = Formulas.sheetDepth(flow * 16 / 14.5, width, 1 / run, 0.010);
    assertThat(depth / IN).isCloseTo(expected, within(0.0015));
  }

  /** Weir 0.37 and orifice 0.60 of HEC-22, worked by hand. */
  @ParameterizedTest
  @CsvSource({"1,25.2,33.6", "2,43.3,77.0", "3,53.0,94.3"})
  void roundOutletsPassWhatHec22Says(double head, double three, double four) {
    assertThat(Outlets.flow(new Opening.Round(3 * IN), head * IN) / Flows.GPM)
        .isCloseTo(three, within(0.2));
    assertThat(Outlets.flow(new Opening.Round(4 * IN), head * IN) / Flows.GPM)
        .isCloseTo(four, within(0.2));
  }

  @Test
  void theHeadOfAnOutletIsTheInverseOfItsFlow() {
    Opening opening = new Opening.Rectangular(2 * IN, 3 * IN);
    for (double head = 0.005; head < 0.2; head += 0.01) {
      assertThat(Outlets.head(opening, Outlets.flow(opening, head))).isCloseTo(head, within(1e-12));
    }
  }

  /** Francis: 3.33 cfs over a foot at a foot of head, less two contractions. */
  @Test
  void aScupperByFrancisFromMemory() {
    assertThat(Outlets.scupperFlow(FT, FT) / CFS).isCloseTo(3.33 * 0.8, within(1e-9));
  }

  @Test
  void treatedLumberIsKeptFromAluminiumAndCopperFromZinc() {
    assertThat(PROOF.contact("aluminium", "treated lumber").orElseThrow().verdict())
        .isEqualTo(ProofData.Verdict.SEPARATE);
    assertThat(PROOF.contact("copper", "galvanised steel").orElseThrow().verdict())
        .isEqualTo(ProofData.Verdict.FORBIDDEN);
    assertThat(PROOF.contact("copper", "moon rock")).isEmpty();
  }

  /** 5 ft: DOE and EPA guidance. */
  @Test
  void aDownspoutThatEndsNearTheHouseIsShort() {
    assertThat(PROOF.dischargeLack(1.0)).isCloseTo(0.524, within(1e-9));
    assertThat(PROOF.dischargeLack(2.0)).isZero();
  }

  /** One inch of water over a square foot weighs 5.2 lb. */
  @Test
  void anInchOfStandingWaterIsFivePsf() {
    WetLoad load = new WetLoad(0, 0, 1000 * IN, 1);
    assertThat(load.blocked() / WetLoad.PSF).isCloseTo(5.2, within(0.01));
    assertThat(load.left(10 * WetLoad.PSF) / WetLoad.PSF).isCloseTo(4.8, within(0.01));
  }
}
