package org.underlee.panel.model;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.run.HighLineAsked;
import org.underlee.units.Lengths.UnitSystem;

/** Findings as a person goes through them: filtered, put in groups, each with what can be done. */
public final class FindingList {
  /** How they are put in order. */
  public enum Grouping {
    BY_LEVEL("By level"),
    BY_RULE("By rule"),
    BY_PLACE("By place");

    private final String words;

    Grouping(String words) {
      this.words = words;
    }

    @Override
    public String toString() {
      return words;
    }
  }

  /**
   * One finding.
   *
   * @param key what accepting it is remembered by: the same finding has the same key in each run
   * @param accepted the reason it was accepted for
   */
  public record Row(
      String key,
      Finding finding,
      String message,
      String where,
      String advice,
      Optional<String> accepted) {
    public Optional<Fix.Action> action() {
      return finding.fix().flatMap(Fix::action);
    }
  }

  private FindingList() {}

  /**
   * The rows to show.
   *
   * @param text must be in the message, the rule or the place, in any case
   * @param levels to show
   */
  public static List<Row> of(
      List<Finding> findings,
      Decisions decisions,
      UnitSystem units,
      String text,
      Set<Level> levels,
      Grouping grouping) {
    String wanted = text.strip().toLowerCase(Locale.ROOT);
    return findings.stream()
        .filter(f -> levels.contains(f.level()))
        .map(f -> row(f, decisions, units))
        .filter(r -> holds(r, wanted))
        .sorted(order(grouping))
        .toList();
  }

  private static Row row(Finding finding, Decisions decisions, UnitSystem units) {
    String key = finding.rule().id() + ": " + finding.message();
    return new Row(
        key,
        finding,
        finding.words().in(units),
        where(finding),
        finding.fix().map(f -> f.words().in(units)).orElse(""),
        Optional.ofNullable(decisions.accepted().get(key)));
  }

  private static String where(Finding finding) {
    List<String> names =
        finding.subjects().stream().map(s -> (s.group() + " " + s.name()).strip()).toList();
    if (names.isEmpty()) {
      return finding.place().toString();
    }
    return names.size() == 1 ? names.get(0) : names.get(0) + " and " + (names.size() - 1) + " more";
  }

  private static boolean holds(Row row, String wanted) {
    String all = row.message() + ' ' + row.finding().rule().id() + ' ' + row.where();
    return all.toLowerCase(Locale.ROOT).contains(wanted);
  }

  private static Comparator<Row> order(Grouping grouping) {
    Comparator<Row> weight =
        Comparator.comparing(r -> r.finding().level(), Comparator.reverseOrder());
    Comparator<Row> open = Comparator.comparing(r -> r.accepted().isPresent());
    return switch (grouping) {
      case BY_LEVEL -> open.thenComparing(weight);
      case BY_RULE -> Comparator.<Row, String>comparing(r -> r.finding().rule().id());
      case BY_PLACE -> Comparator.comparing(Row::where);
    };
  }

  /** Where a finding leads to, in the order of what it is about; empty for the model as a whole. */
  public static List<Item> places(Finding finding, Result result) {
    List<Item> named =
        finding.subjects().stream()
            .flatMap(s -> subject(s.group(), s.name(), result).stream())
            .toList();
    return named.isEmpty()
        ? finding.place().globalId().filter(g -> result.element(g).isPresent()).stream()
            .<Item>map(Item.OfElement::new)
            .toList()
        : named;
  }

  private static Optional<Item> subject(String group, String name, Result result) {
    if (result.bay(group, name).isPresent()) {
      return Optional.of(new Item.OfBay(group, name));
    }
    Optional<Item> part =
        result.layout().parts().stream()
            .filter(p -> p.field().equals(group))
            .filter(p -> p.label().equals(name) || p.id().endsWith("/" + name))
            .findFirst()
            .map(p -> new Item.OfPart(p.id()));
    return part.isPresent() ? part : result.field(group).map(f -> new Item.OfField(f.field().id()));
  }

  /** What a fix does, for a button: {@code Set fall 1:64}. */
  public static String words(Fix.Action action) {
    return action.options().stream()
        .map(o -> o.name().replaceFirst("^-+", "") + " " + o.value())
        .collect(java.util.stream.Collectors.joining(", ", "Set ", ""));
  }

  /** The decisions after a fix; empty when the fix asks for what the panel does not decide. */
  public static Optional<Decisions> fixed(Decisions now, Fix.Action action) {
    return fixed(now, action.options());
  }

  static Optional<Decisions> fixed(Decisions now, List<Fix.Option> options) {
    Decisions next = now;
    for (Fix.Option option : options) {
      Optional<Decisions> step = fixed(next, option);
      if (step.isEmpty()) {
        return Optional.empty();
      }
      next = step.get();
    }
    return Optional.of(next);
  }

  private static Optional<Decisions> fixed(Decisions now, Fix.Option option) {
    return switch (option.name()) {
      case "--fall" ->
          FallText.parse(option.value()).stream()
              .mapToObj(run -> now.withRunPerFall(java.util.OptionalDouble.of(run)))
              .findFirst();
      case "--kit" -> Optional.of(now.withKit(option.value()));
      case "--deck" -> Optional.of(now.withDeck(Optional.of(option.value())));
      // what is decided already: the panel lays out around the services that it was given
      case "--services" -> now.services().isEmpty() ? Optional.empty() : Optional.of(now);
      case "--rain" -> Optional.of(now.withRain(option.value()));
      case "--both-ways" -> Optional.of(now.turnedAt(HighLineAsked.parse(option.value())));
      case "--also-drains" -> Optional.of(now.alsoDraining(option.value()));
      default -> Optional.empty();
    };
  }
}
