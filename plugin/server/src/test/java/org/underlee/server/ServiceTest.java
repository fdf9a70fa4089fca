package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.command.Typed;
import org.underlee.report.bcf.BcfReader;

/** The service inside the server, installed by its jar, set off by check-ins of the client. */
@ExtendWith(WithServer.class)
class ServiceTest {
  private static final String SERVICE = "ServiceInterface";
  private static final Pattern LAYOUT_SET =
      Pattern.compile("IFCPROPERTYSET\\([^;]*'Underlee_Layout'");

  private static final String OLD_SCHEMA = "ifc2x3tc1";
  private static final Path BALCONY = People.sample("harbour-balcony");
  private static final Path PIPES = People.sample("pine-deck").resolveSibling("services.ifc");
  private static final String[] ALL = {
    "Underlee: drainage", "Underlee: what to buy and cut", "Underlee: what is in the way"
  };

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
    assertThat(reports(first)).containsExactlyInAnyOrder(ALL);
  }

  @Test
  void reportsAreWrittenWithoutARevision() throws Exception {
    serve("Reported", "report; rain=150mm/h");
    Revision first = People.pineDeck(client, "Reported");
    awaitReports(first, ALL.length);
    assertThat(reports(first)).containsExactlyInAnyOrder(ALL);
    assertThat(client.project("Reported").revisions()).hasSize(1);

    Path drained = folder.resolve("drained.ifc");
    Path bill = folder.resolve("bill.csv");
    Typed.run(
        Typed.joined(
            List.of("design", People.sample("pine-deck").toString(), "--rain", "150mm/h"),
            List.of("--out", drained.toString(), "--takeoff", bill.toString())));
    assertThat(new String(data(first, ALL[1]), StandardCharsets.UTF_8))
        .isEqualTo(Files.readString(bill));
    assertThat(new String(data(first, ALL[0]), StandardCharsets.UTF_8))
        .contains("Rain that reaches an outlet: ", "Findings: ");
    assertThat(BcfReader.read(data(first, ALL[2]), "issues.bcf")).isNotNull();
  }

  @Test
  void onRequestAnOldRevisionIsAnsweredOnce() throws Exception {
    long project = people.project("Asked", "ifc4");
    Revision first = People.pineDeck(client, "Asked");
    long service = serve(project, "", List.of());
    Map<String, Long> asked = Map.of("roid", first.oid(), "soid", service);
    people.change(SERVICE, "triggerNewRevision", asked);
    awaitRevisions("Asked", 2);
    awaitReports(first, ALL.length);
    people.change(SERVICE, "triggerNewRevision", asked);
    awaitReports(first, 2 * ALL.length);
    assertThat(client.project("Asked").revisions()).as("not over what came since").hasSize(2);
    assertThat(assemblies(newest("Asked"))).isEqualTo(1);
  }

  @Test
  void whatTheClientDesignedIsNotAnsweredAndWhatItMerelyNamesIs() throws Exception {
    serve("Designed", "");
    Revision first =
        client.checkIn(
            client.project("Designed"),
            Optional.empty(),
            People.sample("pine-deck"),
            Comments.ofAssembly(12, 1),
            Progress.NONE);
    client.checkIn(
        client.project("Designed"),
        Optional.of(first),
        People.sample("pine-deck"),
        "Underlee may have this one",
        Progress.NONE);
    awaitRevisions("Designed", 3);
    assertThat(reports(first)).isEmpty();
    assertThat(client.newest(client.project("Designed")).comment()).contains("from revision 2");
  }

  @Test
  void theKitAndTheScopeAreTheProjectsOwn() throws Exception {
    serve("Vinyl", "kit=rigid-vinyl; deck=deck-1");
    People.pineDeck(client, "Vinyl");
    awaitRevisions("Vinyl", 2);
    assertThat(Files.readString(newest("Vinyl"))).contains("rigid-vinyl");
  }

  @Test
  void aFailureIsShownAndChangesNothing() throws Exception {
    for (String wrong : List.of("kti=formed-aluminium", "kit=no-such", "rain=much", "deck=d9")) {
      String name = "Wrong " + wrong.substring(0, wrong.indexOf('='));
      serve(name, wrong);
      Revision first = People.pineDeck(client, name);
      awaitReports(first, 1);
      assertThat(reports(first)).as(wrong).containsExactly("Underlee could not work");
      assertThat(new String(data(first, "Underlee could not work"), StandardCharsets.UTF_8))
          .contains(
              wrong.substring(wrong.indexOf('=') + 1).equals("formed-aluminium")
                  ? "kti"
                  : wrong.substring(wrong.indexOf('=') + 1));
      assertThat(client.project(name).revisions()).hasSize(1);
    }
  }

  @Test
  void aModelWithNothingToDrainGetsAReportThatSaysSo() throws Exception {
    serve(people.project("Bare", OLD_SCHEMA), "", List.of());
    Revision first = put("Bare", PIPES, Optional.empty());
    awaitReports(first, 1);
    assertThat(reports(first)).containsExactly("Underlee: drainage");
    assertThat(new String(data(first, "Underlee: drainage"), StandardCharsets.UTF_8))
        .contains("Nothing was laid out");
    assertThat(client.project("Bare").revisions()).hasSize(1);
  }

  @Test
  void theModelCheckKeepsTheServiceFromWhatDoesNotDrain() throws Exception {
    serve(people.project("Checked", OLD_SCHEMA), "report", List.of(check()));
    Path whole = folder.resolve("whole.ifc");
    Typed.run("design", BALCONY.toString(), "--out", whole.toString());

    Revision bare = put("Checked", PIPES, Optional.empty());
    Revision deck = put("Checked", BALCONY, Optional.of(bare));
    Revision leaks = put("Checked", withDownspoutAstray(whole), Optional.of(deck));
    Revision drains = put("Checked", whole, Optional.of(leaks));
    awaitReports(deck, ALL.length);
    awaitReports(drains, ALL.length);
    assertThat(reports(bare)).isEmpty();
    assertThat(reports(leaks)).isEmpty();
  }

  private Revision put(String project, Path file, Optional<Revision> base) {
    return client.checkIn(
        client.project(project), base, file, file.getFileName().toString(), Progress.NONE);
  }

  private Path withDownspoutAstray(Path whole) throws IOException {
    String text = Files.readString(whole);
    String atOrigin = text.substring(0, text.indexOf("=IFCLOCALPLACEMENT"));
    String placement = atOrigin.substring(atOrigin.lastIndexOf('#'));
    String astray = text.replaceFirst("('F1-D1',.*'downspout',)#\\d+", "$1" + placement);
    assertThat(astray).isNotEqualTo(text);
    return Files.writeString(folder.resolve("astray.ifc"), astray);
  }

  private long check() {
    Map<String, Object> check =
        Map.of(
            "__type", "SModelCheckerInstance",
            "name", "Underlee drainage check",
            "description", "",
            "code", "",
            "compiled", "",
            "valid", true,
            "modelCheckerPluginClassName", "org.underlee.server.service.DrainageCheck");
    people.change(SERVICE, "addModelChecker", Map.of("modelCheckerInstance", check));
    long oid = -1;
    for (JsonNode known : people.read("getAllModelCheckers", Map.of())) {
      oid = known.path("oid").asLong();
    }
    people.change(SERVICE, "validateModelChecker", Map.of("oid", oid));
    return oid;
  }

  private void serve(String project, String settings) {
    serve(people.project(project, "ifc4"), settings, List.of());
  }

  private long serve(long oid, String settings, List<Long> checks) {
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
    Map<String, Object> service = new HashMap<>(service(ours.path("oid").asLong(), oid, settings));
    service.put("modelCheckers", checks);
    people.change(
        SERVICE,
        "addLocalServiceToProject",
        Map.of("poid", oid, "sService", service, "internalServiceOid", ours.path("oid").asLong()));
    return people.read("getProjectByPoid", Map.of("poid", oid)).path("services").path(0).asLong();
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

  private void awaitReports(Revision revision, int count) throws InterruptedException {
    for (int i = 0; i < PATIENCE_SECONDS * 5; i++) {
      if (reports(revision).size() >= count) {
        return;
      }
      Thread.sleep(200);
    }
    throw new AssertionError("no more than " + reports(revision));
  }

  private byte[] data(Revision revision, String title) throws IOException {
    for (JsonNode beside :
        people.read("getAllExtendedDataOfRevision", Map.of("roid", revision.oid()))) {
      if (beside.path("title").asText().equals(title)) {
        return people
            .read("getFile", Map.of("fileId", beside.path("fileId").asLong()))
            .path("data")
            .binaryValue();
      }
    }
    throw new AssertionError("there is no " + title);
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
