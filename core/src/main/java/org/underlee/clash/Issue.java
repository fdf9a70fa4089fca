package org.underlee.clash;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * One cause, whatever number of parts it meets: one pipe across six bays is one issue.
 *
 * @param id a UUID, the same on every run for the same cause and thing
 * @param things one, or the segments of one straight run
 * @param clashes the gravest first
 */
public record Issue(String id, Cause cause, List<Theirs> things, List<Clash> clashes) {
  /** What must be dealt with first: by cause, then by how much of the assembly it takes. */
  static final Comparator<Issue> GRAVEST_FIRST =
      Comparator.comparing(Issue::cause)
          .thenComparingInt(i -> -i.clashes.size())
          .thenComparingDouble(i -> -i.worst().amount())
          .thenComparing(Issue::id);

  public Issue {
    things = List.copyOf(things);
    clashes = List.copyOf(clashes);
  }

  public Clash worst() {
    return clashes.get(0);
  }

  /** For people. */
  public Words words() {
    Clash worst = worst();
    return Words.of("%s %s %s%s", parts(), cause.verb(), thing(), how(worst));
  }

  private String thing() {
    String more = things.size() > 1 ? " and " + (things.size() - 1) + " more in its line" : "";
    return "the " + worst().thing().words() + more;
  }

  /** {@code pan, side-rail of deck-1/field-1 B3, B4}. */
  private String parts() {
    Set<String> kinds = new LinkedHashSet<>();
    Map<String, Set<String>> bays = new TreeMap<>();
    for (Clash c : clashes) {
      kinds.add(c.part().kind().spoken());
      Set<String> own = bays.computeIfAbsent(c.part().field(), f -> new LinkedHashSet<>());
      if (c.part().isInBay() && c.part().bay().length() > c.part().field().length()) {
        own.add(c.part().bay());
      }
    }
    String where =
        bays.entrySet().stream()
            .map(e -> (e.getKey() + " " + BayNames.inShort(e.getValue())).strip())
            .collect(Collectors.joining("; "));
    return String.join(", ", kinds) + " of " + where;
  }

  private Words how(Clash worst) {
    Quantity amount = Quantity.length(worst.amount());
    return switch (cause) {
      case INTERSECT, SWING, HEADROOM ->
          Words.of(
              worst.measured() ? ": a move of %s parts them" : ": a move of about %s parts them",
              amount.atLeast());
      case TOO_NEAR ->
          Words.of(": %s apart, %s are required", amount, Quantity.length(worst.limit()));
      case HIDDEN -> Words.of(", %s above it", amount);
      case DUPLICATE -> Words.plain("");
    };
  }
}
