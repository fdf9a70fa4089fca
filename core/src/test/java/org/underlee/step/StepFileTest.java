package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;

class StepFileTest {
  private static String text(StepFile file, int index) {
    ByteRange range = file.range(index);
    return new String(file.bytes(), range.from(), range.length(), StandardCharsets.ISO_8859_1);
  }

  @Test
  void everyInstanceIsIndexedInTheOrderOfTheFile() {
    StepFile file = StepTexts.data("#7=IFCWALL(#3);", "#3 = IfcSlab ( $ ) ;", "#1=IFCWALL();");
    assertThat(file.count()).isEqualTo(3);
    assertThat(List.of(file.id(0), file.id(1), file.id(2))).containsExactly(7L, 3L, 1L);
    assertThat(file.keyword(1)).isEqualTo("IFCSLAB");
    assertThat(file.ofKeyword("IFCWALL")).containsExactly(0, 2);
    assertThat(file.ofKeyword("IFCDOOR")).isEmpty();
    assertThat(file.find(3)).isEqualTo(1);
    assertThat(file.find(4)).isEqualTo(-1);
    assertThat(text(file, 1)).isEqualTo("#3 = IfcSlab ( $ ) ;");
  }

  @Test
  void theHeaderIsDecoded() {
    StepFile file = StepTexts.read(StepTexts.fileOf("Ifc4x3_Add2"));
    assertThat(file.schema()).isEqualTo("IFC4X3_ADD2");
    assertThat(file.header().description()).containsExactly("ViewDefinition [Reference]");
    assertThat(file.header().implementationLevel()).isEqualTo("2;1");
    assertThat(file.header().authors()).containsExactly("A. Author");
    assertThat(file.header().authorization()).isEqualTo("none");
  }

  @Test
  void commentsStringsAndLineEndsInsideAnInstanceDoNotEndIt() {
    String odd = "#1 /* ; */ = /*'*/ IFCWALL('it''s; /* #99 ',\r\n(#2,\r( 1. ) ) /* ) */,\"0F;\");";
    StepFile file = StepTexts.data(odd, "#2=IFCDOOR($);");
    assertThat(file.count()).isEqualTo(2);
    assertThat(text(file, 0)).isEqualTo(odd);
    assertThat(file.decode(0).text(0)).isEqualTo("it's; /* #99 ");
    assertThat(file.decode(0).value(2)).isEqualTo(new StepValue.Binary("0F;"));
    assertThat(file.highestId()).isEqualTo(2);
  }

  @Test
  void aComplexInstanceHasPartsAndNoKeyword() {
    StepFile file = StepTexts.data("#5=(IFCA(1)IFCB('x',#9));");
    StepInstance complex = file.decode(0);
    assertThat(file.keyword(0)).isEmpty();
    assertThat(complex.keyword()).isEmpty();
    assertThat(complex.parts()).extracting(StepInstance::keyword).containsExactly("IFCA", "IFCB");
    assertThat(complex.parts().get(1).ref(1)).isEqualTo(9);
  }

  @Test
  void everyKindOfValueIsDecoded() {
    StepInstance all =
        StepTexts.data("#1=X($,*,#12,'t',-3,1.5E-3,.Joist.,(1,(2)),IFCLABEL('l'),\"1A\",1E5,());")
            .decode(0);
    assertThat(all.values())
        .containsExactly(
            new StepValue.Omitted(),
            new StepValue.Derived(),
            new StepValue.Reference(12),
            new StepValue.Text("t"),
            new StepValue.Int("-3", -3),
            new StepValue.Real("1.5E-3", 0.0015),
            new StepValue.Enumeration("JOIST"),
            new StepValue.ListOf(
                List.of(
                    new StepValue.Int("1", 1),
                    new StepValue.ListOf(List.of(new StepValue.Int("2", 2))))),
            new StepValue.Typed("IFCLABEL", new StepValue.Text("l")),
            new StepValue.Binary("1A"),
            new StepValue.Real("1E5", 1e5),
            new StepValue.ListOf(List.of()));
  }

  @Test
  void numbersBeyondThirtyTwoBitsAndForwardReferencesAreFine() {
    StepFile file = StepTexts.data("#1=A(#99999999999);", "#5000000000=B(#1);");
    assertThat(file.find(5_000_000_000L)).isEqualTo(1);
    assertThat(file.highestId()).isEqualTo(99_999_999_999L);
  }

  @Test
  void everyKindOfLineEndCountsAsOneLine() {
    for (String end : List.of("\n", "\r", "\r\n")) {
      StepFile file = StepTexts.read(StepTexts.file("#1=A();", "#2=B();").replace("\n", end));
      assertThat(file.place(file.range(1).from())).hasToString("deck.ifc, line 9, column 1");
      assertThat(file.decode(1).place()).hasToString("deck.ifc, line 9, column 1, #2");
    }
  }

  @Test
  void aByteOrderMarkIsSteppedOver() {
    assertThat(StepTexts.read("\u00EF\u00BB\u00BF" + StepTexts.file("#1=A();")).count())
        .isEqualTo(1);
  }

  @Test
  void severalDataSectionsAreReadAndTheBlockGoesIntoTheLast() {
    String text = StepTexts.file("#1=A();", "ENDSEC;", "DATA('two',('IFC4'));", "#2=B();");
    StepFile file = StepTexts.read(text);
    assertThat(file.count()).isEqualTo(2);
    assertThat(file.blockOffset()).isEqualTo(text.lastIndexOf("ENDSEC"));
  }

  @Test
  void whatTheStandardForbidsButIsClearIsReadWithAFinding() {
    String whole = StepTexts.file("#1=A('x');");
    assertThat(StepTexts.read(whole).findings()).isEmpty();
    assertFound(whole.replace("END-ISO-10303-21;", ""), "no-trailer", 11);
    assertFound("\u00EF\u00BB\u00BF" + whole, "byte-order-mark", 1);
    assertFound(whole + "ISO-10303-21;", "text-after-trailer", 11);
    assertFound(whole.replace("'x'", "'\u00E9'"), "raw-bytes-in-text", 8);
    assertFound(whole.replace("'x'", "'C:\\deck'"), "lone-backslash", 8);
    assertFound(whole.replace("DATA;", "ANCHOR;\nENDSEC;\nDATA;"), "section-left-out", 7);
    String twice = whole.replace("FILE_SCHEMA(", "FILE_SCHEMA(('IFC2X3'));\nFILE_SCHEMA(");
    assertFound(twice, "header-entity-twice", 1);
    assertThat(StepTexts.read(twice).schema()).isEqualTo("IFC2X3");
  }

  private static void assertFound(String text, String rule, long line) {
    StepFile file = StepTexts.read(text);
    assertThat(file.count()).isEqualTo(1);
    assertThat(file.findings())
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.rule().id()).isEqualTo(rule);
              assertThat(f.place().line()).hasValue(line);
            });
  }

  @Test
  void everyDirectiveOfTheStandardPassesWithoutAFinding() {
    String text = "'\\\\ \\S\\D \\PE\\ \\X\\C4 \\X2\\03C0\\X0\\ \\X4\\0001F600\\X0\\ it''s'";
    assertThat(StepTexts.data("#1=A(" + text + ");").findings()).isEmpty();
  }

  @Test
  void limitsCanBeSetForAModelThatNeedsOthers() {
    String deep = StepTexts.file("#1=A(" + "(".repeat(200) + ")".repeat(200) + ");");
    assertRefused(deep, "nested deeper than 128");
    StepLimits wider = StepLimits.STANDARD.withNesting(300);
    assertThat(StepFile.of(bytes(deep), "deck.ifc", wider).decode(0).values()).hasSize(1);
    byte[] three = bytes(StepTexts.file("#1=A('abc');", "#2=B();", "#3=C();"));
    assertThatThrownBy(() -> StepFile.of(three, "deck.ifc", StepLimits.STANDARD.withRecords(2)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("line 10")
        .hasMessageContaining("more than 2 instances")
        .satisfies(e -> assertThat(((InputException) e).advice()).contains("--record-limit"));
    assertThatThrownBy(() -> StepFile.of(three, "deck.ifc", StepLimits.STANDARD.withStringBytes(2)))
        .hasMessageContaining("not closed within 2 bytes")
        .satisfies(e -> assertThat(((InputException) e).advice()).contains("--string-limit"));
    StepLimits widest = StepLimits.STANDARD.withStringBytes(Integer.MAX_VALUE);
    assertThat(StepFile.of(three, "deck.ifc", widest).decode(0).text(0)).isEqualTo("abc");
    assertThatThrownBy(() -> StepLimits.STANDARD.withNesting(1001))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  @Test
  void aTextOfManyDoubledApostrophesIsHeldToTheLimitToo() {
    StepFile file = StepTexts.data("#1=A('" + "''".repeat(600_000) + "');");
    assertThatThrownBy(() -> file.decode(0))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("a string longer than 1048576 bytes");
  }

  @Test
  void theBlockIsSplicedInAndNothingElseChanges() {
    String text = StepTexts.file("#1=A('\u00E9');  ");
    byte[] joined =
        StepSplice.insert(StepTexts.read(text), "#2=B();\n".getBytes(StandardCharsets.US_ASCII));
    int at = text.lastIndexOf("ENDSEC");
    assertThat(new String(joined, StandardCharsets.ISO_8859_1))
        .isEqualTo(text.substring(0, at) + "#2=B();\n" + text.substring(at));
  }

  @Test
  void findAgreesWithASlowSearchForManyRandomNumbers() {
    Random random = new Random(11);
    Map<Long, Integer> slow = new HashMap<>();
    StringBuilder lines = new StringBuilder();
    while (slow.size() < 5000) {
      long id = random.nextLong() >>> (2 + random.nextInt(60)) & 0xFFFF_FFFF_FFFFL;
      if (slow.putIfAbsent(id, slow.size()) == null) {
        lines.append('#').append(id).append("=A();");
      }
    }
    StepFile file = StepTexts.data(lines.toString());
    slow.forEach((id, index) -> assertThat(file.find(id)).isEqualTo(index));
    for (int i = 0; i < 5000; i++) {
      long id = random.nextInt(10_000);
      assertThat(file.find(id)).isEqualTo(slow.getOrDefault(id, -1));
    }
  }

  @Test
  void aNumberUsedTwiceIsRefusedWithBothLines() {
    assertThatThrownBy(() -> StepTexts.data("#1=A();", "#2=B();", "#1=C();"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("#1 is defined on line 8 and again on line 10");
  }

  @Test
  void otherKindsOfFileAreRefusedWithAdvice() {
    assertRefused("", "the file is empty");
    assertRefused("PK\u0003\u0004rest", "has no *.ifc entry");
    assertRefused("<ifcXML/>", "not an IFC text file");
    assertRefused("solid cube", "expected \"ISO-10303-21;\", found \"solid cube\"");
    assertRefused("ISO-10303-21;\nDATA;", "line 2, column 1: expected HEADER;");
    assertRefused("ISO-10303-21;HEADER;ENDSEC;END-ISO-10303-21;", "no DATA section");
  }

  @Test
  void aFileCutOffAnywhereIsRefusedUntilOnlyTheTrailerIsMissing() {
    String text = StepTexts.file("#1=A('x',(1.,#2),.T.);", "/* c */ #2=B(\"0\");");
    int complete = text.lastIndexOf("ENDSEC;") + "ENDSEC;".length();
    for (int end = 0; end < complete; end++) {
      String cut = text.substring(0, end);
      assertThatThrownBy(() -> StepTexts.read(cut))
          .as("cut after %s bytes", end)
          .isInstanceOfSatisfying(
              InputException.class,
              e -> {
                assertThat(e.place().line()).isPresent();
                assertThat(e.advice()).isNotBlank();
              });
    }
    assertThat(StepTexts.read(text.substring(0, complete)).count()).isEqualTo(2);
  }

  @Test
  void damageInsideAnInstanceIsShownWithItsPlaceAndNumber() {
    assertRefused(
        StepTexts.file("#1=A((1.,2.);", "#2=B();"),
        "deck.ifc, line 8, column 13, #1: A: expected ')', found \"; #2=B();");
    assertRefused(StepTexts.file("#1=A((1.,2.);"), "(byte 212)");
    assertRefused(
        StepTexts.file("#1=A('x);"), "line 8, column 6, #1: A: a string that begins here");
    assertRefused(StepTexts.file("#1=A();;"), "expected an instance (#…) or ENDSEC;");
    assertRefused(StepTexts.file("#1 A();"), "expected '=' after #1");
    assertRefused(StepTexts.file("#x=A();"), "expected an instance number");
    assertRefused(StepTexts.file("#1=;"), "expected '(' after the keyword");
    assertRefused(StepTexts.file("#1=A()/* "), "a comment that begins here never ends");
    assertRefused(StepTexts.file("#1234567890123456789=A();"), "19 digits, at most 18");
  }

  @Test
  void limitsAreHeldAndJustBelowThemAllIsWell() {
    String deep = "(".repeat(127) + ")".repeat(127);
    assertThat(StepTexts.data("#1=A(" + deep + ");").decode(0).values()).hasSize(1);
    assertRefused(StepTexts.file("#1=A((" + deep + "));"), "nested deeper than 128");
    String longest = "x".repeat((1 << 20) - 1);
    assertThat(StepTexts.data("#1=A('" + longest + "');").decode(0).text(0)).isEqualTo(longest);
    assertRefused(StepTexts.file("#1=A('xx" + longest + "');"), "not closed within 1048576 bytes");
  }

  @Test
  void valuesThatAreNoneAreRefusedWhenDecoded() {
    for (String bad : List.of("1.E999", "x", ".T", "1.2.3", "1,", "1 2", "IFCLABEL(1,2)", "-")) {
      StepFile file = StepTexts.data("#1=A(" + bad + ");");
      assertThatThrownBy(() -> file.decode(0)).as(bad).isInstanceOf(InputException.class);
    }
  }

  @Test
  void aMissingInstanceIsNamedTogetherWithTheOneThatNeedsIt() {
    StepFile file = StepTexts.data("#1=IFCWALL(#2);");
    assertThatThrownBy(() -> file.decode(0).follow(0))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "deck.ifc, line 8, column 1, #1: IFCWALL refers to #2, which the file does not have");
    assertThatThrownBy(() -> file.instance(2)).hasMessageContaining("no instance #2");
  }

  @Test
  void anAttributeOfTheWrongKindIsNamedWithWhatWasFound() {
    StepInstance wall =
        StepTexts.data("#1=IFCWALL('x',$,(1.,#2),IFCLENGTHMEASURE(2.5));").decode(0);
    assertThatThrownBy(() -> wall.ref(0))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "deck.ifc, line 8, column 1, #1: IFCWALL: attribute 1 should be a reference (#…)"
                + " but is the text 'x'");
    assertThatThrownBy(() -> wall.number(1)).hasMessageContaining("is nothing ($)");
    assertThatThrownBy(() -> wall.numbers(2)).hasMessageContaining("a list of numbers");
    assertThat(wall.number(3)).isEqualTo(2.5);
    assertThat(wall.optionalText(1)).isEmpty();
    assertThat(wall.optionalRef(17)).isEmpty();
  }

  @Test
  void aFileThatIsNotThereIsAnInputOutputError() {
    assertThatThrownBy(() -> StepFile.read(Path.of("no-such-file.ifc")))
        .isInstanceOf(UncheckedIOException.class)
        .hasMessageContaining("no-such-file.ifc");
  }

  private static void assertRefused(String text, String message) {
    assertThatThrownBy(() -> StepTexts.read(text))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(message);
  }
}
