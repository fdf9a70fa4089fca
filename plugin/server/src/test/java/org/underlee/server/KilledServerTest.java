package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.command.Typed;

/**
 * The server's process is killed at random moments of a check-in and of a download, and started
 * again on what it has on the disk. How often is said by {@code -Dunderlee.kills}.
 */
class KilledServerTest {
  private static final long SEED = 20260311;
  private static final int KILLS = Integer.getInteger("underlee.kills", 2);
  private static final String PROJECT = "Killed";

  @TempDir Path folder;

  private final Random random = new Random(SEED);
  private final Map<Integer, String> known = new TreeMap<>();

  @Test
  void noProjectIsCorruptAndNoFileIsLost() throws Exception {
    Path mine = drained();
    byte[] bytes = Files.readAllBytes(mine);
    ChildServer server = new ChildServer(folder.resolve("home"));
    try {
      new People(server.address()).project(PROJECT, "ifc4");
      People.pineDeck(client(server), PROJECT);
      millis(server, "put", mine);
      long put = millis(server, "put", mine);
      long get = millis(server, "get", mine);
      remember(client(server));
      List<String> ends = new ArrayList<>();
      for (int kill = 0; kill < KILLS; kill++) {
        boolean checkIn = kill % 2 == 0;
        Typed ran = killedDuring(server, checkIn ? "put" : "get", mine, checkIn ? put : get);
        server = server.again();
        ends.add((checkIn ? "put " : "get ") + ran.code() + whatIsThere(client(server), ran));
        assertThat(Files.readAllBytes(mine)).isEqualTo(bytes);
        assertEveryFileIsWhole();
      }
      assertThat(People.pineDeckAgain(client(server), PROJECT)).as("it still works").isPositive();
      System.out.println("killed " + KILLS + " times: " + ends);
    } finally {
      server.close();
    }
  }

  private Typed killedDuring(ChildServer server, String verb, Path mine, long usual)
      throws Exception {
    String newest = newest(client(server));
    CompletableFuture<Typed> running =
        CompletableFuture.supplyAsync(() -> typed(server, verb, mine, newest));
    Thread.sleep((long) (random.nextDouble() * usual));
    server.kill();
    Typed ran = running.get(1, TimeUnit.MINUTES);
    assertThat(ran.code()).as(ran.err()).isIn(0, 5);
    assertThat(ran.err()).doesNotContain("\tat ");
    return ran;
  }

  /** Looks at all of the project; what was there is there, unchanged. */
  private String whatIsThere(ModelServer client, Typed ran) {
    Map<Integer, String> before = Map.copyOf(known);
    remember(client);
    assertThat(known).as(ran.err()).containsAllEntriesOf(before);
    int more = known.size() - before.size();
    assertThat(more).isBetween(0, 1);
    if (ran.code() == 0 && ran.err().contains("is revision")) {
      assertThat(more).as("what was said to be in is in").isEqualTo(1);
    }
    return more == 1 ? " landed" : "";
  }

  /** What every revision's model says. */
  private void remember(ModelServer client) {
    Project project = client.project(PROJECT);
    List<Revision> all = client.revisions(project);
    for (int i = 0; i < all.size(); i++) {
      assertThat(all.get(i).number()).isEqualTo(i + 1);
      byte[] model = client.download(project, all.get(i), Progress.NONE);
      String hash = Contents.of(model);
      assertThat(known.getOrDefault(i + 1, hash)).as("revision " + (i + 1)).isEqualTo(hash);
      known.put(i + 1, hash);
    }
  }

  private void assertEveryFileIsWhole() throws IOException {
    try (var files = Files.list(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        assertThat(Files.readString(file)).contains("END-ISO-10303-21;");
      }
    }
  }

  private long millis(ChildServer server, String verb, Path mine) {
    String newest = newest(client(server));
    long start = System.nanoTime();
    assertThat(typed(server, verb, mine, newest).code()).isZero();
    return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - start);
  }

  private Typed typed(ChildServer server, String verb, Path mine, String newest) {
    List<String> own =
        verb.equals("put")
            ? List.of(mine.toString(), "--base", newest, "--comment", "after " + newest)
            : List.of("--out", folder.resolve("got-" + random.nextInt() + ".ifc").toString());
    return Typed.run(
        Typed.joined(
            List.of("server", verb, server.address().toString()),
            own,
            List.of("--project", PROJECT, "--user", TestServer.ADMIN)));
  }

  private Path drained() {
    Path drained = folder.resolve("drained.ifc");
    String deck = People.sample("pine-deck").toString();
    assertThat(Typed.run("design", deck, "--out", drained.toString()).code()).isZero();
    return drained;
  }

  private static String newest(ModelServer client) {
    return Integer.toString(client.newest(client.project(PROJECT)).number());
  }

  private static ModelServer client(ChildServer server) {
    return ModelServer.at(server.address(), People.ADMIN, Limits.USUAL);
  }
}
