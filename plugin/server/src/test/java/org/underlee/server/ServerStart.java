package org.underlee.server;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How long things take to start, each in a process of its own: see docs/benchmarks/server.md. */
final class ServerStart {
  private static final int RUNS = 5;

  private ServerStart() {}

  /** Give it the program's jar. */
  public static void main(String[] args) throws Exception {
    Path home = Files.createTempDirectory("model-server").resolve("home");
    long start = System.nanoTime();
    ChildServer server = new ChildServer(home);
    say("a server with an empty database, bundles installed", start);
    server.kill();
    start = System.nanoTime();
    server = server.again();
    say("the same server again", start);
    try {
      new People(server.address()).project("Deck", "ifc4");
      People.pineDeck(ModelServer.at(server.address(), People.ADMIN, Limits.USUAL), "Deck");
      String at = server.address().toString();
      for (int run = 0; run < RUNS; run++) {
        timed(args[0], "--version");
        timed(args[0], "server", "--help");
        timed(args[0], "server", "list", at, "--user", TestServer.ADMIN);
        timed(args[0], "server", "get", at, "--user", TestServer.ADMIN, "--project", "Deck");
        Files.delete(Path.of("Deck.r1.ifc"));
      }
    } finally {
      server.kill();
    }
  }

  private static void timed(String jar, String... args) throws Exception {
    List<String> first =
        List.of("java", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-jar", jar);
    ProcessBuilder program = new ProcessBuilder(new ArrayList<>(first));
    program.command().addAll(List.of(args));
    program.redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD);
    long start = System.nanoTime();
    int code = program.start().waitFor();
    say(args[0] + " " + (args.length > 1 ? args[1] : "") + " ended with " + code, start);
  }

  private static void say(String what, long start) {
    double seconds = (System.nanoTime() - start) / 1e9;
    System.out.println(String.format(Locale.ROOT, "%.2f s  %s", seconds, what));
  }
}
