package org.underlee.panel.view;

import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;
import org.underlee.panel.model.Offer;

/** A kit of the user's own is known by its file, and shown without the folders. */
final class KitWords extends StringConverter<String> {
  private final Offer offer;

  KitWords(Offer offer) {
    this.offer = offer;
  }

  @Override
  public String toString(@Nullable String kit) {
    return kit == null ? "" : offer.kitWords(kit);
  }

  @Override
  public String fromString(String words) {
    return offer.kits().stream()
        .filter(k -> offer.kitWords(k).equals(words))
        .findFirst()
        .orElse(words);
  }
}
