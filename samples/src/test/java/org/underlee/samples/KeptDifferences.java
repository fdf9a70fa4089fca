package org.underlee.samples;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * The list of differences between our reading and the witness's: one line for those of one file,
 * class and kind, with who is right and why.
 */
final class KeptDifferences {
  private static final String HEAD = "file\tclass\twhat\tcount\tinstances\tright\twhy";
  private static final int MOST_NAMED = 3;

  /** Leaves room for a person to fill in. */
  private static final String UNKNOWN = "?";

  private KeptDifferences() {}

  /**
   * One line.
   *
   * @param instances the instance numbers, or for many the start of the SHA-256 of their list
   * @param right {@code ours}, {@code theirs}, {@code neither}, {@code both}
   */
  record Line(
      String file,
      String ifcClass,
      String what,
      int count,
      String instances,
      String right,
      String why) {
    /** What must be found again, without the judgement. */
    String found() {
      return String.join("\t", file, ifcClass, what, String.valueOf(count), instances);
    }

    private String group() {
      return String.join("\t", file, ifcClass, what);
    }

    boolean isJudged() {
      return List.of("ours", "theirs", "neither", "both").contains(right) && why.length() > 1;
    }
  }

  /** A line for each file, class and kind of difference, without judgement. */
  static List<Line> lines(List<Comparison.Difference> differences) {
    Map<String, TreeSet<Long>> groups = new TreeMap<>();
    for (Comparison.Difference d : differences) {
      groups
          .computeIfAbsent(
              String.join("\t", d.file(), d.ifcClass(), d.what().name()), g -> new TreeSet<>())
          .add(d.instance());
    }
    List<Line> lines = new ArrayList<>();
    groups.forEach(
        (group, instances) -> {
          String[] words = group.split("\t", -1);
          lines.add(
              new Line(
                  words[0],
                  words[1],
                  words[2],
                  instances.size(),
                  named(instances),
                  UNKNOWN,
                  UNKNOWN));
        });
    return lines;
  }

  private static String named(TreeSet<Long> instances) {
    String all = instances.stream().map(i -> "#" + i).collect(Collectors.joining(" "));
    if (instances.size() <= MOST_NAMED) {
      return all;
    }
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(all.getBytes(StandardCharsets.US_ASCII));
      return "sha256 " + HexFormat.of().formatHex(hash, 0, 6);
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError(e);
    }
  }

  static List<Line> read(Path list) throws IOException {
    return Files.readAllLines(list).stream()
        .skip(1)
        .map(line -> line.split("\t", -1))
        .map(w -> new Line(w[0], w[1], w[2], Integer.parseInt(w[3]), w[4], w[5], w[6]))
        .toList();
  }

  /** Writes the list again, with the judgements of the old one where file, class and kind agree. */
  static void write(Path list, List<Line> found) throws IOException {
    Map<String, Line> old =
        Files.exists(list)
            ? read(list).stream().collect(Collectors.toMap(Line::group, line -> line))
            : Map.of();
    List<String> text = new ArrayList<>(List.of(HEAD));
    for (Line line : found) {
      Line judged = old.getOrDefault(line.group(), line);
      text.add(String.join("\t", line.found(), judged.right(), judged.why()));
    }
    Files.write(list, text);
  }
}
