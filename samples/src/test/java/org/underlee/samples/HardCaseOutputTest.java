package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.kit.KitReader;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.picture.Camera;
import org.underlee.picture.DeckScene;
import org.underlee.picture.Png;
import org.underlee.picture.RasterSettings;
import org.underlee.picture.Renderer;
import org.underlee.picture.Scene;
import org.underlee.report.DesignJson;
import org.underlee.report.TakeoffCsv;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.SurveyRequest;

/**
 * Each hard case as committed: its design, its bill and its picture, and what a master would have
 * done there. After a change that is meant, run with {@code -Dunderlee.rewrite=true} and read the
 * difference.
 */
class HardCaseOutputTest {
  private static final Path ROOT =
      Path.of(System.getProperty("underlee.root", ".."), "samples", HardCase.FOLDER);

  static Stream<HardCase> cases() {
    return HardCases.all().stream();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void theDesignTheBillAndThePictureAreAsExpectedAndNothingMeets(HardCase hard) throws IOException {
    Design design = design(hard);
    Path folder = ROOT.resolve(hard.deck().name());
    assertSame(folder.resolve("expected/design.json"), DesignJson.write(design));
    assertSame(folder.resolve("expected/takeoff.csv"), TakeoffCsv.write(design.takeoff()));
    assertSamePixels(folder.resolve(hard.deck().name() + ".png"), drawn(design));
    assertThat(PartsFit.meetings(design)).isEmpty();
    assertThat(PartsFit.forgotten(design)).isEmpty();
  }

  @Test
  void aNumberChangedInAnExpectationIsNoticed() throws IOException {
    Design design = design(HardCases.all().get(0));
    String right = TakeoffCsv.write(design.takeoff());
    Path file = ROOT.resolve(HardCases.all().get(0).deck().name()).resolve("expected/takeoff.csv");
    assertThat(Files.readString(file)).isEqualTo(right);
    assertThat(right.replaceFirst("\\d", "x")).isNotEqualTo(right);
  }

  private static void assertSame(Path file, String text) throws IOException {
    rewrite(file, text.getBytes(StandardCharsets.UTF_8));
    assertThat(Files.readString(file)).isEqualTo(text);
  }

  /** Pixels are compared, not bytes: packing differs from one Java to the next. */
  private static void assertSamePixels(Path file, byte[] png) throws IOException {
    rewrite(file, png);
    var committed = ImageIO.read(file.toFile());
    var fresh = ImageIO.read(new ByteArrayInputStream(png));
    int w = fresh.getWidth();
    int h = fresh.getHeight();
    assertThat(committed.getRGB(0, 0, w, h, null, 0, w))
        .isEqualTo(fresh.getRGB(0, 0, w, h, null, 0, w));
  }

  private static void rewrite(Path file, byte[] bytes) throws IOException {
    if (Boolean.getBoolean("underlee.rewrite")) {
      Files.write(file, bytes);
    }
  }

  private static byte[] drawn(Design design) {
    var framing = design.survey().framing();
    Scene scene =
        DeckScene.of(framing, design.survey().model().elements(), Optional.of(design.layout()));
    RasterSettings settings = RasterSettings.of(640, 400).withThreads(2);
    Camera camera =
        DeckScene.fromBelow(framing, Optional.of(design.layout()), scene, settings.aspect());
    return Png.encode(Renderer.draw(scene, camera, settings));
  }

  private static HardCase named(String name) {
    return cases().filter(h -> h.deck().name().equals(name)).findFirst().orElseThrow();
  }

  private static Design design(HardCase hard) {
    byte[] model = IfcEmitter.emit(hard.deck(), hard.deck().ownMix());
    Wishes wishes = hard.boardsOff() ? Wishes.NONE.withBoardsOff() : Wishes.NONE;
    return DeckRun.design(
        DeckRun.survey(
            model, hard.deck().name() + ".ifc", SurveyRequest.PLAIN.bothWays(hard.bothWays())),
        Scope.OUTSIDE.with(wishes),
        KitReader.named(hard.kit()));
  }

  private static List<Part> parts(Design design, PartKind kind) {
    return design.layout().parts().stream().filter(p -> p.kind() == kind).toList();
  }

  private static List<String> rules(Design design) {
    return design.findings().stream().map(Finding::rule).map(r -> r.id()).toList();
  }

  @Test
  void aPipeGetsACollarPieceAndASaddleInItsBayOnly() {
    Design design = design(named("pipe-through-a-bay"));
    assertThat(parts(design, PartKind.COLLAR_PIECE)).hasSize(1);
    assertThat(parts(design, PartKind.SADDLE)).hasSize(1);
    assertThat(served(design)).isEqualTo(3);
  }

  @Test
  void aPipeNearOneJoistIsNotchedForInOneRailAndTheOtherIsLeftWhole() {
    Design design = design(named("pipe-at-edge"));
    List<Part> rails = parts(design, PartKind.SIDE_RAIL);
    assertThat(rails.stream().filter(r -> !r.cuts().isEmpty()))
        .singleElement()
        .satisfies(r -> assertThat(r.bay()).contains("B2"));
    assertThat(rules(design)).contains("leg-left-whole").doesNotContain("rail-notched-long");
    assertThat(served(design)).isEqualTo(3);
  }

  @Test
  void underDoubledAndTripledJoistsLieStripsAndUnderSingleOnesNone() {
    Design design = design(named("doubled-joists"));
    assertThat(parts(design, PartKind.PLY_STRIP)).isNotEmpty();
    assertThat(parts(design(named("pipe-through-a-bay")), PartKind.PLY_STRIP)).isEmpty();
  }

  @Test
  void theBeamIsWhereThePansEndAndTheDeckBeyondItIsSaidToDrip() {
    Design design = design(named("beam-in-the-fall"));
    assertThat(rules(design)).contains("open-beyond-the-beam");
    assertThat(served(design)).isEqualTo(3);
  }

  @Test
  void lowBlockingLowersTheSeatOfItsField() {
    assertThat(seat("low-blocking")).isLessThan(seat("doubled-joists"));
  }

  @Test
  void baysInUseAreDrainedFromBelowAndPansWouldServeNone() {
    HardCase full = named("bays-in-use");
    Design below = design(full);
    assertThat(served(below)).isEqualTo(4);
    assertThat(rules(below)).doesNotContain("batten-not-hung");
    assertThat(parts(below, PartKind.BATTEN_HANGER))
        .hasSizeGreaterThanOrEqualTo(2 * parts(below, PartKind.BATTEN).size());
    assertThat(served(design(new HardCase(full.deck(), "formed-aluminium", false)))).isZero();
  }

  @Test
  void aRunTooLongSaysWhichLimitsConflictAndOffersAGentlerFall() {
    Finding finding =
        design(named("run-too-long")).findings().stream()
            .filter(f -> f.rule().id().equals("no-seat-height"))
            .findFirst()
            .orElseThrow();
    assertThat(finding.fix().flatMap(Fix::action).orElseThrow().options().get(0).name())
        .isEqualTo("--fall");
  }

  @Test
  void aDeckThatStandsFreeFallsBothWaysWhereOneWayHasNoHeightAndIsTheFixThatIsOffered() {
    HardCase free = named("both-ways");
    Design oneWay = design(new HardCase(free.deck(), free.kit(), false));
    assertThat(served(oneWay)).isEqualTo(2);
    assertThat(oneWay.findings())
        .filteredOn(f -> f.rule().id().equals("no-seat-height"))
        .singleElement()
        .satisfies(
            f ->
                assertThat(f.fix().orElseThrow().words().toString())
                    .contains("falling both ways from a high line"));
    Design both = design(free);
    assertThat(both.layout().fields()).extracting(f -> f.bays().size()).containsExactly(3, 3);
    assertThat(parts(both, PartKind.RIDGE_CAP)).hasSize(3);
    assertThat(both.proof().dryFraction()).isGreaterThan(0.999);
    assertThat(rules(both)).doesNotContain("fall-direction-assumed", "no-head-rail");
  }

  @Test
  void aMembraneHangsInEveryBayOnceTheBoardsAreOff() {
    Design design = design(named("boards-not-yet-laid"));
    assertThat(parts(design, PartKind.MEMBRANE)).hasSize(3);
  }

  private static int served(Design design) {
    return design.layout().fields().stream().mapToInt(f -> f.bays().size()).sum();
  }

  private static double seat(String name) {
    return design(named(name)).layout().fields().get(0).seatHigh();
  }
}
