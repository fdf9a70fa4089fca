package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.w3c.dom.Document;

class PlanTest {
  private static final PlanStyle RED = PlanStyle.lined("red", 0xff0000, 2).filled(0x00ff00);

  @Test
  void theSvgIsWellFormedAndHoldsItsTexts() throws Exception {
    PlanDrawing plan = DemoPlan.drawing();
    Document document = parsed(Svg.write(plan, PlanSheet.of(plan, 25, 10)));
    assertThat(document.getElementsByTagName("title").item(0).getTextContent())
        .isEqualTo("Bays <B1 & B8>");
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < document.getElementsByTagName("text").getLength(); i++) {
      texts.add(document.getElementsByTagName("text").item(i).getTextContent());
    }
    assertThat(texts).contains("B1", "B8", "1:96", "3200 mm (10' 6\")", "6 ft", "N");
  }

  @Test
  void controlCharactersInATextDoNotBreakTheSvg() throws Exception {
    PlanDrawing plan =
        new PlanBuilder()
            .label(new Vec2(0, 0), "a\u0000\u001b<&\ud800z", 2, PlanItem.Anchor.START, 0, RED)
            .build("\uffff");
    Document document = parsed(Svg.write(plan, PlanSheet.of(plan, 25, 10)));
    assertThat(document.getElementsByTagName("text").item(0).getTextContent()).isEqualTo("a<&z");
  }

  @Test
  void theSvgDoesNotDependOnTheLocale() {
    Locale usual = Locale.getDefault();
    PlanDrawing plan = DemoPlan.drawing();
    String expected = Svg.write(plan, PlanSheet.of(plan, 25, 10));
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(Svg.write(plan, PlanSheet.of(plan, 25, 10))).isEqualTo(expected);
    } finally {
      Locale.setDefault(usual);
    }
  }

  @Test
  void numbersHaveThreeDecimalsAtMostAndNoMinusZero() {
    assertThat(List.of(0.0, -0.0004, 1.5, -2.0005, 12.3456, 0.05, 100.0))
        .extracting(SvgText::number)
        .containsExactly("0", "0", "1.5", "-2.001", "12.346", "0.05", "100");
  }

  @Test
  void twoStylesOfOneNameAreRefused() {
    PlanDrawing plan =
        new PlanBuilder()
            .circle(new Vec2(0, 0), 1, RED)
            .circle(new Vec2(3, 0), 1, RED.filled(0))
            .build("");
    assertThatThrownBy(() -> Svg.write(plan, PlanSheet.of(plan, 25, 10)))
        .hasMessageContaining("two styles share the name 'red'");
  }

  @Test
  void aSheetHasTheLargestScaleThatFits() {
    PlanDrawing plan =
        new PlanBuilder().area(Outline.rectangle(0, 0, 8, 4), PlanStyle.PAN).build("");
    PlanSheet a4 = PlanSheet.fitting(plan, 297, 210, 10, PlanSheet.METRIC_SCALES);
    // 8 m is 320 mm at 1:25 and 160 mm at 1:50; with margins 180 mm.
    assertThat(a4.denominator()).isEqualTo(50);
    assertThat(a4.widthMm()).isEqualTo(180, within(1e-9));
    assertThat(a4.heightMm()).isEqualTo(100, within(1e-9));
    assertThat(PlanSheet.fitting(plan, 5, 5, 10, PlanSheet.METRIC_SCALES).denominator())
        .isEqualTo(500);
  }

  @Test
  void theSheetMakesRoomForTexts() {
    PlanDrawing plan =
        new PlanBuilder()
            .label(new Vec2(0, 0), "2362 mm", 5, PlanItem.Anchor.START, 90, PlanStyle.NOTE)
            .build("");
    PlanSheet sheet = PlanSheet.of(plan, 50, 0);
    assertThat(sheet.heightMm()).isGreaterThan(3 * sheet.widthMm());
  }

  @Test
  void anAreaIsFilledButForItsHoles() {
    Outline frame =
        new Outline(
            Outline.rectangle(0, 0, 2, 2).outer(),
            List.of(Outline.rectangle(0.5, 0.5, 1.5, 1.5).outer()));
    Image image = raster(new PlanBuilder().area(frame, RED), 1);
    assertThat(image.width()).isEqualTo(120);
    assertThat(image.argb(60, 60)).isEqualTo(0xffffffff);
    assertThat(image.argb(22, 60)).isEqualTo(0xff00ff00);
    assertThat(image.argb(98, 60)).isEqualTo(0xff00ff00);
    assertThat(image.argb(10, 60)).isEqualTo(0xffff0000);
    assertThat(image.argb(3, 60)).isEqualTo(0xffffffff);
  }

  @Test
  void laterItemsLieOverEarlierOnes() {
    PlanBuilder plan =
        new PlanBuilder()
            .area(Outline.rectangle(0, 0, 2, 2), RED)
            .area(Outline.rectangle(0, 0, 2, 2), PlanStyle.PAN);
    assertThat(raster(plan, 1).argb(60, 60))
        .isEqualTo(Colours.OPAQUE | PlanStyle.PAN.fill().orElseThrow());
  }

  @Test
  void aPlanPictureIsTheSameForAnyNumberOfThreads() {
    PlanDrawing plan = DemoPlan.drawing();
    PlanSheet sheet = PlanSheet.of(plan, 50, 10);
    int[] one = PlanRaster.draw(plan, sheet, 2, 1).pixels();
    assertThat(PlanRaster.draw(plan, sheet, 2, 3).pixels()).isEqualTo(one);
  }

  @Test
  void anArrowPointsToItsEnd() {
    PlanStyle ink = PlanStyle.lined("ink", 0, 0.3);
    PlanDrawing plan = new PlanBuilder().arrow(new Vec2(0, 0), new Vec2(2, 0), ink).build("");
    ArrowOnPaper arrow =
        ArrowOnPaper.of((PlanItem.Arrow) plan.items().get(0), PlanSheet.of(plan, 50, 5));
    assertThat(arrow.heads()).hasSize(1);
    assertThat(arrow.heads().get(0).get(0)).isEqualTo(new Vec2(45, 5));
    assertThat(arrow.heads().get(0).get(1).x()).isEqualTo(42.8, within(1e-9));
  }

  @Test
  void aDimensionIsReadFromBelowOrFromTheRight() {
    for (int degrees = 0; degrees < 360; degrees += 15) {
      double angle = Math.toRadians(degrees);
      Vec2 to = new Vec2(Math.cos(angle), Math.sin(angle));
      PlanDrawing plan = new PlanBuilder().dimension(new Vec2(0, 0), to, 0.1, "1 m").build("");
      double turn =
          plan.items().stream()
              .filter(PlanItem.Label.class::isInstance)
              .mapToDouble(i -> ((PlanItem.Label) i).turn())
              .findFirst()
              .orElseThrow();
      assertThat(turn).isGreaterThan(-90 + 1e-6).isLessThanOrEqualTo(90 + 1e-6);
      assertThat(Math.abs(Math.sin(Math.toRadians(turn) - angle))).isLessThan(1e-9);
    }
  }

  @Test
  void onAScreenNoTextLiesOnAnotherAndNamesOnPlatesComeFirst() {
    PlanDrawing plan =
        new PlanBuilder()
            .area(Outline.rectangle(0, 0, 2, 2), RED)
            .label(new Vec2(1, 1), "355 mm", 1.8, PlanItem.Anchor.MIDDLE, 90, PlanStyle.NOTE)
            .label(new Vec2(1, 1.05), "B1", 1.8, PlanItem.Anchor.MIDDLE, 0, PlanStyle.TAG)
            .label(new Vec2(1, 0.4), "1:96", 1.8, PlanItem.Anchor.MIDDLE, 90, PlanStyle.FALL)
            .build("");
    PlanDrawing far = plan.legibleOn(PlanSheet.of(plan, 50, 5));
    assertThat(far.items())
        .containsExactly(plan.items().get(0), plan.items().get(2), plan.items().get(3));
    PlanDrawing near = plan.legibleOn(PlanSheet.of(plan, 5, 5));
    assertThat(near).isEqualTo(plan);
  }

  @Test
  void dashesCoverTheirShareOfALineInOrder() {
    Random random = new Random(5);
    List<Vec2> line = new ArrayList<>();
    double length = 0;
    for (int i = 0; i < 40; i++) {
      line.add(new Vec2(random.nextDouble() * 10, random.nextDouble() * 10));
      length += i == 0 ? 0 : line.get(i).minus(line.get(i - 1)).length();
    }
    double drawn = 0;
    for (List<Vec2> dash : Dashes.of(line, List.of(3.0, 1.0))) {
      for (int i = 1; i < dash.size(); i++) {
        drawn += dash.get(i).minus(dash.get(i - 1)).length();
      }
    }
    double left = length % 4;
    assertThat(drawn).isEqualTo(Math.floor(length / 4) * 3 + Math.min(3, left), within(1e-9));
  }

  @Test
  void theBuiltInLettersHoldAllThatLabelsNeed() {
    StrokeFont font = StrokeFont.BUILT_IN;
    List<List<Vec2>> box = font.strokes("\u2603");
    String needed =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;'\"°/-–+×=()%#Ø<>_";
    needed
        .codePoints()
        .mapToObj(Character::toString)
        .forEach(c -> assertThat(font.strokes(c)).as(c).isNotEmpty().isNotEqualTo(box));
    assertThat(font.strokes(" ")).isEmpty();
    assertThat(font.width("B3 B3")).isGreaterThan(2 * font.width("B3"));
  }

  private static Image raster(PlanBuilder plan, int threads) {
    PlanDrawing drawing = plan.build("");
    // 2 m at 1:20 is 100 mm, and 10 mm of margin on each side: 120 pixels.
    return PlanRaster.draw(drawing, PlanSheet.of(drawing, 20, 10), 1, threads);
  }

  private static Document parsed(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
  }
}
