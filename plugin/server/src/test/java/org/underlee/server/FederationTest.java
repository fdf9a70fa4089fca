package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.command.Typed;

/** A project with its structure and its services as projects within it. */
@ExtendWith(WithServer.class)
class FederationTest {
  private static final Path DECK = People.sample("pine-deck");
  private static final Path SERVICES = services();

  /** The water pipe lower than it is drawn: where it is, no pan can be hung. */
  private static Path services() {
    try {
      String drawn = Files.readString(DECK.resolveSibling("services.ifc"));
      Path moved = Files.createTempDirectory("underlee-services").resolve("services.ifc");
      return Files.writeString(moved, drawn.replace("2352.0400", "2252.0400"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @TempDir Path folder;

  @Test
  void servicesOfASisterProjectAreLookedAt(TestServer server) {
    house(server, "House");
    Typed alone = typed(server, "survey", "House/Structure");
    Typed there = typed(server, "survey", "House/Structure", "--with", "House/Services");
    assertThat(there.code()).as(there.err()).isZero();
    Typed here = Typed.run("survey", DECK.toString(), "--services", SERVICES.toString());
    assertThat(bays(there)).isEqualTo(bays(here)).isNotEqualTo(bays(alone));
  }

  @Test
  void anAssemblyIsLaidOutAroundThem(TestServer server) throws Exception {
    ModelServer client = house(server, "Villa");
    Typed design = typed(server, "design", "Villa/Structure", "--with", "Villa/Services");
    assertThat(design.code()).as(design.err()).isZero();
    Path here = folder.resolve("here.ifc");
    Typed.run(
        "design", DECK.toString(), "--out", here.toString(), "--services", SERVICES.toString());
    Project structure = client.project("Villa/Structure");
    assertThat(client.newest(structure).comment())
        .contains("of " + Comments.parts(here) + " parts, from revision 1");
    assertThat(client.project("Villa/Services").revisions()).as("only read").hasSize(1);
    assertThat(Files.list(folder).map(f -> f.getFileName().toString()))
        .contains("Villa-Structure.r1.ifc", "Villa-Services.r1.ifc");
  }

  @Test
  void aSisterThatIsNotThereIsNamedBeforeAnythingIsPut(TestServer server) {
    ModelServer client = house(server, "Hut");
    Typed design = typed(server, "design", "Hut/Structure", "--with", "Hut/Plumbing");
    assertThat(design.code()).isEqualTo(5);
    assertThat(design.err()).contains("no project \"Hut/Plumbing\"", "Hut/Services");
    assertThat(client.project("Hut/Structure").revisions()).hasSize(1);
  }

  private static ModelServer house(TestServer server, String name) {
    People people = new People(server.address());
    long house = people.project(name, "ifc4");
    people.subProject("Structure", house, "ifc4");
    people.subProject("Services", house, "ifc2x3tc1");
    ModelServer client = ModelServer.at(server.address(), People.ADMIN, Limits.USUAL);
    People.pineDeck(client, name + "/Structure");
    client.checkIn(
        client.project(name + "/Services"), Optional.empty(), SERVICES, "pipes", Progress.NONE);
    return client;
  }

  /** What is said of bays; names of files differ. */
  private static List<String> bays(Typed survey) {
    return survey.out().lines().filter(l -> l.contains("B")).toList();
  }

  private Typed typed(TestServer server, String verb, String project, String... more) {
    return Typed.run(
        Typed.joined(
            List.of("server", verb, server.address().toString(), "--project", project),
            List.of("--user", TestServer.ADMIN, "--out-dir", folder.toString()),
            List.of(more)));
  }
}
