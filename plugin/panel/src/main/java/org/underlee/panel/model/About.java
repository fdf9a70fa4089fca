package org.underlee.panel.model;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a selection touches: the selected things, what is inside them, and the bay of a selected
 * part. Not the field of a selected bay: nearly everything is about that.
 */
public final class About {
  private final Set<Item> selection;
  private final Map<Item, Item> above;
  private final Set<Item> around;

  /**
   * @param selection what is selected
   * @param above which item each item is inside
   */
  About(Set<Item> selection, Map<Item, Item> above) {
    this.selection = selection;
    this.above = above;
    around =
        selection.stream()
            .filter(Item.OfPart.class::isInstance)
            .flatMap(p -> Optional.ofNullable(above.get(p)).stream())
            .filter(Item.OfBay.class::isInstance)
            .collect(Collectors.toSet());
  }

  /** Whether something about these is about the selection. */
  public boolean touches(Collection<Item> items) {
    return !selection.isEmpty() && items.stream().anyMatch(i -> around.contains(i) || isInside(i));
  }

  private boolean isInside(Item item) {
    for (Item i = item; i != null; i = above.get(i)) {
      if (selection.contains(i)) {
        return true;
      }
    }
    return false;
  }
}
