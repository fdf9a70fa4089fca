package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.command.Typed;

/** The verbs as they are typed. The password is in the environment of the tests. */
@ExtendWith(WithServer.class)
class ServerVerbTest {
  @TempDir Path folder;

  @Test
  void aModelIsPutListedGotAndDesigned(TestServer server) throws Exception {
    new People(server.address()).project("Balcony", "ifc4");
    Typed empty = typed(server, "list");
    assertThat(empty.code()).as(empty.err()).isZero();
    assertThat(empty.out()).contains("Balcony  ifc4  empty");

    String deck = People.sample("pine-deck").toString();
    Typed put = typed(server, "put", deck, "--project", "Balcony", "--comment", "as drawn");
    assertThat(put.code()).as(put.err()).isZero();
    assertThat(put.err()).contains("is revision 1 of \"Balcony\"");

    Path got = folder.resolve("got.ifc");
    Typed get = typed(server, "get", "--project", "Balcony", "--out", got.toString());
    assertThat(get.code()).as(get.err()).isZero();
    Typed survey = Typed.run("survey", got.toString());
    assertThat(survey.out().lines().skip(1))
        .isEqualTo(Typed.run("survey", deck).out().lines().skip(1).toList());

    Typed design = typed(server, "design", "--project", "Balcony", "--out-dir", folder.toString());
    assertThat(design.code()).as(design.err()).isZero();
    assertThat(design.err()).contains("is revision 2 of \"Balcony\"");
    Typed list = typed(server, "list", "--project", "Balcony");
    assertThat(list.out())
        .contains("as drawn")
        .containsPattern("2  .*Underlee .*: drainage assembly of [1-9]\\d* parts, from revision 1");
    assertThat(Files.exists(folder.resolve("Balcony.r1.drained.ifc"))).isTrue();
  }

  private static Typed typed(TestServer server, String verb, String... more) {
    String[] first = {"server", verb, server.address().toString()};
    String[] all = java.util.Arrays.copyOf(first, first.length + more.length + 2);
    System.arraycopy(more, 0, all, first.length, more.length);
    all[all.length - 2] = "--user";
    all[all.length - 1] = TestServer.ADMIN;
    return Typed.run(all);
  }
}
