package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.command.Typed;

/** The server goes, or a connection breaks, at each request that a verb makes. */
@ExtendWith(WithServer.class)
class GoneInTheMiddleTest {
  private static final Path DECK = People.sample("pine-deck");

  @TempDir Path folder;

  private int runs;

  /** What a verb did, with which requests. */
  private record Try(Typed typed, List<String> requests) {}

  @ParameterizedTest
  @ValueSource(strings = {"list", "get", "survey", "design", "put"})
  void whereverTheServerGoesItIsSaidAndNothingIsLost(String verb, TestServer server)
      throws Exception {
    ModelServer admin = project(server, "Gone " + verb);
    byte[] mine = Files.readAllBytes(DECK);
    List<String> all = tried(verb, server, Between.Fault.NONE, 0).requests;
    for (int k = 1; k <= all.size(); k++) {
      int before = admin.project("Gone " + verb).revisions().size();
      Typed ran = tried(verb, server, Between.Fault.GONE, k).typed;
      assertThat(ran.code()).as(verb + " " + k + ": " + ran.err()).isEqualTo(5);
      assertThat(ran.err()).doesNotContain("\tat ");
      boolean sent = k > all.indexOf("/upload") + 1 && all.contains("/upload");
      assertThat(admin.project("Gone " + verb).revisions()).hasSize(before + (sent ? 1 : 0));
      if (all.contains("/upload") && k > all.indexOf("/upload")) {
        assertThat(ran.err()).containsIgnoringCase("your copy is ");
      }
    }
    assertThat(Files.readAllBytes(DECK)).isEqualTo(mine);
    assertThat(wholeFiles()).isPositive();
  }

  @ParameterizedTest
  @EnumSource(names = {"LOST_ASKING", "HALF_ANSWER"})
  void aQuestionIsAskedAgainAndATransferIsNot(Between.Fault fault, TestServer server)
      throws Exception {
    for (String verb : List.of("get", "put")) {
      ModelServer admin = project(server, fault + " " + verb);
      List<String> all = tried(verb, server, fault, 0, fault + " " + verb).requests;
      for (int k = 1; k <= all.size(); k++) {
        int before = admin.project(fault + " " + verb).revisions().size();
        Try tried = tried(verb, server, fault, k, fault + " " + verb);
        String at = all.get(k - 1);
        boolean survives =
            at.equals("/json") || (at.equals("/upload") && fault == Between.Fault.HALF_ANSWER);
        assertThat(tried.typed.code())
            .as(verb + " " + k + at + ": " + tried.typed.err())
            .isEqualTo(survives ? 0 : 5);
        int added = admin.project(fault + " " + verb).revisions().size() - before;
        assertThat(added).as("never twice").isEqualTo(verb.equals("put") && survives ? 1 : 0);
        assertThat(tried.requests.stream().filter("/upload"::equals).count())
            .isLessThanOrEqualTo(1);
      }
    }
    assertThat(wholeFiles()).isPositive();
  }

  @ParameterizedTest
  @ValueSource(strings = "put")
  void anAnswerThatIsLostWithTheServerIsToldAsOpen(String verb, TestServer server)
      throws Exception {
    ModelServer admin = project(server, "Open");
    List<String> all = tried(verb, server, Between.Fault.NONE, 0, "Open").requests;
    int upload = all.indexOf("/upload") + 1;
    Typed ran = tried(verb, server, Between.Fault.GONE_ANSWERING, upload, "Open").typed;
    assertThat(ran.code()).isEqualTo(5);
    assertThat(ran.err())
        .contains("The check-in broke off", "look with list", "Your copy is " + DECK);
    assertThat(admin.project("Open").revisions()).as("it did land").hasSize(3);
  }

  private static ModelServer project(TestServer server, String name) {
    new People(server.address()).project(name, "ifc4");
    ModelServer admin = ModelServer.at(server.address(), People.ADMIN, Limits.USUAL);
    People.pineDeck(admin, name);
    return admin;
  }

  private Try tried(String verb, TestServer server, Between.Fault fault, int at)
      throws IOException {
    return tried(verb, server, fault, at, "Gone " + verb);
  }

  private Try tried(String verb, TestServer server, Between.Fault fault, int at, String name)
      throws IOException {
    try (Between between = new Between(server.address(), fault, at)) {
      String newest = newest(server, name);
      return new Try(typed(between.address(), verb, name, newest), between.said());
    }
  }

  private static String newest(TestServer server, String name) {
    ModelServer admin = ModelServer.at(server.address(), People.ADMIN, Limits.USUAL);
    return Integer.toString(admin.newest(admin.project(name)).number());
  }

  private Typed typed(URI address, String verb, String name, String newest) throws IOException {
    List<String> args = new ArrayList<>(List.of("server", verb, address.toString()));
    if (verb.equals("put")) {
      args.addAll(List.of(DECK.toString(), "--base", newest, "--comment", "again " + runs));
    }
    args.addAll(List.of("--project", name, "--user", TestServer.ADMIN));
    if (!verb.equals("list")) {
      Path own = Files.createDirectory(folder.resolve("run-" + runs++));
      args.addAll(List.of("--out-dir", own.toString()));
    }
    return Typed.run(args.toArray(String[]::new));
  }

  /** Looks at every file that is left: each is a whole model. */
  private long wholeFiles() throws IOException {
    long folders;
    try (Stream<Path> files = Files.walk(folder)) {
      List<Path> all = files.toList();
      folders = all.size();
      for (Path file : all) {
        if (Files.isRegularFile(file)) {
          assertThat(Files.readString(file)).contains("END-ISO-10303-21;");
        }
      }
    }
    return folders;
  }
}
