package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.finding.InputException;

/** The index read ahead in many small chunks against the same one read in one go. */
class StepIndexTest {
  private static final String[] HOSTILE = {
    "'",
    "''",
    ";",
    ";\n#1=A();",
    "/*",
    "*/",
    "#77",
    "=",
    "(",
    ")",
    "\n",
    "\\S\\'",
    "\"",
    "ENDSEC;",
    "x",
    "DATA;",
    ",",
    " ",
    ";#5=B('",
    "\\",
    "\\X2\\",
    "END-ISO-10303-21;",
    "\u00E9"
  };

  /** Text that is a string, a comment, or only looks like one. */
  private static String hostile(Random random, boolean comment) {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(30); i > 0; i--) {
      text.append(HOSTILE[random.nextInt(HOSTILE.length)]);
    }
    return comment
        ? "/*" + text.toString().replace("*/", "") + "*/"
        : "'" + text.toString().replace("\\", "\\\\").replace("'", "''") + "'";
  }

  private static String file(Random random) {
    List<String> lines = new ArrayList<>();
    for (int i = 1; i <= 200; i++) {
      String gap = random.nextInt(4) == 0 ? hostile(random, true) : "";
      String value = random.nextInt(3) == 0 ? hostile(random, false) : "#" + random.nextInt(900);
      String line = "#" + i + gap + "=IFC" + random.nextInt(9) + "(" + value + gap + ",(1.,$));";
      lines.add(random.nextInt(40) == 0 ? "ENDSEC;\nDATA;\n" + line : line + gap);
    }
    return StepTexts.file(lines.toArray(String[]::new));
  }

  private static String outcome(StepBytes bytes, int chunk) {
    StepSource source = new StepSource(bytes, "deck.ifc", StepLimits.STANDARD);
    StringBuilder all = new StringBuilder();
    try {
      StepScanner scan = new StepScanner(source, chunk).scan();
      for (int i = 0; i < scan.index.count(); i++) {
        all.append(scan.index.id(i)).append(' ').append(scan.index.offset(i)).append(' ');
        all.append(scan.index.keyword(i)).append('\n');
      }
      return all.append(scan.highestId())
          .append(scan.blockOffset)
          .append(scan.findings())
          .toString();
    } catch (InputException e) {
      return e.getMessage() + e.advice() + e.place();
    }
  }

  @Test
  void readingAheadGivesTheSameIndexAndTheSameErrorsWhateverTheTextHolds(@TempDir Path folder)
      throws IOException {
    Random random = new Random(20);
    int refused = 0;
    for (int i = 0; i < 250; i++) {
      byte[] bytes = file(random).getBytes(StandardCharsets.ISO_8859_1);
      if (i % 2 == 1) {
        bytes[random.nextInt(bytes.length)] = (byte) "'/;#(*".charAt(random.nextInt(6));
      }
      String inOneGo = outcome(new HeapBytes(bytes), 1 << 30);
      refused += inOneGo.startsWith("deck.ifc") ? 1 : 0;
      Path path = Files.write(folder.resolve("deck" + i + ".ifc"), bytes);
      for (int chunk : new int[] {17, 300, 4096}) {
        assertThat(outcome(new HeapBytes(bytes), chunk))
            .as("seed 20, file %s", i)
            .isEqualTo(inOneGo);
      }
      assertThat(outcome(MappedBytes.of(path, "deck.ifc", 8), 1000))
          .as("mapped, file %s", i)
          .isEqualTo(inOneGo);
    }
    assertThat(refused).isBetween(20, 125);
  }

  @Test
  void aMappedFileReadsTheSameAsOneInMemory(@TempDir Path folder) throws IOException {
    StringBuilder lines = new StringBuilder();
    for (int i = 1; lines.length() < 17 << 20; i++) {
      lines
          .append("#")
          .append(i)
          .append("=IFCCARTESIANPOINT((")
          .append(i)
          .append(".5,0.,'\n;#'));\n");
    }
    byte[] bytes = StepTexts.file(lines.toString()).getBytes(StandardCharsets.ISO_8859_1);
    StepFile mapped = StepFile.read(Files.write(folder.resolve("deck.ifc"), bytes));
    StepFile inMemory = StepFile.of(bytes, "deck.ifc");
    assertThat(mapped.count()).isEqualTo(inMemory.count()).isGreaterThan(300_000);
    assertThat(mapped.bytes()).isNotSameAs(bytes).isEqualTo(bytes);
    for (int i = mapped.count() - 1; i >= 0; i -= 997) {
      assertThat(mapped.range(i)).isEqualTo(inMemory.range(i));
      assertThat(mapped.decode(i)).hasToString(inMemory.decode(i).toString());
      assertThat(mapped.decode(i).place()).isEqualTo(inMemory.decode(i).place());
    }
    assertThat(StepSplice.insert(mapped, new byte[0])).isEqualTo(bytes);
  }

  @Test
  void anInstanceLongerThanManyChunksIsReadWhole(@TempDir Path folder) throws IOException {
    String list = "1.,".repeat(400_000);
    String text = StepTexts.file("#1=A((" + list + "1.));", "#2=B(/*" + list + "*/);", "#3=C($);");
    Path path = Files.write(folder.resolve("deck.ifc"), text.getBytes(StandardCharsets.ISO_8859_1));
    String mapped = outcome(MappedBytes.of(path, "deck.ifc"), 1 << 12);
    String starts = "1 " + text.indexOf("#1=") + " A\n2 " + text.indexOf("#2=") + " B\n3 ";
    assertThat(mapped).startsWith(starts + text.indexOf("#3=") + " C\n");
  }

  @Test
  void lineAndColumnAgreeWithASlowCount() {
    Random random = new Random(5);
    byte[] bytes = new byte[60_000];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) "\r\nabc".charAt(random.nextInt(random.nextInt(3) == 0 ? 5 : 2));
    }
    LineTable table = new LineTable(new HeapBytes(bytes));
    long line = 1;
    long column = 1;
    for (int i = 0; i < bytes.length; i++) {
      if (i % 7 == 0 || i % (1 << 14) < 3) {
        assertThat(table.place(i).line()).as("byte %s", i).hasValue(line);
        assertThat(table.place(i).column()).as("byte %s", i).hasValue(column);
      }
      boolean ends =
          bytes[i] == '\n' || (bytes[i] == '\r' && (i + 1 == bytes.length || bytes[i + 1] != '\n'));
      line += ends ? 1 : 0;
      column = ends ? 1 : column + 1;
    }
  }

  @Test
  void numbersFarApartAreFoundAndOneUsedTwiceIsRefused() {
    assertThat(StepTexts.data("#900000000000000000=A();", "#5=B();").find(5)).isEqualTo(1);
    assertThatThrownBy(
            () -> StepTexts.data("#7=A();", "#900000000000000000=A();", "#8=A();", "#7=B();"))
        .hasMessageContaining("#7 is defined on line 8 and again on line 11");
  }
}
