package org.underlee.panel.model;

import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.finding.Fix;
import org.underlee.layout.Onto;
import org.underlee.run.HighLineAsked;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;

/**
 * Says what a fix does, for a button.
 *
 * @param names of fields, as they are written on their pieces
 */
record FixWords(Names names, UnitSystem units) {
  /** {@code Set the fall to 1:64 and use the kit rigid-vinyl}. */
  String of(Fix.Action action) {
    return Names.capital(
        action.options().stream().map(this::of).collect(Collectors.joining(" and ")));
  }

  private String of(Fix.Option option) {
    return switch (option.name()) {
      case "--fall" -> "set the fall to " + option.value();
      case "--kit" -> "use the kit " + option.value();
      case "--deck" -> "drain " + Names.deck(option.value()) + " alone";
      case "--rain" -> "design for rain of " + option.value();
      case "--services" -> "lay out around the services";
      case "--boards-off" -> "say that the boards are off";
      case "--dry-zone" -> "draw the dry zone on past the joist";
      case "--both-ways" -> bothWays(HighLineAsked.parse(option.value()));
      case "--also-drains" -> alsoDrains(option.value());
      default -> option.name().replaceFirst("^-+", "") + " " + option.value();
    };
  }

  private String bothWays(HighLineAsked line) {
    OptionalDouble at = line.station();
    return "let "
        + field(line.field())
        + " fall both ways"
        + (at.isPresent()
            ? " from " + Quantity.length(at.getAsDouble()).in(units) + " off its high end"
            : "");
  }

  private String field(String id) {
    String known = names.field(id);
    String name = known.equals(id) ? id.substring(id.lastIndexOf('-') + 1) : known;
    return name.startsWith("Field ") ? name : "field " + name;
  }

  private String alsoDrains(String places) {
    double area = Stream.of(places.split(" ")).map(Onto::parse).mapToDouble(Onto::area).sum();
    return "count the rain of " + Quantity.area(area).in(units) + " of roof too";
  }
}
