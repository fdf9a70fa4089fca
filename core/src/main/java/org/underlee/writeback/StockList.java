package org.underlee.writeback;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.underlee.kit.Material;
import org.underlee.kit.StockItem;

/** The kit's stock items and materials by their ids. */
public final class StockList {
  private final Map<String, StockItem> items = new LinkedHashMap<>();
  private final Map<String, Material> materials = new LinkedHashMap<>();

  public StockList(List<StockItem> items, List<Material> materials) {
    items.forEach(i -> this.items.put(i.id(), i));
    materials.forEach(m -> this.materials.put(m.id(), m));
  }

  StockItem item(String id) {
    return known("stock item", id, items.get(id));
  }

  Material material(StockItem item) {
    return known("material", item.material(), materials.get(item.material()));
  }

  private static <T> T known(String what, String id, @Nullable T found) {
    return Optional.ofNullable(found)
        .orElseThrow(() -> new IllegalArgumentException("the kit has no " + what + " " + id));
  }
}
