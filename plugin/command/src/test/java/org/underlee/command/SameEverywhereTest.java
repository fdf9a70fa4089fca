package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever runs it, wherever and whenever: the same input gives the same bytes. */
class SameEverywhereTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /** Every kind of file that a verb writes, and what it printed. */
  private static final List<String> KINDS =
      List.of(
          "ifc", "csv", "json", "xlsx", "html", "pdf", "png", "svg", "dxf", "bcf", "sarif", "txt");

  @TempDir Path folder;

  /** A machine as it may be set up: in its language, its time zone and its text encoding. */
  private record Machine(String name, List<String> options) {}

  private static final Machine HERE =
      new Machine(
          "here", List.of("-Duser.language=en", "-Duser.country=US", "-Duser.timezone=UTC"));

  private static final List<Machine> ELSEWHERE =
      List.of(
          new Machine(
              "other-digits",
              List.of(
                  "-Duser.language=ar",
                  "-Duser.country=EG",
                  "-Duser.extensions=u-nu-arab",
                  "-Duser.timezone=America/St_Johns")),
          new Machine(
              "dotless-i-and-commas",
              List.of(
                  "-Duser.language=tr",
                  "-Duser.country=TR",
                  "-Duser.timezone=Pacific/Chatham",
                  "-Dfile.encoding=ISO-8859-1")));

  @Test
  void everyOutputIsTheSameInEveryLanguageTimeZoneAndRun() throws Exception {
    Map<String, Map<String, String>> all =
        ELSEWHERE.parallelStream()
            .collect(Collectors.toConcurrentMap(Machine::name, this::outputs));
    Map<String, String> here = outputs(HERE);
    assertThat(here).hasSizeGreaterThan(150);
    assertThat(here.keySet().stream().map(SameEverywhereTest::kind).distinct())
        .containsExactlyInAnyOrderElementsOf(KINDS);
    assertThat(Files.readString(folder.resolve("here/printed.txt"))).doesNotContain(": 2\n");
    all.forEach((name, outputs) -> assertThat(different(here, outputs)).as(name).isEmpty());
    assertThat(all).hasSize(ELSEWHERE.size());
  }

  private static String kind(String name) {
    return name.substring(name.lastIndexOf('.') + 1);
  }

  /** Names of files that only one has, or that differ. */
  private static Set<String> different(Map<String, String> a, Map<String, String> b) {
    Set<String> names = new TreeSet<>(a.keySet());
    names.addAll(b.keySet());
    names.removeIf(name -> Objects.equals(a.get(name), b.get(name)));
    return names;
  }

  /** Every file with its hash. */
  private Map<String, String> outputs(Machine machine) {
    try {
      Path own = folder.resolve(machine.name);
      run(machine, own);
      return hashes(own);
    } catch (Exception e) {
      throw new AssertionError(machine.name, e);
    }
  }

  private static void run(Machine machine, Path own) throws IOException, InterruptedException {
    Files.createDirectory(own);
    Files.copy(ROOT.resolve("samples/pine-deck/pine-deck.ifc"), own.resolve("deck.ifc"));
    Files.copy(ROOT.resolve("samples/pine-deck/services.ifc"), own.resolve("services.ifc"));
    Files.createDirectory(own.resolve("jobs"));
    Files.copy(own.resolve("deck.ifc"), own.resolve("jobs/deck.ifc"));
    Files.copy(own.resolve("services.ifc"), own.resolve("jobs/services.ifc"));
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(machine.options);
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-Djava.awt.headless=true", "-cp"));
    command.add(System.getProperty("java.class.path"));
    command.addAll(List.of(EveryOutput.class.getName(), own.toString()));
    Process process = new ProcessBuilder(command).inheritIO().start();
    assertThat(process.waitFor()).isZero();
  }

  private static Map<String, String> hashes(Path own) throws Exception {
    Map<String, String> all = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(own)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        all.put(own.relativize(file).toString(), hash(file));
      }
    }
    return all;
  }

  private static String hash(Path file) throws IOException, GeneralSecurityException {
    byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
    return new BigInteger(1, digest).toString(16);
  }
}
