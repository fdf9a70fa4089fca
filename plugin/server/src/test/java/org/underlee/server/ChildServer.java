package org.underlee.server;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A real model server in a process of its own, which can be killed as a machine that loses power.
 */
final class ChildServer implements AutoCloseable {
  private static final String READY = "listens at ";

  private final Path home;
  private final Process process;
  private final URI address;

  /** Starts a server on a database, which is made when it is not there. */
  ChildServer(Path home) throws IOException {
    this.home = home;
    Path log = Files.createDirectories(home).resolve("child.log");
    process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Djava.awt.headless=true",
                "-Dunderlee.bundles=" + System.getProperty("underlee.bundles"),
                "-Dunderlee.plugin=" + System.getProperty("underlee.plugin"),
                "-Dunderlee.repository=" + System.getProperty("underlee.repository"),
                "-cp",
                System.getProperty("java.class.path"),
                ChildServer.class.getName(),
                home.toString())
            .redirectError(log.toFile())
            .start();
    BufferedReader out = process.inputReader();
    String line = out.readLine();
    while (line != null && !line.startsWith(READY)) {
      line = out.readLine();
    }
    if (line == null) {
      throw new IOException("the server does not start; see " + log);
    }
    address = URI.create(line.substring(READY.length()));
    Thread rest = new Thread(() -> out.lines().forEach(l -> {}));
    rest.setDaemon(true);
    rest.start();
  }

  URI address() {
    return address;
  }

  /** Ends it at once: nothing is written out, nobody is told. */
  void kill() throws InterruptedException {
    process.destroyForcibly();
    if (!process.waitFor(10, TimeUnit.SECONDS)) {
      throw new IllegalStateException("the server cannot be killed");
    }
  }

  /** Starts again on the same database. */
  ChildServer again() throws IOException {
    return new ChildServer(home);
  }

  @Override
  public void close() throws InterruptedException {
    kill();
  }

  /** The server's own process. */
  public static void main(String[] args) throws Exception {
    Path home = Path.of(args[0]);
    WithServer.useLocalRepositoryOnly(home);
    TestServer server = new TestServer(home, List.of(Bundles.readersAndWriters()));
    System.out.println(READY + server.address());
    // Ends with the process that started it, should that one be gone.
    ProcessHandle.current().parent().orElseThrow().onExit().join();
    Runtime.getRuntime().halt(0);
  }
}
