package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.command.Typed;
import picocli.CommandLine;

/** Secrets come from the environment, and go nowhere but into the body of the log-in. */
@ExtendWith(WithServer.class)
class SecretsTest {
  private static final URI HERE = URI.create("http://127.0.0.1:1");

  @TempDir Path folder;

  /** What a program of its own printed. */
  private record Ran(int code, String text) {}

  @Test
  void aTokenDoesInsteadOfNameAndPassword(TestServer server) throws Exception {
    People people = new People(server.address());
    people.project("By token", "ifc4");
    String token = token(people);
    Ran ran = started(Map.of(Secrets.TOKEN, token), "list", server.address().toString());
    assertThat(ran.code).as(ran.text).isZero();
    assertThat(ran.text).contains("By token  ifc4  empty").doesNotContain(token);

    Ran wrong = started(Map.of(Secrets.TOKEN, "0123abcd"), "list", server.address().toString());
    assertThat(wrong.code).isEqualTo(5);
    assertThat(wrong.text).contains("refuses").doesNotContain("0123abcd");
  }

  @Test
  void whatATokenPutsBearsThePersonsName(TestServer server) {
    People people = new People(server.address());
    people.project("Token puts", "ifc4");
    ModelServer client =
        ModelServer.at(server.address(), new Login.Token(token(people)), Limits.USUAL);
    assertThat(People.pineDeck(client, "Token puts").user()).isEqualTo(TestServer.ADMIN);
  }

  @Test
  void noSecretIsInAnAddressOrPrinted(TestServer server) throws Exception {
    new People(server.address()).project("Watched", "ifc4");
    String deck = People.sample("pine-deck").toString();
    try (Between between = new Between(server.address(), Between.Fault.NONE, 0)) {
      String address = between.address().toString();
      Typed put = typed("put", address, deck, "--project", "Watched", "--comment", "x");
      Typed get = typed("get", address, "--project", "Watched", "--out-dir", folder.toString());
      assertThat(put.code() + get.code()).isZero();
      assertThat(between.said()).isNotEmpty().allMatch(a -> a.matches("/(json|upload|download)"));
      assertThat(put.out() + put.err() + get.out() + get.err())
          .doesNotContain(TestServer.PASSWORD)
          .doesNotContainPattern("[0-9a-f]{40}");
    }
  }

  @Test
  void noOptionTakesASecret() {
    CommandLine verbs = (CommandLine) new ServerVerb().command((out, err, args) -> 0);
    assertThat(verbs.getSubcommands()).hasSizeGreaterThan(4);
    verbs
        .getSubcommands()
        .values()
        .forEach(
            verb ->
                assertThat(verb.getCommandSpec().optionsMap().keySet())
                    .noneMatch(o -> o.matches("(?i).*(pass|token|secret|key).*")));
  }

  @Test
  void aProgramOfTheSystemsKeyStoreIsAsked() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "skipped: no /bin/sh");
    Secrets asked = new Secrets(Map.of(Secrets.ASK, program("echo \"of $1 at $2\"")));
    assertThat(asked.password("anna", HERE)).hasValue("of anna at " + HERE);
    Secrets silent = new Secrets(Map.of(Secrets.ASK, program("exit 1")));
    assertThatThrownBy(() -> silent.password("anna", HERE))
        .isInstanceOf(ServerException.class)
        .hasMessageContaining("gives no password");
    assertThat(new Secrets(Map.of(Secrets.PASSWORD, "p")).password("anna", HERE)).hasValue("p");
    assertThat(new Secrets(Map.of(Secrets.TOKEN, "")).token()).isEmpty();
  }

  private String program(String line) throws IOException {
    Path file = Files.createTempFile(folder, "ask", ".sh");
    Files.writeString(file, "#!/bin/sh\n" + line + "\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwx------"));
    return file.toString();
  }

  private static String token(People people) {
    for (JsonNode user : people.read("getAllUsers", Map.of())) {
      if (user.path("username").asText().equals(TestServer.ADMIN)) {
        return user.path("token").asText();
      }
    }
    throw new AssertionError("no such person");
  }

  private static Typed typed(String verb, String address, String... more) {
    return Typed.run(
        Typed.joined(List.of("server", verb, address, "--user", TestServer.ADMIN), List.of(more)));
  }

  /** The program in a process of its own, whose environment is given. */
  private static Ran started(Map<String, String> environment, String... args) throws Exception {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-cp"));
    command.add(System.getProperty("java.class.path"));
    command.addAll(List.of("org.underlee.command.Underlee", "server"));
    Stream.of(args).forEach(command::add);
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().remove(Secrets.PASSWORD);
    builder.environment().putAll(environment);
    Process process = builder.start();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ran(process.waitFor(), text);
  }
}
