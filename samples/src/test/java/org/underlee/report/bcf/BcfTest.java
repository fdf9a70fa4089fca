package org.underlee.report.bcf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.underlee.clash.IssueRegister;
import org.underlee.clash.PineIssues;
import org.underlee.finding.InputException;
import org.underlee.run.Coordination;

/** BCF as written for the pine deck's services, against its schemas, and read back. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BcfTest {
  private Coordination found;
  private final Map<BcfVersion, byte[]> written = new EnumMap<>(BcfVersion.class);

  @BeforeAll
  void lookOnce(@TempDir Path folder) throws IOException {
    found = PineIssues.of(PineIssues.drained(folder), IssueRegister.EMPTY, PineIssues.SERVICES);
    for (BcfVersion version : BcfVersion.values()) {
      written.put(version, BcfWriter.write(found, version));
    }
  }

  private static Path schemas() {
    String corpus = System.getProperty("underlee.corpus", "");
    Path schemas = Path.of(corpus, "schemas", "bcf");
    assumeTrue(!corpus.isEmpty() && Files.isDirectory(schemas), "skipped: no BCF schemas");
    return schemas;
  }

  @ParameterizedTest
  @EnumSource
  void everyFileIsAsTheOfficialSchemasSay(BcfVersion version) throws Exception {
    Path schemas = schemas().resolve(version.id());
    int valid = 0;
    Map<String, byte[]> entries = BcfZip.read(written.get(version), "a.bcf");
    for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
      String name = entry.getKey();
      String xsd =
          name.endsWith("markup.bcf")
              ? "markup"
              : name.endsWith(".bcfv")
                  ? "visinfo"
                  : name.endsWith("version")
                      ? "version"
                      : name.endsWith(".xml") ? "extensions" : "";
      if (!xsd.isEmpty()) {
        SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
            .newSchema(schemas.resolve(xsd + ".xsd").toFile())
            .newValidator()
            .validate(new StreamSource(new ByteArrayInputStream(entry.getValue())));
        valid++;
      } else {
        assertThat(ImageIO.read(new ByteArrayInputStream(entry.getValue())).getWidth())
            .isEqualTo(Snapshot.WIDTH);
      }
    }
    assertThat(valid).isGreaterThanOrEqualTo(11);
  }

  @ParameterizedTest
  @EnumSource
  void whatIsWrittenIsReadBack(BcfVersion version) {
    List<BcfTopic> topics = BcfReader.read(written.get(version), "a.bcf");
    assertThat(topics)
        .extracting(BcfTopic::guid)
        .containsExactlyElementsOf(found.issues().stream().map(t -> t.id()).toList());
    assertThat(topics.get(0).title()).isEqualTo(found.issues().get(0).title());
    assertThat(topics.get(0).status()).isEqualTo("Open");
    assertThat(topics.get(0).selection())
        .contains(found.issues().get(0).issue().orElseThrow().things().get(0).element().globalId());
  }

  /** Two runs give the same bytes. */
  @Test
  void theBytesAreTheSameTwice() {
    assertThat(BcfWriter.write(found, BcfVersion.V3_0)).isEqualTo(written.get(BcfVersion.V3_0));
  }

  @ParameterizedTest
  @EnumSource
  void whatOthersPutInStays(BcfVersion version) {
    Map<String, byte[]> entries = BcfZip.read(written.get(version), "a.bcf");
    String id = found.issues().get(0).id();
    String comment =
        "<Comment Guid=\"0f8fad5b-d9cb-469f-a165-70867728950e\"><Date>2026-01-02T03:04:05Z</Date>"
            + "<Author>site</Author><Comment>Moved on Monday</Comment></Comment>";
    entries.computeIfPresent(
        id + "/markup.bcf",
        (k, v) -> {
          String text = new String(v, StandardCharsets.UTF_8);
          String edited = text.replace("TopicStatus=\"Open\"", "TopicStatus=\"In progress\"");
          edited =
              version.isOld()
                  ? edited.replace("</Topic>", "</Topic>" + comment)
                  : edited.replace(
                      "<Viewpoints>", "<Comments>" + comment + "</Comments><Viewpoints>");
          return edited.getBytes(StandardCharsets.UTF_8);
        });
    entries.put("theirs/markup.bcf", theirs());
    entries.put(id + "/photo.jpg", new byte[] {1, 2, 3});
    byte[] renewed = BcfWriter.renew(found, BcfZip.write(entries), "a.bcf");
    List<BcfTopic> topics = BcfReader.read(renewed, "a.bcf");
    assertThat(topics).hasSize(found.issues().size() + 1);
    assertThat(topics.get(0).status()).isEqualTo("In progress");
    assertThat(topics.get(0).comments())
        .containsExactly(
            new BcfTopic.Comment(
                "0f8fad5b-d9cb-469f-a165-70867728950e",
                "2026-01-02T03:04:05Z",
                "site",
                "Moved on Monday"));
    assertThat(BcfZip.read(renewed, "a.bcf"))
        .containsEntry(id + "/photo.jpg", new byte[] {1, 2, 3})
        .containsEntry("theirs/markup.bcf", theirs());
  }

  private static byte[] theirs() {
    return "<Markup><Topic Guid=\"x\"><Title>Theirs</Title></Topic></Markup>"
        .getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void aDocumentTypeIsRefused() {
    String bomb = "<!DOCTYPE a [<!ENTITY b \"c\">]><Markup>&b;</Markup>";
    assertThatThrownBy(() -> HardXml.read(bomb.getBytes(StandardCharsets.UTF_8), "m"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("DOCTYPE");
  }

  @Test
  void whatIsMoreThanSixtyFourDeepIsRefused() {
    assertThat(HardXml.read(nested(64), "m").getDocumentElement().getTagName()).isEqualTo("a");
    assertThatThrownBy(() -> HardXml.read(nested(65), "m"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("more than 64 deep");
  }

  private static byte[] nested(int depth) {
    return ("<a>".repeat(depth) + "</a>".repeat(depth)).getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void anArchiveThatLeadsOutOrUnpacksToTooMuchIsRefused() {
    Map<String, byte[]> out = new LinkedHashMap<>();
    out.put("../evil.txt", new byte[1]);
    assertThatThrownBy(() -> BcfReader.read(BcfZip.write(out), "a.bcf"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("points out of it");
    Map<String, byte[]> bomb = new LinkedHashMap<>();
    bomb.put("zeros", new byte[24 << 20]);
    assertThatThrownBy(() -> BcfReader.read(BcfZip.write(bomb), "a.bcf"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("more than is allowed");
  }

  @Test
  void theOfficialTestCasesAreRead() throws IOException {
    Path cases = schemas().resolve("testcases");
    int read = 0;
    try (var files = Files.walk(cases)) {
      for (Path file :
          files.filter(f -> f.toString().matches(".*\\.bcf(zip)?")).sorted().toList()) {
        List<BcfTopic> topics = BcfReader.read(Files.readAllBytes(file), file.toString());
        assertThat(topics).as(file.toString()).isNotEmpty();
        assertThat(topics.get(0).title()).as(file.toString()).isNotEmpty();
        read++;
      }
    }
    assertThat(read).isGreaterThan(30);
  }
}
