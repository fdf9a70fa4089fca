package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.clash.Cause;
import org.underlee.clash.Clash;
import org.underlee.clash.ClashFinder;
import org.underlee.clash.Clearances;
import org.underlee.clash.Ours;
import org.underlee.clash.Theirs;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Bodies;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.PartKind;
import org.underlee.step.StepFile;
import org.underlee.step.StepLimits;

/**
 * Doors and windows 1 m wide and 2 m high, from (10, 20, 0) along x, and a downspout 60 mm thick in
 * their way or beside it.
 */
class SwingsTest {
  private static final int OPENING = 30;

  private static String model(String schema, String... lines) {
    return "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\n"
        + "FILE_NAME('m.ifc','',(''),(''),'','','');\nFILE_SCHEMA(('"
        + schema
        + "'));\nENDSEC;\nDATA;\n"
        + "#1=IFCPROJECT('0P00000000000000000001',$,'P',$,$,$,$,(#8),#2);\n"
        + "#2=IFCUNITASSIGNMENT((#3));\n#3=IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.);\n"
        + "#8=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#11,$);\n"
        + "#10=IFCCARTESIANPOINT((10000.,20000.,0.));\n#11=IFCAXIS2PLACEMENT3D(#10,$,$);\n"
        + "#12=IFCLOCALPLACEMENT($,#11);\n"
        + String.join("\n", lines)
        + "\nENDSEC;\nEND-ISO-10303-21;\n";
  }

  private static String door4(String operation) {
    return "#30=IFCDOOR('0D00000000000000000001',$,'Door',$,$,#12,$,$,2000.,1000.,.DOOR.,"
        + operation
        + ",$);";
  }

  private static BuildingElement element(long instance, String ifcClass, Mesh shape) {
    return new BuildingElement(
        instance, "0X" + instance, ifcClass, "", "", "", Optional.empty(), shape);
  }

  /** A downspout with its middle at x, y from the opening's own corner, from z up. */
  private static Ours downspout(double x, double y, double low, double high) {
    Mesh body =
        Bodies.box(0.06, 0.06, high - low)
            .transformed(Transform.translation(new Vec3(10 + x, 20 + y, (low + high) / 2)));
    return Ours.of("deck-1/field-1/downspout-1", PartKind.DOWNSPOUT, element(99, "IfcPart", body));
  }

  private static List<Cause> found(String model, String ifcClass, Ours part) {
    byte[] bytes = model.getBytes(StandardCharsets.ISO_8859_1);
    IfcModel read = IfcModel.of(StepFile.of(bytes, "m.ifc", StepLimits.STANDARD));
    Mesh leaf = Bodies.box(1, 0.05, 2).transformed(Transform.translation(new Vec3(10.5, 20, 1)));
    BuildingElement opening = element(OPENING, ifcClass, leaf);
    Theirs thing =
        Theirs.of(opening, Clearances.builtIn(), Swings.of(read, opening, Transform.IDENTITY));
    return ClashFinder.find(List.of(), List.of(part), List.of(thing)).clashes().stream()
        .map(Clash::cause)
        .toList();
  }

  /** The far corner from the hinge is outside of the quarter of a circle, though in its box. */
  @ParameterizedTest
  @CsvSource({
    ".SINGLE_SWING_LEFT., 0.60, 0.60, true",
    ".SINGLE_SWING_LEFT., 0.90, 0.90, false",
    ".SINGLE_SWING_LEFT., 0.10, 0.90, true",
    ".SINGLE_SWING_LEFT., 0.60, -0.60, false",
    ".SINGLE_SWING_RIGHT., 0.90, 0.90, true",
    ".SINGLE_SWING_RIGHT., 0.10, 0.90, false",
    ".DOUBLE_SWING_LEFT., 0.60, -0.60, true",
    ".DOUBLE_SWING_RIGHT., 0.10, -0.90, false",
    ".DOUBLE_DOOR_SINGLE_SWING., 0.10, 0.40, true",
    ".DOUBLE_DOOR_SINGLE_SWING., 0.90, 0.40, true",
    ".DOUBLE_DOOR_SINGLE_SWING., 0.50, 0.45, false",
    ".DOUBLE_DOOR_DOUBLE_SWING., 0.10, -0.40, true",
    ".SLIDING_TO_LEFT., 0.60, 0.60, false",
    "$, 0.60, 0.60, false"
  })
  void aDoorSweepsASectorAroundItsHinge(String operation, double x, double y, boolean hit) {
    assertThat(found(model("IFC4", door4(operation)), "IfcDoor", downspout(x, y, 0, 3)))
        .isEqualTo(hit ? List.of(Cause.SWING) : List.of());
  }

  @Test
  void whatHangsAboveTheLeafIsNotInItsWay() {
    String model = model("IFC4", door4(".SINGLE_SWING_LEFT."));
    assertThat(found(model, "IfcDoor", downspout(0.6, 0.6, 2.01, 3))).isEmpty();
    assertThat(found(model, "IfcDoor", downspout(0.6, 0.6, 1.99, 3))).contains(Cause.SWING);
  }

  /** In IFC2X3 the style says how a door opens, in IFC4 the type where the door does not. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "IFC2X3; #30=IFCDOOR('0D00000000000000000001',$,'',$,$,#12,$,$,2000.,1000.);"
            + " #31=IFCDOORSTYLE('0D00000000000000000002',$,'',$,$,$,$,$,.SINGLE_SWING_RIGHT.,"
            + ".NOTDEFINED.,.T.,.F.)",
        "IFC2X3; #30=IFCDOOR('0D00000000000000000001',$,'',$,$,#12,$,$,$,$);"
            + " #31=IFCDOORSTYLE('0D00000000000000000002',$,'',$,$,$,$,$,.SINGLE_SWING_RIGHT.,"
            + ".NOTDEFINED.,.T.,.F.)",
        "IFC4; #30=IFCDOOR('0D00000000000000000001',$,'',$,$,#12,$,$,2000.,1000.,$,$,$);"
            + " #31=IFCDOORTYPE('0D00000000000000000002',$,'',$,$,$,$,$,$,.DOOR.,"
            + ".SINGLE_SWING_RIGHT.,$,$)"
      })
  void theStyleOrTypeSaysItForTheDoor(String schema, String door, String style) {
    String model =
        model(
            schema,
            door + ";",
            style + ";",
            "#32=IFCRELDEFINESBYTYPE('0D00000000000000000003',$,$,$,(#30),#31);");
    assertThat(found(model, "IfcDoor", downspout(0.9, 0.9, 0, 3))).containsExactly(Cause.SWING);
    assertThat(found(model, "IfcDoor", downspout(0.1, 0.9, 0, 3))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "SIDEHUNGLEFTHAND, 0.10, -0.90, 0, true",
    "SIDEHUNGLEFTHAND, 0.90, 0.90, 0, false",
    "SIDEHUNGRIGHTHAND, 0.90, 0.90, 0, true",
    "TILTANDTURNRIGHTHAND, 0.90, -0.90, 0, true",
    "TOPHUNG, 0.50, 1.90, 1.9, true",
    "TOPHUNG, 0.50, 1.90, 2.01, false",
    "BOTTOMHUNG, 0.50, -1.50, 0, true",
    "PIVOTVERTICAL, 0.50, 0.45, 0, true",
    "PIVOTVERTICAL, 0.50, 0.55, 0, false",
    "PIVOTHORIZONTAL, 0.50, 0.90, 0.9, true",
    "FIXEDCASEMENT, 0.10, 0.40, 0, false",
    "SLIDINGHORIZONTAL, 0.10, 0.40, 0, false"
  })
  void aSashSweepsBothSidesOfTheWindow(
      String operation, double x, double y, double low, boolean hit) {
    String model =
        model(
            "IFC4",
            "#30=IFCWINDOW('0W00000000000000000001',$,'',$,$,#12,$,$,2000.,1000.,$,$,$);",
            "#31=IFCWINDOWTYPE('0W00000000000000000002',$,'',$,$,(#33),$,$,$,.WINDOW.,"
                + ".SINGLE_PANEL.,$,$);",
            "#32=IFCRELDEFINESBYTYPE('0W00000000000000000003',$,$,$,(#30),#31);",
            "#33=IFCWINDOWPANELPROPERTIES('0W00000000000000000004',$,$,$,."
                + operation
                + ".,.NOTDEFINED.,$,$,$);");
    assertThat(found(model, "IfcWindow", downspout(x, y, low, low + 0.3)))
        .isEqualTo(hit ? List.of(Cause.SWING) : List.of());
  }

  @Test
  void oneOfTwoSashesSweepsItsOwnHalf() {
    String panel = ",$,$,$,.SIDEHUNGRIGHTHAND.,.RIGHT.,$,$,$);";
    String model =
        model(
            "IFC4",
            "#30=IFCWINDOW('0W00000000000000000001',$,'',$,$,#12,$,$,2000.,1000.,$,$,$);",
            "#31=IFCWINDOWTYPE('0W00000000000000000002',$,'',$,$,(#33,#34),$,$,$,.WINDOW.,"
                + ".DOUBLE_PANEL_VERTICAL.,$,$);",
            "#32=IFCRELDEFINESBYTYPE('0W00000000000000000003',$,$,$,(#30),#31);",
            "#33=IFCWINDOWPANELPROPERTIES('0W00000000000000000004'" + panel,
            "#34=IFCWINDOWPANELPROPERTIES('0W00000000000000000005',$,$,$,.FIXEDCASEMENT.,.LEFT.,"
                + "$,$,$);");
    assertThat(found(model, "IfcWindow", downspout(0.9, 0.4, 0, 1))).containsExactly(Cause.SWING);
    assertThat(found(model, "IfcWindow", downspout(0.9, 0.7, 0, 1))).isEmpty();
    assertThat(found(model, "IfcWindow", downspout(0.1, 0.4, 0, 1))).isEmpty();
  }
}
