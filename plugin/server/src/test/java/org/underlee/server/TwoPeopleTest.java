package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.command.Typed;

/** Two people add to one project: nothing that came meanwhile is written over. */
@ExtendWith(WithServer.class)
class TwoPeopleTest {
  private static final String ANNA = "anna@example.org";
  private static final String BERT = "bert@example.org";

  /** A joist's place along the ledger, and half an inch beside it, in feet. */
  private static final String JOIST = "(2.666666666667,";

  private static final String MOVED = "(2.708333333333,";

  @TempDir Path folder;

  @Test
  void aCheckInIsTakenOverOntoWhatCameMeanwhile(TestServer server) throws Exception {
    shared(server, "Shared");
    ModelServer bert = as(server.address(), BERT);
    Path got = folder.resolve("deck.ifc");
    anna(server.address(), "get", "--project", "Shared", "--out", got.toString());
    Path drained = folder.resolve("deck.drained.ifc");
    assertThat(Typed.run("design", got.toString(), "--out", drained.toString()).code()).isZero();
    moveAJoist(bert, "Shared");

    Typed put = put(server, "Shared", drained);
    assertThat(put.code()).as(put.err()).isZero();
    assertThat(put.err()).contains("Revision 2 by " + BERT + " (\"a joist moved\") has come");
    assertThat(put.out())
        .as("the table of changes")
        .contains("10 kept, 2 moved")
        .contains("2 to make anew");
    assertThat(put.err()).contains("Shared.r2.drained.ifc is revision 3 of \"Shared\"");

    assertThat(bert.revisions(bert.project("Shared")))
        .extracting(r -> r.number() + " " + r.user() + ": " + r.comment())
        .containsExactly(
            "1 " + ANNA + ": the designer's",
            "2 " + BERT + ": a joist moved",
            "3 " + ANNA + ": drained; made from revision 1, taken over onto 2");
    assertThat(model(bert, "Shared", 1)).contains(JOIST).doesNotContain("Underlee_Layout");
    assertThat(model(bert, "Shared", 2)).contains(MOVED).doesNotContain("Underlee_Layout");
    assertThat(model(bert, "Shared", 3)).contains(MOVED).contains("'Underlee_Layout'");
    assertThat(drained).as("the copy that was overtaken stays").exists();
    Path third = file("third.ifc", model(bert, "Shared", 3));
    assertThat(Typed.run("check", third.toString()).code()).isZero();
    Path stripped = folder.resolve("stripped.ifc");
    Typed.run("strip", third.toString(), "--out", stripped.toString());
    assertThat(Files.readString(stripped)).contains(MOVED).doesNotContain("Underlee_");
  }

  @Test
  void designOfAnOlderRevisionLandsOnTheNewest(TestServer server) throws Exception {
    shared(server, "Older");
    moveAJoist(as(server.address(), BERT), "Older");
    Typed design =
        anna(
            server.address(),
            "design",
            "--project",
            "Older",
            "--revision",
            "1",
            "--out-dir",
            folder.toString());
    assertThat(design.code()).as(design.err()).isZero();
    ModelServer anna = as(server.address(), ANNA);
    assertThat(anna.newest(anna.project("Older")).comment()).contains("from revision 2");
    assertThat(model(anna, "Older", 3)).contains(MOVED).contains("'Underlee_Layout'");
  }

  @Test
  void whatComesInTheMomentOfOursIsTakenOverToo(TestServer server) throws Exception {
    shared(server, "Moment");
    try (Between slow = new Between(server.address(), Between.Fault.NONE, 0)) {
      slow.beforeUpload(() -> moveAJoist(as(server.address(), BERT), "Moment"));
      Typed design =
          anna(slow.address(), "design", "--project", "Moment", "--out-dir", folder.toString());
      assertThat(design.code()).as(design.err()).isZero();
      assertThat(design.err()).contains("came at the same moment");
    }
    ModelServer bert = as(server.address(), BERT);
    assertThat(bert.revisions(bert.project("Moment")))
        .extracting(Revision::user)
        .containsExactly(ANNA, BERT, ANNA, ANNA);
    assertThat(model(bert, "Moment", 4)).contains(MOVED).contains("'Underlee_Layout'");
  }

  @Test
  void aFileWithOtherChangesThanTheAssemblyIsRefusedAndKept(TestServer server) throws Exception {
    Revision first = shared(server, "Mixed");
    ModelServer anna = as(server.address(), ANNA);
    Path got = file("mixed.ifc", model(anna, "Mixed", 1).replace("'Deck'", "'Terrace'"));
    Path drained = folder.resolve("mixed.drained.ifc");
    assertThat(Typed.run("design", got.toString(), "--out", drained.toString()).code()).isZero();
    moveAJoist(as(server.address(), BERT), "Mixed");

    Typed put = put(server, "Mixed", drained);
    assertThat(put.code()).isEqualTo(5);
    assertThat(put.err()).contains("Nothing was put", "your copy is " + drained);
    assertThat(drained).exists();
    assertThat(anna.project("Mixed").revisions()).hasSize(2);
    assertThatThrownBy(
            () ->
                anna.checkIn(
                    anna.project("Mixed"), Optional.of(first), drained, "x", Progress.NONE))
        .isInstanceOf(Overtaken.class);
  }

  /** A project of both, with the pine deck in it, put by Anna. */
  private static Revision shared(TestServer server, String name) {
    People people = new People(server.address());
    long project = people.project(name, "ifc4");
    people.mayWorkIn(people.personOnce(ANNA), project);
    people.mayWorkIn(people.personOnce(BERT), project);
    return People.pineDeck(as(server.address(), ANNA), name);
  }

  private void moveAJoist(ModelServer bert, String name) {
    try {
      Project project = bert.project(name);
      Revision newest = bert.newest(project);
      String text = model(bert, name, newest.number());
      assertThat(text).contains(JOIST);
      Path moved = file("bert.ifc", text.replace(JOIST, MOVED));
      bert.checkIn(project, Optional.of(newest), moved, "a joist moved", Progress.NONE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Typed put(TestServer server, String project, Path file) {
    return anna(
        server.address(),
        "put",
        file.toString(),
        "--project",
        project,
        "--base",
        "1",
        "--comment",
        "drained",
        "--out-dir",
        folder.toString());
  }

  private static Typed anna(URI address, String verb, String... more) {
    return Typed.run(
        Typed.joined(
            List.of("server", verb, address.toString()), List.of(more), List.of("--user", ANNA)));
  }

  private static ModelServer as(URI address, String name) {
    return ModelServer.at(address, new Login.User(name, TestServer.PASSWORD), Limits.USUAL);
  }

  private static String model(ModelServer server, String name, int number) {
    Project project = server.project(name);
    byte[] bytes = server.download(project, server.revision(project, number), Progress.NONE);
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text, StandardCharsets.ISO_8859_1);
  }
}
