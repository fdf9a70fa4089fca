package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.underlee.check.OutletRatings;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.Leak;
import org.underlee.drainage.OutletShare;
import org.underlee.drainage.flow.Rating;
import org.underlee.drainage.flow.Storm;
import org.underlee.run.Design;
import org.underlee.run.OutletsRated;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;

/**
 * What gutters, outlets and downspouts carry of the rain, where the water of each outlet comes
 * from, what leaks, and what happens when an outlet is blocked.
 */
final class WaterTables {
  static final String RATED = "Rated";
  static final String OUTLETS = "Outlets";
  static final String NOT_DRAINED = "Not drained";
  static final String BLOCKED = "If an outlet is blocked";

  private final Design design;
  private final DrainProof proof;
  private final Decisions decisions;
  private final Storm storm;
  private final UnitSystem units;
  private final Names names;

  private WaterTables(Result result, Design design, UnitSystem units) {
    this.design = design;
    this.units = units;
    proof = design.proof();
    decisions = result.decisions();
    storm = decisions.storm();
    names = Names.of(result, design.layout());
  }

  static List<Table> of(Result result, Design design, UnitSystem units) {
    WaterTables tables = new WaterTables(result, design, units);
    return List.of(tables.rated(), tables.outlets(), tables.leaks(), tables.blocked());
  }

  private Table rated() {
    return new Table(
        RATED,
        List.of("What", "Must carry", "Carries", "Used", "By", "Decides"),
        List.of(1, 2, 3),
        OutletsRated.of(design, decisions.wishes(), storm).stream()
            .flatMap(o -> Stream.of(Rating.Part.values()).flatMap(p -> rated(o, p)))
            .toList());
  }

  /** What every method says of one part, the least first. */
  private Stream<Table.Line> rated(OutletRatings outlet, Rating.Part part) {
    String what = mark(outlet.outlet()) + " " + part.name().toLowerCase(Locale.ROOT);
    return outlet.of(part).stream()
        .map(
            r ->
                new Table.Line(
                    List.of(
                        what,
                        flow(r.demand()),
                        flow(r.capacity().flow()),
                        used(r),
                        r.capacity().words(),
                        decides(outlet, r)),
                    Optional.of(new Item.OfPart(outlet.outlet()))));
  }

  /** Rounded up, so that what is too much is never shown as 100 %. */
  private static String used(Rating rating) {
    return String.format(Locale.ROOT, "%.0f %%", Math.ceil(100 * rating.use()));
  }

  private static String decides(OutletRatings outlet, Rating rating) {
    if (outlet.governs(rating)) {
      return rating.passes() ? "yes" : "yes: too much";
    }
    return rating.capacity().accepted() ? "" : "shown only";
  }

  private String flow(double cubicMetresPerSecond) {
    return Quantity.of(Kind.FLOW, cubicMetresPerSecond).in(units);
  }

  private String mark(String part) {
    return names.inText(part);
  }

  private Table outlets() {
    List<Table.Line> lines = new ArrayList<>();
    for (OutletShare share : proof.outlets()) {
      lines.add(
          new Table.Line(
              List.of(
                  mark(share.outlet()),
                  Quantity.area(share.area()).in(units),
                  flow(storm.flow(share.area())),
                  String.join(" ", share.bays().keySet().stream().sorted(Natural.ORDER).toList())),
              Optional.of(new Item.OfPart(share.outlet()))));
    }
    return new Table(OUTLETS, List.of("Outlet", "Deck area", "Flow", "Bays"), List.of(1, 2), lines);
  }

  private Table leaks() {
    List<Table.Line> lines = new ArrayList<>();
    for (Leak leak : proof.leaks()) {
      lines.add(
          new Table.Line(
              List.of(
                  names.bay(leak.field(), leak.bay()),
                  leak.cause().why(),
                  Quantity.area(leak.area()).in(units),
                  Quantity.of(Kind.DRIP, storm.flow(leak.area())).in(units),
                  leak.cause().fix()),
              Optional.of(new Item.OfBay(leak.field(), leak.bay()))));
    }
    return new Table(
        NOT_DRAINED,
        List.of("Where", "Why", "Deck area", "In this rain", "What to do"),
        List.of(2, 3),
        lines);
  }

  private Table blocked() {
    return new Table(
        BLOCKED,
        List.of("Blocked outlet", "Water stands in", "Deepest", "Weight", "Then runs to"),
        List.of(2, 3),
        proof.blocked().stream()
            .map(
                b ->
                    new Table.Line(
                        List.of(
                            b.blocked().map(this::mark).orElse(""),
                            mark(b.part()),
                            Lengths.format(b.depth(), units),
                            new Quantity(b.mass(), Kind.MASS).in(units),
                            mark(b.spillsTo())),
                        Optional.of(new Item.OfPart(b.part()))))
            .toList());
  }
}
