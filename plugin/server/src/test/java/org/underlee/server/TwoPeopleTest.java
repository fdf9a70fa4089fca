package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.command.Typed;

/** Two people add to one project. */
@ExtendWith(WithServer.class)
class TwoPeopleTest {
  @TempDir Path folder;

  @Test
  void whatCameMeanwhileIsNeverOverwritten(TestServer server) throws Exception {
    People people = new People(server.address());
    long project = people.project("Shared", "ifc4");
    people.mayWorkIn(people.person("anna@example.org"), project);
    people.mayWorkIn(people.person("bert@example.org"), project);
    ModelServer anna = as(server, "anna@example.org");
    ModelServer bert = as(server, "bert@example.org");

    Revision first = People.pineDeck(anna, "Shared");
    Path got = file("anna.ifc", anna.download(anna.project("Shared"), first, Progress.NONE));
    Path drained = folder.resolve("anna.drained.ifc");
    assertThat(Typed.run("design", got.toString(), "--out", drained.toString()).code()).isZero();

    Revision moved = bertMovesAJoist(bert, first);
    assertThatThrownBy(() -> put(anna, first, drained))
        .isInstanceOf(ServerException.class)
        .hasMessageContaining("Revision 2 by bert@example.org (\"a joist moved\") has come")
        .extracting(e -> ((ServerException) e).advice())
        .asString()
        .contains("your copy is " + drained);
    assertThat(drained).exists();

    Path newer = file("newer.ifc", anna.download(anna.project("Shared"), moved, Progress.NONE));
    Path second = folder.resolve("newer.drained.ifc");
    assertThat(Typed.run("design", newer.toString(), "--out", second.toString()).code()).isZero();
    Revision third = put(anna, moved, second);
    assertThat(third.number()).isEqualTo(3);
    List<Revision> history = bert.revisions(bert.project("Shared"));
    assertThat(history)
        .extracting(Revision::user)
        .containsExactly("anna@example.org", "bert@example.org", "anna@example.org");
    assertThat(history)
        .extracting(Revision::comment)
        .containsExactly("the designer's", "a joist moved", "drained");
  }

  private Revision bertMovesAJoist(ModelServer bert, Revision first) throws Exception {
    Project project = bert.project("Shared");
    String text =
        new String(bert.download(project, first, Progress.NONE), StandardCharsets.ISO_8859_1);
    Path file = file("bert.ifc", text.getBytes(StandardCharsets.ISO_8859_1));
    return bert.checkIn(project, Optional.of(first), file, "a joist moved", Progress.NONE);
  }

  private static Revision put(ModelServer server, Revision base, Path file) {
    return server.checkIn(
        server.project("Shared"), Optional.of(base), file, "drained", Progress.NONE);
  }

  private static ModelServer as(TestServer server, String name) {
    return ModelServer.at(
        server.address(), new Login.User(name, TestServer.PASSWORD), Limits.USUAL);
  }

  private Path file(String name, byte[] bytes) throws Exception {
    return Files.write(folder.resolve(name), bytes);
  }
}
