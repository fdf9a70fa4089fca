package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.finding.Finding;

/**
 * Whether a finding is accepted, and for what.
 *
 * @param kept what it was accepted for, where it was
 * @param keys by which that is kept, in newer files and in older ones
 */
public record Standing(State state, Optional<Acceptance> kept, List<String> keys) {
  /** How far an acceptance reaches. */
  public enum State {
    OPEN(false, ""),
    /** Some of what it is about was accepted. */
    IN_PART(false, "accepted for a part of this"),
    /** It was accepted when it was less bad, or nobody knows. */
    WORSE(false, "was accepted for other numbers"),
    /** It was accepted with other numbers, which were no better. */
    OTHER_NUMBERS(true, "accepted for other numbers"),
    ACCEPTED(true, "accepted");

    private final boolean isAccepted;
    private final String words;

    State(boolean isAccepted, String words) {
      this.isAccepted = isAccepted;
      this.words = words;
    }

    /** How it is said before the reason; empty for one that nobody answered for. */
    public String words() {
      return words;
    }
  }

  /** Numbers that differ by less of themselves are the same. */
  private static final double SAME = 1e-9;

  private static final Standing OPEN = new Standing(State.OPEN, Optional.empty(), List.of());

  public Standing {
    keys = List.copyOf(keys);
  }

  public boolean isAccepted() {
    return state.isAccepted;
  }

  static Standing of(Finding finding, Map<String, Acceptance> accepted) {
    if (accepted.isEmpty()) {
      return OPEN;
    }
    List<Told> told = Told.of(finding);
    List<String> keys = told.stream().map(Told::key).filter(accepted::containsKey).toList();
    if (keys.isEmpty()) {
      return old(finding, accepted);
    }
    Acceptance first = Objects.requireNonNull(accepted.get(keys.get(0)));
    State state =
        keys.size() < told.size()
            ? State.IN_PART
            : told.stream()
                .map(t -> state(t, Objects.requireNonNull(accepted.get(t.key()))))
                .min(State::compareTo)
                .orElseThrow();
    return new Standing(state, Optional.of(first), keys);
  }

  private static State state(Told told, Acceptance then) {
    if (told.text().equals(then.of())) {
      return State.ACCEPTED;
    }
    if (told.past().isEmpty()) {
      return State.OTHER_NUMBERS;
    }
    double now = told.past().getAsDouble();
    boolean noWorse =
        then.past().isPresent() && now <= then.past().getAsDouble() * (1 + SAME) + SAME;
    return noWorse ? State.OTHER_NUMBERS : State.WORSE;
  }

  private static Standing old(Finding finding, Map<String, Acceptance> accepted) {
    Optional<Acceptance> same = Optional.ofNullable(accepted.get(Told.oldKey(finding)));
    if (same.isPresent()) {
      return new Standing(State.ACCEPTED, same, List.of(Told.oldKey(finding)));
    }
    List<String> keys = new ArrayList<>(accepted.keySet());
    keys.removeIf(k -> !Told.isOldKey(k, finding));
    keys.sort(null);
    String rule = finding.rule().id() + ": ";
    return keys.stream()
        .findFirst()
        .map(
            k ->
                new Acceptance(
                    Objects.requireNonNull(accepted.get(k)).reason(),
                    k.substring(rule.length()),
                    OptionalDouble.empty()))
        .map(
            a ->
                new Standing(
                    finding.measure().isEmpty() ? State.OTHER_NUMBERS : State.WORSE,
                    Optional.of(a),
                    keys))
        .orElse(OPEN);
  }
}
