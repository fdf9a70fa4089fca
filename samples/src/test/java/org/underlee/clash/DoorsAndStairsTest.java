package org.underlee.clash;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;
import org.underlee.layout.PartKind;
import org.underlee.run.DeckRun;
import org.underlee.run.SurveyRequest;

/** Doors that swing, and stairs with heads above them, below the drained pine deck. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DoorsAndStairsTest {
  private static final double LEAF = 0.9;

  private Path folder;
  private Path drained;
  private Box downspout;
  private Box pan;

  @BeforeAll
  void drainOnce(@TempDir Path temporary) throws IOException {
    folder = temporary;
    drained = PineIssues.drained(folder);
    downspout = first(PartKind.DOWNSPOUT);
    pan = first(PartKind.PAN);
  }

  private Box first(PartKind kind) {
    return DeckRun.check(drained, SurveyRequest.PLAIN, Optional.empty()).parts().stream()
        .filter(p -> p.kind() == kind)
        .findFirst()
        .orElseThrow()
        .element()
        .shape()
        .bounds();
  }

  /** Half a metre before the downspout, which its leaf would meet when it swings to positive y. */
  private String door(String schema, String operation, String more) {
    Vec3 spout = downspout.centre();
    String own = schema.equals("IFC2X3") ? "" : ",$," + operation;
    return model(
        schema,
        String.format(
            Locale.ROOT,
            "#50=IFCDOOR('0D00000000000000000001',$,'Garden door',$,$,#41,#35,$,2.1,%.3f%s%s);\n%s",
            LEAF,
            own,
            schema.equals("IFC2X3") ? "" : ",$",
            more),
        new Vec3(spout.x() - LEAF / 2, spout.y() - 0.5, 0),
        new Vec3(LEAF, 0.04, 2.1));
  }

  /** One body, a box with a corner at a place. */
  private static String model(String schema, String element, Vec3 at, Vec3 size) {
    return String.format(
        Locale.ROOT,
        """
        ISO-10303-21;
        HEADER;
        FILE_DESCRIPTION((''),'2;1');
        FILE_NAME('','2026-01-01T00:00:00',(''),(''),'','','');
        FILE_SCHEMA(('%s'));
        ENDSEC;
        DATA;
        #1=IFCPROJECT('0P00000000000000000009',$,'Doors and stairs',$,$,$,$,(#8),#2);
        #2=IFCUNITASSIGNMENT((#3));
        #3=IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.);
        #8=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#11,$);
        #10=IFCCARTESIANPOINT((0.,0.,0.));
        #11=IFCAXIS2PLACEMENT3D(#10,$,$);
        #30=IFCCARTESIANPOINT((%.4f,%.4f));
        #31=IFCAXIS2PLACEMENT2D(#30,$);
        #32=IFCRECTANGLEPROFILEDEF(.AREA.,$,#31,%.4f,%.4f);
        #33=IFCEXTRUDEDAREASOLID(#32,#11,#36,%.4f);
        #34=IFCSHAPEREPRESENTATION(#8,'Body','SweptSolid',(#33));
        #35=IFCPRODUCTDEFINITIONSHAPE($,$,(#34));
        #36=IFCDIRECTION((0.,0.,1.));
        #39=IFCCARTESIANPOINT((%.4f,%.4f,%.4f));
        #40=IFCAXIS2PLACEMENT3D(#39,$,$);
        #41=IFCLOCALPLACEMENT($,#40);
        %s
        ENDSEC;
        END-ISO-10303-21;
        """,
        schema,
        size.x() / 2,
        size.y() / 2,
        size.x(),
        size.y(),
        size.z(),
        at.x(),
        at.y(),
        at.z(),
        element);
  }

  private List<Cause> causes(String services) throws IOException {
    Path file = Files.writeString(folder.resolve("below.ifc"), services);
    return PineIssues.of(drained, IssueRegister.EMPTY, file).issues().stream()
        .map(Tracked::cause)
        .toList();
  }

  @ParameterizedTest(name = "{0} {1}: {2}")
  @CsvSource({
    "IFC4, .SINGLE_SWING_LEFT., true",
    "IFC4X3, .SINGLE_SWING_RIGHT., true",
    "IFC4, .DOUBLE_SWING_LEFT., true",
    "IFC4, .SLIDING_TO_LEFT., false",
    "IFC4, .ROLLINGUP., false",
    "IFC4, $, false",
  })
  void aDownspoutInTheSwingOfADoorIsAnIssueAndBesideASlidingOneIsNone(
      String schema, String operation, boolean inTheWay) throws IOException {
    List<Cause> causes = causes(door(schema, operation, ""));
    assertThat(causes.contains(Cause.SWING)).as(causes.toString()).isEqualTo(inTheWay);
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "IFC2X3 | IFCDOORSTYLE('0T00000000000000000001',$,'S',$,$,$,$,$,.SINGLE_SWING_LEFT.,.WOOD.,.F.,.F.) | true",
        "IFC2X3 | IFCDOORSTYLE('0T00000000000000000001',$,'S',$,$,$,$,$,.SLIDING_TO_LEFT.,.WOOD.,.F.,.F.) | false",
        "IFC4 | IFCDOORTYPE('0T00000000000000000001',$,'T',$,$,$,$,$,$,.DOOR.,.SINGLE_SWING_LEFT.,.F.,$) | true",
      })
  void howADoorOpensMayBeSaidByItsTypeOrStyle(String schema, String type, boolean inTheWay)
      throws IOException {
    String typed =
        "#60=" + type + ";\n#61=IFCRELDEFINESBYTYPE('0R00000000000000000001',$,$,$,(#50),#60);";
    assertThat(causes(door(schema, "$", typed)).contains(Cause.SWING)).isEqualTo(inTheWay);
  }

  @ParameterizedTest(name = "{0} m under the pans")
  @CsvSource({"1.9, true", "2.1, false"})
  void aPanHangsTooLowOverAStairOfLessThanSixFeetEightInches(double under, boolean low)
      throws IOException {
    Vec3 middle = pan.centre();
    String stair =
        model(
            "IFC4",
            "#50=IFCSTAIRFLIGHT('0D00000000000000000002',$,'Garden steps',$,$,#41,#35,$,$,$,$,$,$);",
            new Vec3(middle.x(), middle.y(), pan.min().z() - under - 0.2),
            new Vec3(0.3, 0.3, 0.2));
    assertThat(causes(stair).contains(Cause.HEADROOM)).isEqualTo(low);
  }
}
