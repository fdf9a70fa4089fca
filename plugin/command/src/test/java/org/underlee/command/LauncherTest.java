package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The launcher, with a stand-in for Java that tells what it was asked and keeps what it should. */
class LauncherTest {
  private static final Path SCRIPT =
      Path.of(System.getProperty("underlee.root", ".")).resolve("plugin/command/bin/underlee");

  private static final String JAVA =
      """
      #!/bin/sh
      for word in "$@"; do
        echo "$word"
        case $word in -XX:ArchiveClassesAtExit=*) echo classes > "${word#*=}" ;; esac
      done
      exit 3
      """;

  @TempDir Path folder;

  @BeforeEach
  void copyTheLauncher() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "skipped: no shell");
    Files.copy(SCRIPT, folder.resolve("underlee"));
    Files.writeString(folder.resolve("underlee.jar"), "program");
    Files.setLastModifiedTime(folder.resolve("underlee.jar"), FileTime.fromMillis(0));
    Path java = Files.createDirectories(folder.resolve("jdk/bin")).resolve("java");
    Files.writeString(java, JAVA);
    assertThat(java.toFile().setExecutable(true)).isTrue();
    Files.createDirectories(folder.resolve("jdk/lib/server"));
    Files.writeString(folder.resolve("jdk/lib/server/classes.jsa"), "classes of Java");
  }

  private List<String> run(String... args) throws Exception {
    return runIn(folder, args);
  }

  private List<String> runIn(Path place, String... args) throws Exception {
    ProcessBuilder builder = new ProcessBuilder("/bin/sh", place.resolve("underlee").toString());
    builder.command().addAll(List.of(args));
    builder.environment().put("JAVA_HOME", folder.resolve("jdk").toString());
    Process process = builder.start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isEqualTo(3);
    return out.lines().toList();
  }

  @Test
  void theFirstRunKeepsItsClassesAndTheNextStartsFromThem() throws Exception {
    Path archive = folder.resolve("underlee.jsa");
    assertThat(run("--help")).doesNotContain("-XX:SharedArchiveFile=" + archive);
    assertThat(archive).doesNotExist();
    assertThat(run("survey", "a b.ifc")).endsWith("survey", "a b.ifc");
    assertThat(archive).exists();
    assertThat(run("--help")).contains("-XX:SharedArchiveFile=" + archive).endsWith("--help");
  }

  @Test
  void aNewerProgramMakesANewArchive() throws Exception {
    run("survey", "a.ifc");
    FileTime later = FileTime.fromMillis(System.currentTimeMillis() + 60_000);
    Files.setLastModifiedTime(folder.resolve("underlee.jar"), later);
    assertThat(run("design", "a.ifc"))
        .anyMatch(word -> word.startsWith("-XX:ArchiveClassesAtExit="))
        .noneMatch(word -> word.startsWith("-XX:SharedArchiveFile="));
  }

  @Test
  void aJavaWithoutAnArchiveOfItsOwnIsNotAskedForOne() throws Exception {
    Files.delete(folder.resolve("jdk/lib/server/classes.jsa"));
    assertThat(run("survey", "a.ifc")).noneMatch(word -> word.contains("Archive"));
  }

  @Test
  void whereTheProgramComesWithItsOwnJavaThatOneIsUsed() throws Exception {
    Path image = folder.resolve("image");
    Files.createDirectories(image.resolve("lib/app"));
    Files.createDirectories(image.resolve("bin"));
    Files.copy(SCRIPT, image.resolve("bin/underlee"));
    Files.copy(folder.resolve("underlee.jar"), image.resolve("lib/app/underlee.jar"));
    Files.move(folder.resolve("jdk"), image.resolve("lib/runtime"));
    assertThat(runIn(image.resolve("bin"), "--help"))
        .contains(image.resolve("bin/../lib/app/underlee.jar").toString());
  }

  @Test
  void whatTheWindowAsksOfJavaIsTakenWithoutAWord() throws Exception {
    List<String> asked = run("open", "a.ifc").stream().filter(w -> w.startsWith("-X")).toList();
    assertThat(asked).contains("-XX:ThreadPriorityPolicy=1", "-XX:MetaspaceSize=128m");
    List<String> words = new ArrayList<>(asked);
    words.add(0, Path.of(System.getProperty("java.home"), "bin", "java").toString());
    words.add("--version");
    Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(out).isZero();
    assertThat(out).doesNotContainIgnoringCase("warning");
  }
}
