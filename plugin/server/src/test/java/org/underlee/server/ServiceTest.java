package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The service inside the server, installed by its jar, set off by check-ins of the client. */
@ExtendWith(WithServer.class)
class ServiceTest {
  private static final String SERVICE = "ServiceInterface";
  private static final Pattern LAYOUT_SET =
      Pattern.compile("IFCPROPERTYSET\\([^;]*'Underlee_Layout'");

  /** The work takes seconds; this long it may take on a busy machine. */
  private static final int PATIENCE_SECONDS = 120;

  @TempDir Path folder;

  private People people;
  private ModelServer client;

  @BeforeEach
  void logIn(TestServer server) {
    people = new People(server.address());
    client = ModelServer.at(server.address(), People.ADMIN, Limits.USUAL);
  }

  @Test
  void aRevisionIsDrainedOnceAndAnotherReplacesTheAssembly() throws Exception {
    serve("Served", "rain=150mm/h");
    People.pineDeck(client, "Served");
    awaitRevisions("Served", 2);
    Path drained = newest("Served");
    assertThat(assemblies(drained)).isEqualTo(1);

    client.checkIn(
        client.project("Served"),
        Optional.of(client.newest(client.project("Served"))),
        drained,
        "a joist looked at",
        Progress.NONE);
    awaitRevisions("Served", 4);
    assertThat(assemblies(newest("Served"))).isEqualTo(1);
    assertThat(client.revisions(client.project("Served")))
        .extracting(r -> Comments.isOurs(r.comment()))
        .containsExactly(false, true, false, true);
    Revision first = client.revision(client.project("Served"), 1);
    assertThat(reports(first)).containsExactly("Underlee: drainage");
  }

  @Test
  void aReportIsWrittenWithoutARevision() throws Exception {
    serve("Reported", "report");
    Revision first = People.pineDeck(client, "Reported");
    awaitReport(first);
    assertThat(reports(first)).containsExactly("Underlee: drainage");
    assertThat(client.project("Reported").revisions()).hasSize(1);
  }

  @Test
  void aFailureIsShownAndChangesNothing() throws Exception {
    serve("Misspelt", "kti=formed-aluminium");
    Revision first = People.pineDeck(client, "Misspelt");
    awaitReport(first);
    assertThat(reports(first)).containsExactly("Underlee could not work");
    assertThat(client.project("Misspelt").revisions()).hasSize(1);
  }

  private void serve(String project, String settings) {
    long oid = people.project(project, "ifc4");
    haveReportSchema();
    JsonNode ours =
        StreamSupport.stream(
                people
                    .change(
                        "PluginInterface", "getAllInternalServices", Map.of("onlyEnabled", true))
                    .spliterator(),
                false)
            .filter(s -> s.path("name").asText().equals("Underlee drainage"))
            .findFirst()
            .orElseThrow();
    people.change(
        SERVICE,
        "addLocalServiceToProject",
        Map.of(
            "poid", oid,
            "sService", service(ours.path("oid").asLong(), oid, settings),
            "internalServiceOid", ours.path("oid").asLong()));
  }

  private Map<String, Object> service(long internal, long project, String settings) {
    return Map.ofEntries(
        Map.entry("__type", "SService"),
        Map.entry("name", "Underlee drainage"),
        Map.entry("providerName", "Underlee"),
        Map.entry("serviceIdentifier", Long.toString(internal)),
        Map.entry("serviceName", "Underlee drainage"),
        Map.entry("url", ""),
        Map.entry("token", ""),
        Map.entry("notificationProtocol", "INTERNAL"),
        Map.entry("description", settings),
        Map.entry("trigger", "NEW_REVISION"),
        Map.entry("readRevision", true),
        Map.entry("profileIdentifier", Long.toString(internal)),
        Map.entry("profileName", "default"),
        Map.entry("profileDescription", ""),
        Map.entry("profilePublic", false),
        Map.entry("internalServiceId", internal),
        Map.entry("writeRevisionId", project),
        Map.entry("readExtendedDataId", -1),
        Map.entry("writeExtendedDataId", reportSchema()),
        Map.entry("projectId", -1));
  }

  /** A server that reaches its maker's pages has this schema from there. */
  private void haveReportSchema() {
    if (reportSchema() < 0) {
      people.change(
          SERVICE,
          "addExtendedDataSchema",
          Map.of(
              "extendedDataSchema",
              Map.of(
                  "__type",
                  "SExtendedDataSchema",
                  "name",
                  "UNSTRUCTURED_UTF8_TEXT_1_0",
                  "contentType",
                  "text/plain")));
    }
  }

  private long reportSchema() {
    for (JsonNode schema : people.read("getAllExtendedDataSchemas", Map.of())) {
      if (schema.path("name").asText().equals("UNSTRUCTURED_UTF8_TEXT_1_0")) {
        return schema.path("oid").asLong();
      }
    }
    return -1;
  }

  private void awaitRevisions(String project, int count) throws InterruptedException {
    for (int i = 0; i < PATIENCE_SECONDS * 5; i++) {
      if (client.project(project).revisions().size() >= count) {
        return;
      }
      Thread.sleep(200);
    }
    throw new AssertionError(project + " has not come to " + count + " revisions");
  }

  private void awaitReport(Revision revision) throws InterruptedException {
    for (int i = 0; i < PATIENCE_SECONDS * 5 && reports(revision).isEmpty(); i++) {
      Thread.sleep(200);
    }
  }

  private List<String> reports(Revision revision) {
    List<String> titles = new ArrayList<>();
    people
        .read("getAllExtendedDataOfRevision", Map.of("roid", revision.oid()))
        .forEach(e -> titles.add(e.path("title").asText()));
    return titles;
  }

  private Path newest(String name) throws Exception {
    Project project = client.project(name);
    byte[] model = client.download(project, client.newest(project), Progress.NONE);
    return Files.write(folder.resolve("newest.ifc"), model);
  }

  private static long assemblies(Path model) throws Exception {
    return LAYOUT_SET
        .matcher(Files.readString(model, StandardCharsets.ISO_8859_1))
        .results()
        .count();
  }
}
