package org.underlee.clash;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.underlee.geom.BarMeasure;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Vec3;

/** Groups clashes by what causes them, names them for good, and ranks them. */
public final class Issues {
  /** The namespace of the names of issues: drawn once at random, never to change. */
  private static final UUID NAMESPACE = UUID.fromString("7d1c2c0a-94b5-4bb0-8a52-6f0c6f7a6d11");

  /** Directions of one run agree to this (cosine of about 1.3°). */
  private static final double STRAIGHT = 0.99975;

  /** Segments of one run are off their common line by no more than this. */
  private static final double OFF_LINE = 0.01;

  /** A fitting between two segments is no longer than this. */
  private static final double FITTING = 0.5;

  private static final Comparator<Clash> WORST_FIRST =
      Comparator.<Clash>comparingDouble(
              c -> c.cause() == Cause.TOO_NEAR ? c.amount() - c.limit() : -c.amount())
          .thenComparing(c -> c.part().id());

  private Issues() {}

  /**
   * The issues, the gravest first.
   *
   * @param project GlobalId of the project that the assembly is in
   */
  public static List<Issue> of(List<Clash> clashes, String project) {
    Map<Cause, Map<Theirs, List<Clash>>> causes = new LinkedHashMap<>();
    for (Clash c : clashes) {
      causes
          .computeIfAbsent(c.cause(), k -> new LinkedHashMap<>())
          .computeIfAbsent(c.thing(), k -> new ArrayList<>())
          .add(c);
    }
    List<Issue> issues = new ArrayList<>();
    causes.forEach(
        (cause, things) -> {
          for (Set<Theirs> run : runs(List.copyOf(things.keySet()))) {
            List<Clash> own = new ArrayList<>();
            run.forEach(t -> own.addAll(things.getOrDefault(t, List.of())));
            own.sort(WORST_FIRST);
            issues.add(new Issue(id(project, cause, run), cause, List.copyOf(run), own));
          }
        });
    issues.sort(Issue.GRAVEST_FIRST);
    return List.copyOf(issues);
  }

  private static List<Set<Theirs>> runs(List<Theirs> things) {
    List<Set<Theirs>> runs = new ArrayList<>();
    for (Theirs thing : things) {
      Set<Theirs> joined = new LinkedHashSet<>();
      for (Set<Theirs> run : List.copyOf(runs)) {
        if (run.stream().anyMatch(t -> areInLine(t, thing))) {
          joined.addAll(run);
          runs.remove(run);
        }
      }
      joined.add(thing);
      runs.add(joined);
    }
    return runs;
  }

  /** Two bars of one kind and one model, on one line and near to each other's ends. */
  private static boolean areInLine(Theirs a, Theirs b) {
    if (!a.kind().id().equals(b.kind().id())
        || a.kind().clearance() == 0 // a row of joists is no run
        || !a.element().file().equals(b.element().file())) {
      return false;
    }
    Optional<OrientedBox> p = BarMeasure.of(a.element().shape());
    Optional<OrientedBox> q = BarMeasure.of(b.element().shape());
    return p.isPresent() && q.isPresent() && areInLine(p.get(), q.get());
  }

  private static boolean areInLine(OrientedBox p, OrientedBox q) {
    Vec3 between = q.centre().minus(p.centre());
    double along = between.dot(p.axis());
    double off = between.minus(p.axis().times(along)).length();
    return Math.abs(p.axis().dot(q.axis())) >= STRAIGHT
        && off <= OFF_LINE
        && Math.abs(along) <= (p.length() + q.length()) / 2 + FITTING;
  }

  /** A run is named after the least of its members' GlobalIds. */
  private static String id(String project, Cause cause, Set<Theirs> run) {
    String least = run.stream().map(t -> t.element().globalId()).min(String::compareTo).orElse("");
    return named(String.join("\n", project, cause.word(), least));
  }

  /** A UUID derived from a name: version 5, RFC 9562, section 5.5. */
  public static String named(String name) {
    try {
      MessageDigest sha1 = MessageDigest.getInstance("SHA-1");
      sha1.update(
          ByteBuffer.allocate(16)
              .putLong(NAMESPACE.getMostSignificantBits())
              .putLong(NAMESPACE.getLeastSignificantBits())
              .array());
      ByteBuffer hash = ByteBuffer.wrap(sha1.digest(name.getBytes(StandardCharsets.UTF_8)));
      long most = (hash.getLong() & ~0xF000L) | 0x5000L;
      long least = (hash.getLong() & 0x3FFFFFFFFFFFFFFFL) | 0x8000000000000000L;
      return new UUID(most, least).toString();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-1", e);
    }
  }
}
