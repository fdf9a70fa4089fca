package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.underlee.clash.IssueRegister;
import org.underlee.finding.InputException;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.Coordination;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.SchemaChecked;
import org.underlee.step.StepFile;
import org.underlee.step.StepLimits;
import org.underlee.writeback.Strip;

/**
 * What is in the way, as relationships in the model: the pine deck with a dryer vent of its own.
 */
class InterferencesTest {
  private static String withVent(String model) {
    String context = first(model, "IFCGEOMETRICREPRESENTATIONCONTEXT");
    String owner = first(model, "IFCOWNERHISTORY");
    String lines =
        "#900001=IFCCARTESIANPOINT((8.3,-0.08,6.5));\n"
            + "#900002=IFCAXIS2PLACEMENT3D(#900001,$,$);\n"
            + "#900003=IFCLOCALPLACEMENT($,#900002);\n"
            + "#900004=IFCCARTESIANPOINT((0.,0.));\n"
            + "#900005=IFCAXIS2PLACEMENT2D(#900004,$);\n"
            + "#900006=IFCRECTANGLEPROFILEDEF(.AREA.,$,#900005,0.3,0.3);\n"
            + "#900007=IFCCARTESIANPOINT((0.,0.,0.));\n"
            + "#900008=IFCAXIS2PLACEMENT3D(#900007,$,$);\n"
            + "#900009=IFCDIRECTION((0.,0.,1.));\n"
            + "#900010=IFCEXTRUDEDAREASOLID(#900006,#900008,#900009,0.25);\n"
            + "#900011=IFCSHAPEREPRESENTATION("
            + context
            + ",'Body','SweptSolid',(#900010));\n"
            + "#900012=IFCPRODUCTDEFINITIONSHAPE($,$,(#900011));\n"
            + "#900013=IFCFLOWTERMINAL('2jlqqt1xuh4Ue6ukklgDDX',"
            + owner
            + ",'Dryer vent',$,$,#900003,#900012,$);\n";
    int end = model.lastIndexOf("ENDSEC;");
    return model.substring(0, end) + lines + model.substring(end);
  }

  private static String first(String model, String entity) {
    Matcher line = Pattern.compile("(#\\d+)= ?" + entity + "\\(").matcher(model);
    return line.find() ? line.group(1) : "$";
  }

  private static Design design(Mix.Schema schema) {
    SampleDeck pine =
        SampleDecks.all().stream()
            .filter(d -> d.name().equals("pine-deck"))
            .findFirst()
            .orElseThrow();
    byte[] plain = IfcEmitter.emit(pine, pine.ownMix().with(schema));
    byte[] model =
        withVent(new String(plain, StandardCharsets.ISO_8859_1))
            .getBytes(StandardCharsets.ISO_8859_1);
    return DeckRun.design(
        DeckRun.survey(model, "pine-deck.ifc"), Scope.OUTSIDE, KitReader.builtIn());
  }

  @ParameterizedTest
  @EnumSource(names = {"IFC4", "IFC4X3_ADD2"})
  void whatIsInTheWayIsWrittenAsTheSchemaSaysAndStrippedWithTheRest(Mix.Schema schema) {
    Design design = design(schema);
    Coordination found = DeckRun.coordinate(design, IssueRegister.EMPTY).orElseThrow();
    assertThat(found.issues()).hasSize(1);
    assertThat(found.interferences()).hasSameSizeAs(found.found().clashes()).isNotEmpty();
    byte[] bytes = DeckRun.withInterferences(design, found).written().bytes();
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    assertThat(text.split("IFCRELINTERFERESELEMENTS\\(", -1))
        .hasSize(1 + found.interferences().size());
    assertThat(text).containsPattern(",#900013,#\\d+,\\$,'too-near',\\.F\\.");
    SchemaChecked checked =
        SchemaChecked.of(
            StepFile.of(bytes, "pine-deck.ifc", StepLimits.STANDARD),
            OutputsFollowTheSchemaTest.schema(schema),
            true);
    assertThat(checked.report().instances()).isPositive();
    assertThat(checked.report().findings()).isEmpty();
    assertThat(Strip.original(bytes).orElseThrow().bytes())
        .isEqualTo(design.survey().model().step().bytes());
  }

  @Test
  void theOldSchemaHasNoSuchRelationshipAndThatIsSaid() {
    Design design = design(Mix.Schema.IFC2X3);
    Coordination found = DeckRun.coordinate(design, IssueRegister.EMPTY).orElseThrow();
    assertThat(found.interferences()).isNotEmpty();
    assertThatThrownBy(() -> DeckRun.withInterferences(design, found))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("IFC2X3");
  }
}
