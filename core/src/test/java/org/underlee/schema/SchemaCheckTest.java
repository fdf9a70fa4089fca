package org.underlee.schema;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.step.StepFile;

/** A small schema with one of each kind of statement, and one fault of each kind. */
class SchemaCheckTest {
  private static final String SCHEMA =
      """
      SCHEMA IFC_TINY;
      (* A comment (* in a comment *) ENTITY no such; *)
      TYPE Label = STRING(5); END_TYPE;
      TYPE Size = REAL; WHERE WR1 : SELF > 0.; END_TYPE;
      TYPE Colour = ENUMERATION OF (RED, GREEN); END_TYPE;
      TYPE Any = SELECT (Label, Size, Thing); END_TYPE;
      ENTITY Thing ABSTRACT SUPERTYPE OF (ONEOF(Box, Link));
        Name : Label;
       UNIQUE
        UR1 : Name;
      END_ENTITY;
      ENTITY Box SUBTYPE OF (Thing);
        Sizes : LIST [2:3] OF Size;
        Colour : OPTIONAL Colour;
        Holds : OPTIONAL Any;
       DERIVE
        Total : REAL := Summed(SELF.Sizes);
       INVERSE
        Links : SET [0:1] OF Link FOR Ends;
       WHERE
        Small : Total < 100.;
        Known : NOT(EXISTS(Holds)) OR ('IFC_TINY.LABEL' IN TYPEOF(Holds)) OR
                (SIZEOF(QUERY(s <* Sizes | s = 1.)) = 0);
      END_ENTITY;
      ENTITY Cube SUBTYPE OF (Box);
       DERIVE
        SELF\\Thing.Name : Label := 'cube';
      END_ENTITY;
      ENTITY Link SUBTYPE OF (Thing);
        Ends : SET [2:2] OF Box;
      END_ENTITY;
      FUNCTION Summed(Numbers : LIST OF Size) : REAL;
       LOCAL
        sum : REAL := 0.;
       END_LOCAL;
       REPEAT i := 1 TO HIINDEX(Numbers);
         IF Numbers[i] < 0. THEN ESCAPE; ELSE sum := sum + Numbers[i]; END_IF;
       END_REPEAT;
       RETURN(sum);
      END_FUNCTION;
      RULE OneLink FOR (Link);
       WHERE
        WR1 : SIZEOF(Link) <= 1;
      END_RULE;
      END_SCHEMA;
      """;

  private static final String SOUND =
      """
      #1=BOX('a',(1.,2.),.RED.,$);
      #2=BOX('b',(1.,2.,3.),$,LABEL('x'));
      #3=LINK('c',(#1,#2));
      #4=CUBE(*,(1.,2.),$,#3);
      """;

  private static List<Finding> findings(String data) {
    String text =
        "ISO-10303-21;HEADER;FILE_DESCRIPTION((''),'2;1');"
            + "FILE_NAME('','',(''),(''),'','','');FILE_SCHEMA(('IFC_TINY'));ENDSEC;DATA;\n"
            + data
            + "ENDSEC;END-ISO-10303-21;";
    StepFile file = StepFile.of(text.getBytes(StandardCharsets.UTF_8), "tiny.ifc");
    return SchemaCheck.of(Schema.parse(SCHEMA, "tiny.exp"), file).findings();
  }

  @Test
  void aSoundFileIsClean() {
    // #4 holds a thing while one of its sizes is 1: the only rule that it breaks.
    assertThat(findings(SOUND.replace("#4=CUBE(*,(1.,2.)", "#4=CUBE(*,(3.,2.)"))).isEmpty();
    assertThat(findings(SOUND))
        .extracting(Finding::message)
        .containsExactly("Cube breaks Box.Known");
  }

  @Test
  void eachKindOfFaultIsFoundByTheRuleForIt() {
    Map<String, List<String>> faults =
        Map.ofEntries(
            Map.entry("schema-entity", List.of("#9=BALL('z');", "#9=THING('z');")),
            Map.entry("schema-attributes", List.of("#9=BOX('z',(2.,2.),$);")),
            Map.entry("schema-missing", List.of("#9=BOX($,(2.,2.),$,$);")),
            Map.entry(
                "schema-type",
                List.of(
                    "#9=BOX(1,(2.,2.),$,$);",
                    "#9=BOX('longer',(2.,2.),$,$);",
                    "#9=BOX('z',(2.,2),$,$);",
                    "#9=BOX('z',2.,$,$);",
                    "#9=BOX('z',(2.,2.),.BLUE.,$);",
                    "#9=BOX('z',(2.,2.),$,'x');",
                    "#9=BOX('z',(2.,2.),$,COLOUR(.RED.));",
                    "#9=BOX('z',(2.,2.),*,$);",
                    "#9=CUBE('z',(2.,2.),$,$);")),
            Map.entry(
                "schema-reference", List.of("#9=BOX('z',(2.,2.),$,#99);", "#9=LINK('z',(#1,#3));")),
            Map.entry(
                "schema-cardinality",
                List.of(
                    "#9=BOX('z',(2.),$,$);",
                    "#9=BOX('z',(2.,2.,2.,2.),$,$);",
                    "#9=LINK('z',(#4,#4));")),
            Map.entry("schema-unique", List.of("#9=BOX('a',(2.,2.),$,$);")),
            Map.entry("schema-inverse", List.of("#9=LINK('z',(#1,#4));")),
            Map.entry(
                "schema-where",
                List.of(
                    "#9=BOX('z',(2.,-2.),$,$);",
                    "#9=BOX('z',(2.,98.),$,$);",
                    "#9=BOX('z',(2.,2.),$,SIZE(0.));",
                    "#9=LINK('z',(#1,#4));")));
    String sound = SOUND.replace("(1.,2.),$,#3", "(3.,2.),$,#3");
    faults.forEach(
        (rule, lines) ->
            lines.forEach(
                line ->
                    assertThat(findings(sound + line + "\n"))
                        .as(line)
                        .extracting(f -> f.rule().id())
                        .contains(rule)));
  }

  @Test
  void faultsAtOnePointAreOneFindingThatNamesTheFirstInstances() {
    String more = "#%d=BOX('%s',(2.,2.),.BLUE.,$);\n";
    StringBuilder data = new StringBuilder();
    for (int i = 10; i < 17; i++) {
      data.append(String.format(java.util.Locale.ROOT, more, i, "n" + i));
    }
    assertThat(findings(data.toString()))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.message())
                  .isEqualTo(
                      "Box.Colour is no Colour: the enumeration .BLUE.; 7 instances: #10, #11,"
                          + " #12, #13, #14, …");
              assertThat(f.place().instance()).hasValue(10);
            });
  }

  @Test
  void aRuleThatIsNotKnownIsNamedAndNotTakenForBroken() {
    Schema schema = Schema.parse(SCHEMA.replace("SIZEOF(Link)", "SECRET(Link)"), "tiny.exp");
    String text =
        "ISO-10303-21;HEADER;FILE_SCHEMA(('IFC_TINY'));ENDSEC;DATA;ENDSEC;END-ISO-10303-21;";
    StepFile file = StepFile.of(text.getBytes(StandardCharsets.UTF_8), "tiny.ifc");
    assertThat(SchemaCheck.of(schema, file).findings())
        .extracting(Finding::message)
        .containsExactly("OneLink.WR1 was not executed: there is no function SECRET");
  }

  @Test
  void aTextThatIsNoSchemaIsRefusedWithTheLine() {
    assertThatThrownBy(() -> Schema.parse("SCHEMA a;\nENTITY b\n;x y;", "a.exp"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("a.exp, line 3")
        .hasMessageContaining("should have \":\" here but has Y");
  }
}
