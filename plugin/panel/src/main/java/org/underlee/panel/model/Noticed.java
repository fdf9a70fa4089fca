package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import org.underlee.finding.Finding;

/**
 * A finding with the things that it leads to.
 *
 * @param places in the order of what it is about; none for the model as a whole
 */
public record Noticed(Finding finding, List<Item> places) {
  public Noticed {
    places = List.copyOf(places);
  }

  static List<Noticed> all(Result result) {
    return result.findings().stream().map(f -> new Noticed(f, places(f, result))).toList();
  }

  /** Where a finding leads to, in the order of what it is about; empty for the model as a whole. */
  static List<Item> places(Finding finding, Result result) {
    List<Item> named =
        finding.subjects().stream()
            .flatMap(s -> subject(s.group(), s.name(), result).stream())
            .distinct()
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
    return part.or(() -> result.field(group).map(f -> new Item.OfField(f.field().id())));
  }
}
