package org.underlee.finding;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.underlee.units.Words;

/**
 * What can be done about a finding.
 *
 * @param words for people
 * @param action what the program itself can change, where it can: nothing is changed until a person
 *     asks for it
 */
public record Fix(Words words, Optional<Action> action) {

  /**
   * A change of options, as on the command line, that takes the cause away. A preview of it is the
   * design with these options.
   *
   * @param options in the order of {@code design}'s own
   * @param preview what is different then
   */
  public record Action(List<Option> options, Words preview) {
    public Action {
      options = List.copyOf(options);
    }

    /** As typed: {@code --fall 1:48 --kit rigid-vinyl}. */
    public String typed() {
      return options.stream().map(Option::typed).collect(Collectors.joining(" "));
    }
  }

  /** One option: {@code --fall} and {@code 1:48}; the value is empty for one that has none. */
  public record Option(String name, String value) {
    String typed() {
      return value.isEmpty() ? name : name + " " + value;
    }
  }

  public static Fix of(Words words) {
    return new Fix(words, Optional.empty());
  }

  public static Fix of(String words) {
    return of(Words.plain(words));
  }

  public static Fix with(Words words, Action action) {
    return new Fix(words, Optional.of(action));
  }
}
