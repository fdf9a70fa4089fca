package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.command.Typed;

/** Another reader finds our block the same after check-in and download. */
@ExtendWith(WithServer.class)
class WitnessTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({"pine-deck, ifc4", "harbour-balcony, ifc2x3tc1"})
  void everyGlobalIdPropertyAndQuantitySurvives(String sample, String schema, TestServer server)
      throws Exception {
    assumeTrue(Witness.isThere(), Witness.SKIPPED);
    String project = "Witnessed " + sample;
    new People(server.address()).project(project, schema);
    Path drained = folder.resolve("drained.ifc");
    Path back = folder.resolve("back.ifc");
    Typed.run("design", People.sample(sample).toString(), "--out", drained.toString());
    typed(server, project, "put", drained.toString(), "--comment", "drained");
    typed(server, project, "get", "--out", back.toString());

    List<String> before = Witness.rooted(drained);
    assertThat(Witness.rooted(back)).isEqualTo(before);
    assertThat(before.stream().filter(l -> l.contains("\"Underlee_Part\"")).count())
        .isEqualTo(Comments.parts(drained))
        .isGreaterThan(20);
    assertThat(before).anyMatch(l -> l.contains("\"Underlee_Layout\""));
    assertThat(before.stream().filter(l -> l.contains("\"IfcElementQuantity\"")).count())
        .isGreaterThan(20);
    assertASingleChangeIsNoticed(back, before);
    System.out.println(sample + ": " + before.size() + " with a GlobalId are the same");
  }

  private void assertASingleChangeIsNoticed(Path back, List<String> before) throws Exception {
    String text = Files.readString(back, StandardCharsets.ISO_8859_1);
    Path changed = folder.resolve("changed.ifc");
    String other =
        text.replaceFirst(
            "(?<head>IFCQUANTITYLENGTH *\\('[^']*',[^,]*,[^,]*,)(?<digit>\\d)", "${head}7${digit}");
    assertThat(other).isNotEqualTo(text);
    Files.writeString(changed, other, StandardCharsets.ISO_8859_1);
    assertThat(Witness.rooted(changed)).isNotEqualTo(before);
  }

  private static void typed(TestServer server, String project, String verb, String... more) {
    Typed ran =
        Typed.run(
            Typed.joined(
                List.of("server", verb, server.address().toString()),
                List.of(more),
                List.of("--project", project, "--user", TestServer.ADMIN)));
    assertThat(ran.code()).as(ran.err()).isZero();
  }
}
