package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.command.Ran.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the user says beside the model: joists to assume, roles set right, services. */
class BesideTheModelTest extends AtTheShell {
  /** A slab of 4.8 m by 3.6 m, 30 mm thick, top at 3 m; the water goes as the user says. */
  private static final String SLAB =
      BARE.replace("$,$,$,$,#2)", "$,$,$,(#11),#2)")
          .replace(
              "ENDSEC;\nEND-ISO",
              """
              #10=IFCCARTESIANPOINT((0.,0.,0.));
              #11=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#12,$);
              #12=IFCAXIS2PLACEMENT3D(#10,$,$);
              #13=IFCDIRECTION((0.,0.,1.));
              #20=IFCCARTESIANPOINT((2.4,1.8,2.97));
              #21=IFCAXIS2PLACEMENT3D(#20,$,$);
              #22=IFCLOCALPLACEMENT($,#21);
              #23=IFCRECTANGLEPROFILEDEF(.AREA.,$,$,4.8,3.6);
              #24=IFCEXTRUDEDAREASOLID(#23,$,#13,0.03);
              #25=IFCSHAPEREPRESENTATION(#11,'Body','SweptSolid',(#24));
              #26=IFCPRODUCTDEFINITIONSHAPE($,$,(#25));
              #27=IFCSLAB('0000000000000000000002',$,'Deck',$,$,#22,#26,$,$);
              ENDSEC;
              END-ISO""")
          .formatted("IFC4");

  @Test
  void framingThatIsAssumedUnderASlabIsSaidToBeSoEverywhereAndNeverWritten() throws Exception {
    Path slab = file("slab.ifc", SLAB);
    Path drained = folder.resolve("drained.ifc");
    String joists = "joists=2x10@16in,direction=90";
    Ran survey = run("survey", slab, "--assume", joists, "--json");
    assertThat(survey.json().at("/decks/0/fields/0/assumed").asBoolean()).isTrue();
    assertThat(survey.json().at("/decks/0/fields/0/bays")).hasSize(12);
    assertThat(survey.json().at("/findings/0/rule").asText()).isEqualTo("framing-assumed");
    Ran design = run("design", slab, "--assume", joists, "--out", drained);
    assertThat(design.code()).isZero();
    assertThat(design.err()).contains("framing-assumed").contains("Wrote");
    String written = Files.readString(drained);
    assertThat(written).contains("'AssumedFraming',$,IFCTEXT('" + joists + "')");
    assertThat(written).doesNotContain("IFCBEAM");
    assertThat(run("strip", drained, "--out", folder.resolve("back.ifc")).code()).isZero();
    assertThat(sha256(folder.resolve("back.ifc"))).isEqualTo(sha256(slab));
  }

  @Test
  void whatTheUserSetsRightBesideTheModelIsFollowedByEveryVerb() throws Exception {
    String joist = run("survey", deck, "--json").json().at("/roles/0/member").asText();
    String overrides =
        """
        {"schema": "underlee/overrides/1", "roles": {}, "outside": {"%s": false}}
        """;
    file("deck.underlee.json", overrides.formatted(joist));
    Ran survey = run("survey", deck, "--json");
    assertThat(survey.json().at("/overrides/file").asText()).isEqualTo("deck.underlee.json");
    assertThat(survey.json().at("/decks/0/outside/value").asBoolean()).isFalse();
    assertThat(run("survey", deck).out())
        .contains("deck.underlee.json: 1 element set right by you");
    Ran design = run("design", deck, "--out", folder.resolve("drained.ifc"));
    assertThat(design.err()).contains("is left out: set right by hand");
    Path other = file("other.json", overrides.formatted("gone"));
    assertThat(run("survey", deck, "--overrides", other).err()).contains("override-stale (gone)");
  }

  /** A pipe of 60 mm by 60 mm through the slab's place, in millimetres and another schema. */
  private static String services(double x) {
    return BARE.replace("$,$,$,$,#2)", "$,$,$,(#11),#2)")
        .replace(".LENGTHUNIT.,$,", ".LENGTHUNIT.,.MILLI.,")
        .replace(
            "ENDSEC;\nEND-ISO",
            """
            #10=IFCCARTESIANPOINT((0.,0.,0.));
            #11=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#12,$);
            #12=IFCAXIS2PLACEMENT3D(#10,$,$);
            #13=IFCDIRECTION((0.,0.,1.));
            #20=IFCCARTESIANPOINT((%s,1000.,2000.));
            #21=IFCAXIS2PLACEMENT3D(#20,$,$);
            #22=IFCLOCALPLACEMENT($,#21);
            #23=IFCRECTANGLEPROFILEDEF(.AREA.,$,$,60.,60.);
            #24=IFCEXTRUDEDAREASOLID(#23,$,#13,1500.);
            #25=IFCSHAPEREPRESENTATION(#11,'Body','SweptSolid',(#24));
            #26=IFCPRODUCTDEFINITIONSHAPE($,$,(#25));
            #27=IFCFLOWSEGMENT('0000000000000000000009',$,'Riser',$,$,#22,#26,$);
            ENDSEC;
            END-ISO"""
                .formatted(x))
        .formatted("IFC2X3");
  }

  @Test
  void whatCrossesABayMayStandInAnotherModelWithAnotherUnit() throws Exception {
    Path slab = file("slab.ifc", SLAB);
    Path here = file("pipes.ifc", services(1000));
    Path far = file("far.ifc", services(1e6));
    Ran ran =
        run(
            "survey",
            slab,
            "--assume",
            "joists=2x10@16in,direction=90",
            "--json",
            "--services",
            here,
            far);
    assertThat(ran.json().at("/services/0/file").asText()).isEqualTo("pipes.ifc");
    assertThat(ran.json().at("/services/0/lengthUnit").asText()).isEqualTo("MILLIMETRE");
    JsonNode crossing = ran.json().at("/decks/0/fields/0/bays/2/crossings/0");
    assertThat(crossing.get("file").asText()).isEqualTo("pipes.ifc");
    assertThat(crossing.get("ifcClass").asText()).isEqualTo("IfcFlowSegment");
    assertThat(crossing.get("way").asText()).isEqualTo("through");
    assertThat(crossing.get("sizeMm").asDouble()).isEqualTo(60);
    assertThat(ran.err()).contains("warning services-elsewhere (far.ifc)");
    assertThat(ran.out().split("\"element\"", -1)).hasSize(2);
  }

  /** As check says it of the same model; the file of issues is the same too. */
  @Test
  void aDesignSaysWhatIsStillInItsWay() throws Exception {
    // The water pipe lower than it is drawn: where it is, no pan can be hung.
    String drawn = Files.readString(SAMPLES.resolve("pine-deck/services.ifc"));
    Path services = file("services.ifc", drawn.replace("2352.0400", "2252.0400"));
    Path out = folder.resolve("around.ifc");
    Path own = folder.resolve("design-issues.json");
    Path checks = folder.resolve("check-issues.json");
    Ran design =
        run(
            "design",
            deck,
            "--services",
            services,
            "--out",
            out,
            "--issues",
            own,
            "--write-interferences");
    assertThat(design.code()).isZero();
    assertThat(design.err()).contains("Wrote 0 interferences; ");
    Ran check = run("check", out, "--services", services, "--issues", checks);
    String issues = check.out().substring(check.out().indexOf(" parts against "));
    assertThat(design.out()).contains(issues);
    assertThat(own).hasSameTextualContentAs(checks);
    assertThat(issues).contains("pairs examined");
  }

  /** Whether the assembly would be laid out around the pipe has nothing to do with the vent. */
  @ParameterizedTest
  @ValueSource(strings = {"2352.0400", "2336.0400"})
  void aVentInTheServicesIsTooNearWhereverThePipesAre(String height) throws Exception {
    String drawn = Files.readString(SAMPLES.resolve("pine-deck/services.ifc"));
    assertThat(drawn).contains("2352.0400");
    Path services = file("services.ifc", drawn.replace("2352.0400", height));
    Path drained = folder.resolve("drained.ifc");
    run("design", deck, "--out", drained);
    Ran check = run("check", drained, "--services", services, "--fail-on", "error");
    assertThat(check.err()).contains("error part-near-vent-or-meter (services.ifc, #");
    assertThat(check.code()).isEqualTo(ExitCode.FINDINGS);
  }

  @Test
  void framingThatCannotBeAssumedIsAMistakeOfUsageOrOfTheModel() throws Exception {
    Path slab = file("slab.ifc", SLAB);
    Ran size = run("survey", slab, "--assume", "joists=2x11@16in");
    assertThat(size.code()).isEqualTo(2);
    assertThat(size.err()).contains("\"2x11\" is no size of lumber known here");
    Ran way = run("survey", slab, "--assume", "joists=2x10@16in");
    assertThat(way.code()).isEqualTo(3);
    assertThat(way.err()).contains("#27").contains("direction=90");
  }
}
