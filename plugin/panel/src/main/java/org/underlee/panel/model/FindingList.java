package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.layout.DryZone;
import org.underlee.run.HighLineAsked;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Words;

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

  /** A line of the list: a head over findings, or one of them. */
  public sealed interface Entry {}

  /** The name of a group, with how many findings are in it. */
  public record Head(String words, int count) implements Entry {}

  /**
   * One finding.
   *
   * @param places what it leads to
   * @param place under which it is told
   * @param fix what its fix does, in words, where the program has one that the panel can do
   * @param price what is different then
   */
  public record Row(
      Finding finding,
      List<Item> places,
      String message,
      String where,
      String place,
      String advice,
      Optional<String> fix,
      Optional<String> price,
      Standing standing)
      implements Entry {
    /** What it is accepted for, while that holds. */
    public Optional<String> accepted() {
      return standing.kept().filter(a -> standing.isAccepted()).map(Acceptance::reason);
    }

    /** {@code accepted for other numbers: agreed on site}; empty where nobody answered for it. */
    public String answer() {
      return standing.kept().map(a -> standing.state().words() + ": " + a.reason()).orElse("");
    }
  }

  /**
   * Which are shown, and how.
   *
   * @param text must be in the message, the rule or the place, in any case
   */
  public record Filter(String text, Set<Level> levels, Grouping grouping) {
    public Filter {
      levels = Set.copyOf(levels);
    }

    private boolean shows(Row row) {
      String all = row.message() + ' ' + row.finding().rule().id() + ' ' + row.where();
      return levels.contains(row.finding().level())
          && all.toLowerCase(Locale.ROOT).contains(text.strip().toLowerCase(Locale.ROOT));
    }
  }

  private static final Comparator<Row> GRAVEST_FIRST =
      Comparator.<Row, Boolean>comparing(r -> r.standing().isAccepted())
          .thenComparing(r -> r.finding().level(), Comparator.reverseOrder());

  private FindingList() {}

  /** All findings of a result as they stand with some decisions. */
  static List<Row> rows(
      List<Noticed> noticed, Decisions decisions, UnitSystem units, Optional<Result> result) {
    Names names = Names.of(result);
    Speaker words = new Speaker(units, names, new FixWords(names, units));
    return noticed.stream().map(n -> row(n, decisions, words)).toList();
  }

  /** Says it with the names that things have on the screen, as far as they are known. */
  private record Speaker(UnitSystem units, Names names, FixWords fixes) {
    String say(Words words) {
      return names.inText(words.in(units));
    }
  }

  private static Row row(Noticed noticed, Decisions decisions, Speaker words) {
    Finding finding = noticed.finding();
    Optional<Fix.Action> action =
        finding.fix().flatMap(Fix::action).filter(a -> fixed(decisions, a).isPresent());
    return new Row(
        finding,
        noticed.places(),
        words.say(finding.words()),
        words.names().inText(where(finding)),
        words.names().inText(place(finding)),
        finding.fix().map(f -> words.say(f.words())).orElse(""),
        action.map(words.fixes()::of),
        action.map(a -> words.say(a.preview())),
        Standing.of(finding, decisions.accepted()));
  }

  private static String where(Finding finding) {
    List<String> names =
        finding.subjects().stream()
            .map(s -> s.name().isEmpty() ? s.group() : s.name() + " of " + s.group())
            .toList();
    if (names.isEmpty()) {
      return finding.place().toString();
    }
    return names.size() == 1 ? names.get(0) : names.get(0) + " and " + (names.size() - 1) + " more";
  }

  /** The rows that a filter shows, under heads that count them. */
  public static List<Entry> entries(List<Row> rows, Filter filter) {
    Map<String, List<Row>> groups = new TreeMap<>(order(filter.grouping()));
    rows.stream()
        .filter(filter::shows)
        .sorted(GRAVEST_FIRST)
        .forEach(
            r -> groups.computeIfAbsent(head(r, filter.grouping()), h -> new ArrayList<>()).add(r));
    List<Entry> all = new ArrayList<>();
    groups.forEach(
        (head, own) -> {
          all.add(new Head(head, own.size()));
          all.addAll(own);
        });
    return List.copyOf(all);
  }

  private static String head(Row row, Grouping grouping) {
    return switch (grouping) {
      case BY_LEVEL -> standing(row);
      case BY_RULE -> row.finding().rule().id();
      case BY_PLACE -> row.place();
    };
  }

  private static final List<String> STANDINGS =
      List.of("Errors", "Warnings", "Notes", "Accepted for other numbers", "Accepted");

  private static String standing(Row row) {
    return STANDINGS.get(
        switch (row.standing().state()) {
          case ACCEPTED -> 4;
          case OTHER_NUMBERS -> 3;
          default ->
              switch (row.finding().level()) {
                case ERROR -> 0;
                case WARNING -> 1;
                case NOTE -> 2;
              };
        });
  }

  /** Each finding is told once, so that counts add up. */
  private static String place(Finding finding) {
    List<String> fields =
        finding.subjects().stream().map(Finding.Subject::group).distinct().toList();
    if (fields.isEmpty()) {
      return "The model";
    }
    if (fields.size() > 1) {
      return "Several fields";
    }
    String name =
        finding.subjects().size() > 1 ? "several places" : finding.subjects().get(0).name();
    return name.isEmpty() ? fields.get(0) : fields.get(0) + ", " + name;
  }

  private static Comparator<String> order(Grouping grouping) {
    return grouping == Grouping.BY_LEVEL ? Comparator.comparing(STANDINGS::indexOf) : Natural.ORDER;
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
      case "--boards-off" -> Optional.of(now.withBoardsOff(true));
      case "--dry-zone" -> Optional.of(now.withDryZone(Optional.of(DryZone.parse(option.value()))));
      default -> Optional.empty();
    };
  }
}
