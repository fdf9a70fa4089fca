package org.underlee.layout;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.geom.Box;
import org.underlee.kit.Kit;

/** From bays and a kit to every part in its place. */
public final class Layouter {
  private Layouter() {}

  /**
   * Lays out every deck in scope, field by field.
   *
   * @param bays of every field of the decks
   * @throws InputException when the scope names a deck or bay that is not there
   */
  public static Layout layOut(Framing framing, List<FieldBays> bays, Scope scope, Kit kit) {
    return layOut(framing, bays, scope, kit, GutterCapacity.ENOUGH);
  }

  /** As above, with as many outlets as the rain asks for. */
  public static Layout layOut(
      Framing framing, List<FieldBays> bays, Scope scope, Kit kit, GutterCapacity capacity) {
    Layouting all = fieldByField(framing, bays, scope, kit, capacity);
    return all.together(all::layOut);
  }

  /**
   * As {@link #layOut(Framing, List, Scope, Kit, GutterCapacity)}, to be done one field at a time.
   *
   * @param capacity asked by as many threads as lay out fields
   */
  public static Layouting fieldByField(
      Framing framing, List<FieldBays> bays, Scope scope, Kit kit, GutterCapacity capacity) {
    List<Deck> decks = scope.of(framing.decks());
    requireBays(decks, bays, scope.wishes());
    requireDryBays(decks, bays, scope.wishes());
    requireFields(framing.decks(), scope.wishes());
    return new Layouting(framing, bays, scope, kit, capacity);
  }

  /** Ids of the lines that low ends may follow in some field, nearest to the house first. */
  public static List<String> lowEnds(List<FieldBays> bays) {
    return bays.stream()
        .flatMap(b -> LowEnd.candidates(b).stream())
        .map(LowEnd::id)
        .distinct()
        .sorted()
        .toList();
  }

  static FieldBays baysOf(Field field, List<FieldBays> bays) {
    return bays.stream().filter(b -> b.field().equals(field)).findFirst().orElseThrow();
  }

  /** Some bay must be over what is to stay dry. */
  private static void requireDryBays(List<Deck> decks, List<FieldBays> all, Wishes wishes) {
    List<Field> fields = decks.stream().flatMap(d -> d.fields().stream()).toList();
    boolean some = fields.stream().anyMatch(f -> isOverZone(baysOf(f, all), wishes));
    if (wishes.dryZone().isPresent() && !some) {
      Box decked = Box.around(fields.stream().map(Layouter::bounds).toList());
      throw new InputException(
          Place.NOWHERE,
          String.format(
              Locale.ROOT,
              "no bay of the decks in scope is over the dry zone; their joists are from"
                  + " %.3f,%.3f to %.3f,%.3f m",
              decked.min().x(),
              decked.min().y(),
              decked.max().x(),
              decked.max().y()),
          "Draw the zone below a deck, in the model's coordinates, or name a slab or space there.");
    }
  }

  static boolean isOverZone(FieldBays bays, Wishes wishes) {
    return bays.bays().stream().anyMatch(b -> wishes.keepsDry(b, bays.field()));
  }

  private static Box bounds(Field field) {
    return Box.around(
        field.lines().stream()
            .flatMap(l -> l.plies().stream())
            .map(m -> m.element().shape().bounds())
            .toList());
  }

  static Finding outsideZone(Field field) {
    return Finding.of(
        LayoutRules.OUTSIDE_ZONE,
        field.lines().get(0).plies().get(0).element().place(),
        field.id() + " is over nothing that must stay dry; it is left open.",
        "Nothing to do; draw the dry zone larger where rain must not fall through.");
  }

  /** A field whose outlets are placed must be there. */
  private static void requireFields(List<Deck> decks, Wishes wishes) {
    Set<String> unknown = new TreeSet<>(wishes.outlets().places().keySet());
    decks.forEach(d -> d.fields().forEach(f -> unknown.remove(f.id())));
    if (!unknown.isEmpty()) {
      throw new InputException(
          Place.NOWHERE,
          "there is no field " + String.join(", ", unknown) + " to place outlets on",
          "Run survey to see the fields; name one as deck-1/field-1.");
    }
  }

  /** A bay that is to be left open must be there. */
  private static void requireBays(List<Deck> decks, List<FieldBays> all, Wishes wishes) {
    Set<String> unknown = new TreeSet<>(wishes.leaveOpen());
    decks.stream()
        .flatMap(d -> d.fields().stream())
        .map(f -> baysOf(f, all))
        .forEach(
            f ->
                f.bays()
                    .forEach(
                        b -> unknown.removeAll(Set.of(b.id(), f.field().id() + "/" + b.id()))));
    if (!unknown.isEmpty()) {
      throw new InputException(
          Place.NOWHERE,
          "there is no bay " + String.join(", ", unknown) + " to leave open in the decks in scope",
          "Run survey to see the bays; name one as B3, or as deck-1/field-1/B3.");
    }
  }
}
