package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.command.Typed;

/** Each thing that can be wrong with a server or a call ends with 5, what is wrong and advice. */
@ExtendWith(WithServer.class)
class BadInputTest {
  private static final String DECK = People.sample("pine-deck").toString();

  @TempDir Path folder;

  @Test
  void nobodyListensThere() {
    assertRefused(typed(URI.create("http://127.0.0.1:1"), "list"), "cannot be reached");
  }

  @Test
  void theAddressIsOfSomethingElse() throws Exception {
    HttpServer other =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    other.createContext(
        "/",
        exchange -> {
          byte[] page = "<html>hello</html>".getBytes(StandardCharsets.US_ASCII);
          exchange.sendResponseHeaders(200, page.length);
          exchange.getResponseBody().write(page);
          exchange.close();
        });
    other.start();
    try {
      URI address = URI.create("http://127.0.0.1:" + other.getAddress().getPort());
      assertRefused(typed(address, "list"), "not as a model server");
    } finally {
      other.stop(0);
    }
  }

  @Test
  void anAddressThatIsNoneIsAMistakeOfUsage() {
    assertThat(Typed.run("server", "list", "models.example", "--user", "x").code()).isEqualTo(2);
    assertThat(Typed.run("server", "list", "http://127.0.0.1:1").code()).isEqualTo(2);
  }

  @Test
  void theWrongPersonOrPasswordIsRefusedAndNoSecretIsShown(TestServer server) {
    Typed ran =
        Typed.run("server", "list", server.address().toString(), "--user", "nobody@example.org");
    assertRefused(ran, "refuses");
    assertThat(ran.err() + ran.out()).doesNotContain(TestServer.PASSWORD);
    assertThat(new Login.User("a", "s3cret").toString()).doesNotContain("s3cret");
    assertThat(new Login.Token("s3cret").toString()).doesNotContain("s3cret");
  }

  @Test
  void aProjectWithoutRightsIsNotThere(TestServer server) {
    People people = new People(server.address());
    people.project("Closed", "ifc4");
    people.person("carla@example.org");
    Typed ran =
        Typed.run(
            "server",
            "get",
            server.address().toString(),
            "--user",
            "carla@example.org",
            "--project",
            "Closed");
    assertRefused(ran, "no project \"Closed\" that you may read");
  }

  @Test
  void anEmptyProjectHasNothingToGet(TestServer server) {
    new People(server.address()).project("Nothing yet", "ifc4");
    assertRefused(
        typed(server.address(), "get", "--project", "Nothing yet"), "\"Nothing yet\" is empty");
    assertRefused(
        typed(server.address(), "get", "--project", "Nothing yet", "--revision", "4"),
        "no revision 4");
  }

  @Test
  void aModelOfAnotherSchemaIsRefusedBeforeItIsSent(TestServer server) throws Exception {
    new People(server.address()).project("Old", "ifc2x3tc1");
    assertRefused(put(server, "Old", DECK), "of schema IFC4, and the project \"Old\" of IFC2X3");
    new People(server.address()).project("New", "ifc4");
    Path newest = folder.resolve("newest.ifc");
    Files.writeString(
        newest, Files.readString(Path.of(DECK)).replace("('IFC4')", "('IFC4X3_ADD2')"));
    assertRefused(put(server, "New", newest.toString()), "IFC4X3_ADD2", "Export the model as IFC4");
    assertThat(newest).exists();
  }

  @Test
  void whatTheServerCannotReadLeavesTheProjectAsItWas(TestServer server) throws Exception {
    new People(server.address()).project("Strict", "ifc4");
    Path odd = folder.resolve("odd.ifc");
    Files.writeString(
        odd, Files.readString(Path.of(DECK)).replaceFirst("=IFCBUILDINGSTOREY", "=IFCNOSUCHTHING"));
    Typed ran = put(server, "Strict", odd.toString());
    assertRefused(ran, "did not take the model", "Your copy is " + odd);
    assertThat(typed(server.address(), "list").out()).contains("Strict  ifc4  empty");
    assertThat(odd).exists();
  }

  @Test
  void aRevisionThatAnotherReplacedIsNotWrittenOver(TestServer server) {
    new People(server.address()).project("Busy", "ifc4");
    assertThat(put(server, "Busy", DECK).code()).isZero();
    assertThat(put(server, "Busy", DECK).code()).as("no --base").isEqualTo(2);
    assertThat(put(server, "Busy", DECK, "--base", "1").code()).isZero();
    assertRefused(put(server, "Busy", DECK, "--base", "1"), "Revision 2 by", "Nothing was put");
  }

  private static Typed put(TestServer server, String project, String file, String... more) {
    String[] first = {file, "--project", project, "--comment", "x"};
    return typed(
        server.address(),
        "put",
        Stream.concat(Arrays.stream(first), Arrays.stream(more)).toArray(String[]::new));
  }

  private static Typed typed(URI address, String verb, String... more) {
    List<String> first = List.of("server", verb, address.toString(), "--user", TestServer.ADMIN);
    return Typed.run(Stream.concat(first.stream(), Arrays.stream(more)).toArray(String[]::new));
  }

  private static void assertRefused(Typed ran, String... words) {
    assertThat(ran.code()).as(ran.err()).isEqualTo(5);
    assertThat(ran.err()).contains(words).doesNotContain("\tat ");
    assertThat(ran.err().lines().count()).as(ran.err()).isGreaterThanOrEqualTo(2);
  }
}
