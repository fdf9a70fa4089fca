package org.underlee.picture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.picture.Labels.Label;

/** The names that a deck's picture can bear: bays first, then what is written on the pieces. */
public final class DeckLabels {
  private DeckLabels() {}

  /** Names of all that is in a picture of a layout; for most there will be no room. */
  public static List<Label> of(DeckPicture picture, Layout layout) {
    Map<String, Integer> ids = new HashMap<>();
    for (int i = 0; i < picture.subjects().size(); i++) {
      ids.put(picture.subjects().get(i).id(), i + 1);
    }
    Map<Bay, Set<Integer>> bays = new LinkedHashMap<>();
    List<Label> pieces = new ArrayList<>();
    for (Part part : layout.parts()) {
      Integer id = ids.get(part.id());
      if (id != null) {
        part.bay()
            .map(bay -> new Bay(part.field(), bay))
            .ifPresent(bay -> bays.computeIfAbsent(bay, b -> new LinkedHashSet<>()).add(id));
        pieces.add(new Label(part.label(), Set.of(id)));
      }
    }
    List<Label> all = new ArrayList<>();
    bays.forEach((bay, parts) -> all.add(new Label(bay.name, parts)));
    all.addAll(pieces);
    return all;
  }

  private record Bay(String field, String name) {}
}
