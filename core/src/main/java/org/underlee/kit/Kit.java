package org.underlee.kit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One kind of assembly: its numbers, what it is made of and what is bought for it.
 *
 * @param version of the kit's own data
 * @param values every number of its family but those left out, in SI, with its source
 */
public record Kit(
    String id,
    String version,
    String name,
    Family family,
    Map<KitNumber, Sourced> values,
    List<Material> materials,
    List<StockItem> stock) {

  /** A number in SI and where it comes from. */
  public record Sourced(double value, String source) {}

  public Kit {
    values = Map.copyOf(values);
    materials = List.copyOf(materials);
    stock = List.copyOf(stock);
  }

  /**
   * A value in SI: metres, or a plain ratio.
   *
   * @throws NullPointerException when the kit is of a family that has no such number
   */
  public double get(KitNumber value) {
    return Objects.requireNonNull(values.get(value), value::key).value();
  }

  /** A value that a kit may leave out, likewise. */
  public OptionalDouble find(KitNumber value) {
    return Optional.ofNullable(values.get(value)).stream().mapToDouble(Sourced::value).findFirst();
  }

  /** The same kit with one number set by the user. */
  public Kit with(KitNumber value, double si, String source) {
    Map<KitNumber, Sourced> all = new HashMap<>(values);
    all.put(value, new Sourced(si, source));
    return new Kit(id, version, name, family, all, materials, stock);
  }

  /** The same kit without a number that may be left out. */
  public Kit without(KitNumber value) {
    Map<KitNumber, Sourced> all = new HashMap<>(values);
    all.remove(value);
    return new Kit(id, version, name, family, all, materials, stock);
  }

  /** Drop over run of what catches the water. */
  public double fall() {
    return 1 / get(DrainValue.RUN_PER_FALL);
  }

  public double gutterFall() {
    return 1 / get(DrainValue.GUTTER_RUN_PER_FALL);
  }

  public StockItem item(String itemId) {
    // by number: every part of a layout asks, and an iterator each time is a twentieth of it
    for (int i = 0; i < stock.size(); i++) {
      if (stock.get(i).id().equals(itemId)) {
        return stock.get(i);
      }
    }
    throw new NoSuchElementException("kit " + id + " has no item " + itemId);
  }

  /** What the flashing behind the gutter is cut from. */
  public StockItem flashing() {
    return item(family.flashing());
  }

  /** Drop over run of the flashing behind the gutter. */
  public double flashingFall() {
    return 1 / get(DrainValue.FLASHING_RUN_PER_FALL);
  }

  public Material materialOf(StockItem item) {
    return materials.stream()
        .filter(m -> m.id().equals(item.material()))
        .findFirst()
        .orElseThrow(
            () -> new NoSuchElementException("kit " + id + " has no material " + item.material()));
  }
}
