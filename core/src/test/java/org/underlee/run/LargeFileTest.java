package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.finding.InputException;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.report.SurveyJson;
import org.underlee.step.Sha256;
import org.underlee.step.StepFile;

/** Files that stay on the disk give what files in memory give. */
class LargeFileTest {
  private static final Path SAMPLE =
      Path.of(System.getProperty("underlee.root"), "samples/pine-deck/pine-deck.ifc");

  /** Files of 16 MiB and more are mapped. */
  private static final int MAPPED = 17 << 20;

  @TempDir Path folder;

  @Test
  void aMappedFileIsSurveyedAsItsBytesAre() throws IOException {
    Path file = padded(Files.readString(SAMPLE, StandardCharsets.ISO_8859_1));
    byte[] bytes = Files.readAllBytes(file);
    assertThat(SurveyJson.write(DeckRun.survey(file)))
        .isEqualTo(SurveyJson.write(DeckRun.survey(bytes, "large.ifc")))
        .contains(Sha256.hex(bytes));
  }

  @Test
  void anArchiveIsNamedByItsOwnBytes() throws IOException {
    Path archive = folder.resolve("deck.ifczip");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(archive))) {
      zip.putNextEntry(new ZipEntry("deck.ifc"));
      zip.write(Files.readAllBytes(SAMPLE));
    }
    byte[] bytes = Files.readAllBytes(archive);
    assertThat(DeckRun.survey(archive).source().sha256())
        .isEqualTo(Sha256.hex(bytes))
        .isEqualTo(DeckRun.survey(bytes, "deck.ifczip").source().sha256());
  }

  @Test
  void anAssemblyOfOursInAMappedFileIsLeftAsideAndCanBeStripped() throws IOException {
    Path file = padded(Files.readString(SAMPLE, StandardCharsets.ISO_8859_1));
    Path drained = folder.resolve("drained.ifc");
    Survey plain = DeckRun.survey(file);
    DeckRun.save(DeckRun.design(plain, Scope.OUTSIDE, KitReader.builtIn()), file, drained);
    assertThat(Files.size(drained)).isGreaterThan(Files.size(file));
    assertThat(DeckRun.survey(drained).framing().roles()).hasSameSizeAs(plain.framing().roles());
    Path stripped = folder.resolve("stripped.ifc");
    assertThat(DeckRun.strip(drained, stripped)).isTrue();
    assertThat(Files.mismatch(file, stripped)).isEqualTo(-1);
  }

  @Test
  void aTextIsFoundWhereverItStandsInAMappedFile() throws IOException {
    byte[] bytes = Files.readAllBytes(padded(Files.readString(SAMPLE)));
    int first = new String(bytes, StandardCharsets.ISO_8859_1).indexOf("/*");
    for (int edge : new int[] {first + 2, (1 << 20) - 3, (1 << 20), (8 << 20) - 1}) {
      byte[] changed = bytes.clone();
      System.arraycopy("sought".getBytes(StandardCharsets.US_ASCII), 0, changed, edge, 6);
      Path file = Files.write(folder.resolve("sought.ifc"), changed);
      assertThat(StepFile.read(file).holds("sought")).as("at %d", edge).isTrue();
      assertThat(StepFile.of(changed, "sought.ifc").holds("sought")).isTrue();
    }
    assertThat(StepFile.of(bytes, "large.ifc").holds("sought")).isFalse();
  }

  /** The file has no bytes on the disk: only its length says that it is too large. */
  @Test
  void aFileTooLargeToBeWrittenToIsRefusedBeforeItIsRead() throws IOException {
    Path file = folder.resolve("huge.ifc");
    try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(3L << 30);
    }
    assertThatThrownBy(() -> DeckRun.requireWritable(file))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("3221225472 bytes")
        .hasMessageContaining("huge.ifc");
    assertThatThrownBy(() -> DeckRun.strip(file, folder.resolve("out.ifc")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("can be written to");
  }

  /** The model with comments of a harmless length before its instances. */
  private Path padded(String model) throws IOException {
    String comment = "/*" + "-".repeat(4090) + "*/\n";
    int at = model.indexOf("DATA;") + "DATA;".length();
    String text =
        model.substring(0, at)
            + "\n"
            + comment.repeat(MAPPED / comment.length())
            + model.substring(at);
    return Files.writeString(folder.resolve("large.ifc"), text, StandardCharsets.ISO_8859_1);
  }
}
