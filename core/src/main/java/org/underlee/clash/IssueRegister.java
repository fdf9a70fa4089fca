package org.underlee.clash;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.underlee.clash.Tracked.Status;
import org.underlee.finding.InputException;
import org.underlee.finding.JsonInput;
import org.underlee.finding.Place;
import org.underlee.units.Words;

/**
 * The small file in which issues are followed from run to run. A person accepts one by writing the
 * reason into it.
 *
 * @param showAcceptedCount whether reports say how many were accepted
 */
public record IssueRegister(String schema, boolean showAcceptedCount, List<Entry> issues) {
  public static final String SCHEMA = "underlee/clashes/1";
  private static final String ADVICE = "docs/how-to/look-at-the-services.md shows the file.";

  /** None yet. */
  public static final IssueRegister EMPTY = new IssueRegister(SCHEMA, true, List.of());

  /**
   * One issue.
   *
   * @param status {@code new}, {@code open}, {@code accepted} or {@code gone}
   * @param accepted why it may stay; empty when it may not
   * @param by who says so
   */
  public record Entry(
      @JsonProperty(required = true) String id,
      @JsonProperty(required = true) String cause,
      @JsonProperty(required = true) String title,
      @JsonProperty(required = true) String status,
      @JsonProperty(required = true) String accepted,
      @JsonProperty(required = true) String by) {}

  public IssueRegister {
    issues = List.copyOf(issues);
  }

  /**
   * The file's text.
   *
   * @throws InputException when it is not as it should be
   */
  public static IssueRegister read(String text, String name) {
    IssueRegister read =
        JsonInput.read(text, name, IssueRegister.class, "the file of issues", ADVICE);
    if (!read.schema.equals(SCHEMA)) {
      throw slip(name, "its schema is \"" + read.schema + "\", expected \"" + SCHEMA + "\"");
    }
    for (Entry entry : read.issues) {
      named(Cause.class, entry.cause, name);
      named(Status.class, entry.status, name);
    }
    return read;
  }

  private static <E extends Enum<E>> E named(Class<E> all, String word, String file) {
    try {
      return Enum.valueOf(all, word.toUpperCase(Locale.ROOT).replace('-', '_'));
    } catch (IllegalArgumentException e) {
      throw slip(file, "\"" + word + "\" is none of " + List.of(all.getEnumConstants()));
    }
  }

  private static InputException slip(String name, String what) {
    return new InputException(
        Place.NOWHERE.inFile(name), "the file of issues cannot be used: " + what, ADVICE);
  }

  /** What is new, still there, accepted, and gone since the register was written. */
  public List<Tracked> follow(List<Issue> found) {
    Map<String, Entry> known = new LinkedHashMap<>();
    issues.forEach(e -> known.putIfAbsent(e.id, e));
    List<Tracked> all = new ArrayList<>();
    for (Issue issue : found) {
      Optional<Entry> before = Optional.ofNullable(known.remove(issue.id()));
      all.add(tracked(issue, before));
    }
    for (Entry entry : known.values()) {
      if (!entry.status.equals(Status.GONE.word())) {
        Cause cause = named(Cause.class, entry.cause, SCHEMA);
        all.add(
            new Tracked(
                entry.id,
                cause,
                Status.GONE,
                entry.title,
                Optional.empty(),
                Optional.empty(),
                List.of()));
      }
    }
    return List.copyOf(all);
  }

  private static Tracked tracked(Issue issue, Optional<Entry> before) {
    Optional<String> reason = before.map(Entry::accepted).filter(r -> !r.isBlank());
    boolean back = before.isEmpty() || before.get().status.equals(Status.GONE.word());
    Status status = reason.isPresent() ? Status.ACCEPTED : back ? Status.NEW : Status.OPEN;
    return new Tracked(
        issue.id(),
        issue.cause(),
        status,
        issue.words().toString(),
        reason,
        Optional.of(issue),
        List.of());
  }

  /** The register after a run: what is gone stays in it once more. */
  public IssueRegister after(List<Tracked> run) {
    Map<String, Entry> known = new LinkedHashMap<>();
    issues.forEach(e -> known.putIfAbsent(e.id, e));
    List<Entry> next = new ArrayList<>();
    for (Tracked t : run) {
      Optional<Entry> before = Optional.ofNullable(known.get(t.id()));
      next.add(
          new Entry(
              t.id(),
              t.cause().word(),
              t.title(),
              t.status().word(),
              t.reason().orElse(""),
              before.map(Entry::by).orElse("")));
    }
    return new IssueRegister(SCHEMA, showAcceptedCount, next);
  }

  /** How many are new, open and so on, for people. */
  public Words counts(List<Tracked> run) {
    List<Words> all = new ArrayList<>();
    for (Status status : Status.values()) {
      long count = run.stream().filter(t -> t.status() == status).count();
      if (count > 0 && (status != Status.ACCEPTED || showAcceptedCount)) {
        all.add(Words.of("%s %s", count, status.word()));
      }
    }
    return Words.join(", ", all);
  }
}
