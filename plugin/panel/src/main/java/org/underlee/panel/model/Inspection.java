package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.bay.Crossing;
import org.underlee.finding.Finding;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.RoleGiven;
import org.underlee.layout.Derivation;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.GutterPlaces;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;

/**
 * What there is to say of a selected thing.
 *
 * @param why in sentences, or as sums
 */
public record Inspection(String name, String kind, List<Row> rows, List<Because> why) {
  public Inspection {
    rows = List.copyOf(rows);
    why = List.copyOf(why);
  }

  /** One number or fact. */
  public record Row(String name, String value) {}

  /**
   * Where a number comes from.
   *
   * @param steps as in a sum; empty for a plain reason
   */
  public record Because(String what, List<String> steps) {
    public Because {
      steps = List.copyOf(steps);
    }
  }

  /** Says what is known of an item; empty when it is no longer there. */
  public static Optional<Inspection> of(Item item, Result result, UnitSystem units) {
    Sayer say = new Sayer(units, Names.of(result));
    if (item instanceof Item.OfPart part) {
      return result.part(part.id()).map(p -> say.part(p, result));
    } else if (item instanceof Item.OfBay bay) {
      return result.bay(bay.field(), bay.bay()).map(b -> say.bay(b, bay.field(), result));
    } else if (item instanceof Item.OfField field) {
      return result.field(field.id()).map(f -> say.field(f.field(), result.layoutOf(field.id())));
    } else if (item instanceof Item.OfDeck deck) {
      return result.survey().framing().decks().stream()
          .filter(d -> d.id().equals(deck.id()))
          .findFirst()
          .map(say::deck);
    } else if (item instanceof Item.OfElement element) {
      return result.element(element.globalId()).map(e -> say.element(e, result));
    }
    return Optional.empty();
  }

  /** Says all that is known of a finding. */
  public static Inspection of(FindingList.Row row, UnitSystem units) {
    Finding finding = row.finding();
    List<Row> rows = new ArrayList<>();
    finding
        .measure()
        .ifPresent(
            m -> {
              rows.add(new Row("Measured", m.measured().in(units)));
              rows.add(new Row("Limit", m.limit().in(units)));
            });
    rows.add(new Row("Source", finding.rule().source()));
    List<Because> why = new ArrayList<>();
    why.add(new Because(row.message(), List.of()));
    why.add(new Because("Found when", List.of(finding.rule().meaning())));
    if (!row.advice().isEmpty()) {
      why.add(new Because("What to do", List.of(row.advice())));
    }
    row.fix().ifPresent(f -> why.add(new Because(f, List.of("Then: " + row.price().orElse("")))));
    row.standing().kept().ifPresent(a -> why.add(answered(row, a)));
    String kind = row.finding().level().word() + (row.where().isEmpty() ? "" : ", " + row.where());
    return new Inspection(finding.rule().id(), kind, rows, why);
  }

  private static Because answered(FindingList.Row row, Acceptance kept) {
    boolean isSame = row.standing().state() == Standing.State.ACCEPTED || kept.of().isEmpty();
    return new Because(
        Names.capital(row.standing().state().words()),
        isSame ? List.of(kept.reason()) : List.of(kept.reason(), "It was: " + kept.of()));
  }

  private record Sayer(UnitSystem units, Names names) {
    private String length(double metres) {
      return Lengths.format(metres, units);
    }

    Inspection part(Part part, Result result) {
      List<Row> rows = new ArrayList<>();
      rows.add(new Row("Length to cut", Lengths.cut(part.cutLength(), units)));
      rows.add(new Row("Width", Lengths.cut(part.width(), units)));
      part.sheetWidth()
          .ifPresent(w -> rows.add(new Row("Flat sheet", Lengths.cut(w, units) + " wide")));
      part.fall().ifPresent(f -> rows.add(new Row("Fall", Lengths.fall(f, units))));
      if (part.count() > 1) {
        rows.add(new Row("Count", Integer.toString(part.count())));
      }
      part.cuts().forEach(c -> rows.add(new Row("Cut", c.words().in(units))));
      rows.add(new Row("Cut from", stock(part, result)));
      rows.add(
          new Row(
              part.bay().isPresent() ? "Bay" : "Field",
              part.bay()
                  .map(b -> names.bay(part.field(), b))
                  .orElseGet(() -> names.field(part.field()))));
      if (part.kind() == PartKind.OUTLET) {
        result
            .layoutOf(part.field())
            .flatMap(FieldLayout::gutter)
            .ifPresent(g -> rows.add(new Row("Along the gutter", along(part, g))));
      }
      rows.add(new Row("Id in files", part.id()));
      result
          .design()
          .flatMap(d -> d.globalIdOf(part))
          .ifPresent(g -> rows.add(new Row("GlobalId when written", g)));
      List<Because> why = new ArrayList<>();
      why.add(new Because(part.why().reason().in(units), List.of()));
      part.why().derivations().forEach(d -> why.add(because(d)));
      return new Inspection(part.label(), part.kind().spoken(), rows, why);
    }

    /** {@code 450 mm of 5600 mm}. */
    private String along(Part outlet, GutterPlaces gutter) {
      double at = gutter.outlets().get(gutter.nearest(outlet.bounds().centre()));
      return length(at) + " of " + length(gutter.length());
    }

    private String stock(Part part, Result result) {
      return result.layout().kit().stock().stream()
          .filter(s -> s.id().equals(part.item()))
          .map(s -> s.description(units))
          .findFirst()
          .orElseGet(() -> Names.item(part.item()));
    }

    private Because because(Derivation d) {
      List<String> steps = new ArrayList<>();
      for (Derivation.Step step : d.steps()) {
        steps.add(
            (step.op().sign().isEmpty() ? "" : step.op().sign() + " ")
                + step.value().exactlyIn(units)
                + "  "
                + step.what().in(units)
                + origin(step.origin()));
      }
      return new Because(d.dimension().words() + " = " + d.result().in(units), steps);
    }

    private String origin(Derivation.Origin origin) {
      if (origin instanceof Derivation.KitValue kit) {
        return " (kit: " + kit.source() + ")";
      }
      return origin instanceof Derivation.Ruled rule ? " (" + rule.source().in(units) + ")" : "";
    }

    Inspection bay(Bay bay, String field, Result result) {
      List<Row> rows = new ArrayList<>();
      rows.add(new Row("Clear width, high end", length(bay.clearWidthHigh())));
      rows.add(new Row("Clear width, low end", length(bay.clearWidthLow())));
      rows.add(new Row("Clear length", length(bay.length())));
      rows.add(new Row("Joist depth", length(bay.depth())));
      rows.add(new Row("Between", bay.left().id() + " and " + bay.right().id()));
      for (Block block : bay.blocking()) {
        rows.add(new Row("Blocking at " + length(block.at()), underside(block)));
      }
      for (Crossing c : bay.crossings()) {
        rows.add(new Row("Crossing at " + length(c.at()), crossing(c)));
      }
      List<Because> why = new ArrayList<>();
      result
          .layoutOf(field)
          .ifPresent(l -> why.add(new Because(drained(bay, l, result), List.of())));
      return new Inspection(bay.id(), "bay of " + names.field(field), rows, why);
    }

    /** From where a seat is measured, too. */
    private String underside(Block block) {
      if (Math.abs(block.bottom()) < Lengths.TAPE_MARK / 2) {
        return "underside level with the joist bottom";
      }
      return "underside "
          + length(Math.abs(block.bottom()))
          + (block.bottom() > 0 ? " above the joist bottom" : " below the joist bottom");
    }

    private String drained(Bay bay, FieldLayout layout, Result result) {
      if (!layout.bays().contains(bay.id())) {
        return "Left open; the findings say why.";
      }
      String seat = "; the seat is set by " + layout.binding().in(units) + ".";
      return Caught.of(result)
          .map(c -> c.bay(layout.field(), bay.id()))
          .map(
              c ->
                  "Drained to "
                      + layout.lowEnd()
                      + (c.isWhole() ? "" : ", " + c.rest().in(units))
                      + seat)
          .orElse("Laid out to " + layout.lowEnd() + ", not proven yet" + seat);
    }

    private String crossing(Crossing c) {
      String name = c.element().name().isEmpty() ? c.element().ifcClass() : c.element().name();
      return name
          + ", "
          + length(c.size())
          + ", "
          + c.way().name().toLowerCase(java.util.Locale.ROOT);
    }

    Inspection field(Field field, Optional<FieldLayout> layout) {
      List<Row> rows = new ArrayList<>();
      rows.add(new Row("Joist lines", Integer.toString(field.lines().size())));
      rows.add(new Row("Along the ledger", length(field.across().length())));
      rows.add(new Row("Along the fall", length(field.along().length())));
      List<Because> why = new ArrayList<>();
      why.add(new Because("Falls this way because " + field.fallWhy() + ".", List.of()));
      field
          .highLine()
          .ifPresent(h -> why.add(new Because("And " + h.words().in(units) + ".", List.of())));
      layout.ifPresent(
          l -> {
            rows.add(new Row("Fall", Lengths.fall(l.fall(), units)));
            rows.add(new Row("Run", length(l.run())));
            rows.add(new Row("Seat at the high end", length(l.seatHigh())));
            rows.add(new Row("Seat at the low end", length(l.seatHigh() - l.fall() * l.run())));
            rows.add(new Row("Low-end line", l.lowEnd()));
            rows.add(new Row("Parts", Integer.toString(l.parts().size())));
            why.add(new Because("The seat is set by " + l.binding().in(units) + ".", List.of()));
          });
      return new Inspection(names.field(field.id()), "joist field of " + deckOf(field), rows, why);
    }

    private static String deckOf(Field field) {
      return Names.deck(field.id().substring(0, Math.max(0, field.id().indexOf('/'))));
    }

    Inspection deck(Deck deck) {
      List<Row> rows = new ArrayList<>();
      rows.add(new Row("Fields", Integer.toString(deck.fields().size())));
      rows.add(new Row("Joist tops at", length(deck.top())));
      deck.storey().ifPresent(s -> rows.add(new Row("Storey", s.name())));
      return new Inspection(
          Names.deck(deck.id()),
          deck.outside().value() ? "outside deck" : "inside floor",
          rows,
          List.of(new Because(deck.outside().why() + ".", List.of())));
    }

    Inspection element(BuildingElement element, Result result) {
      List<Row> rows = new ArrayList<>();
      Optional<RoleGiven> role =
          result.survey().framing().roles().stream()
              .filter(r -> r.member().id().equals(element.globalId()))
              .findFirst();
      List<Because> why = new ArrayList<>();
      role.ifPresent(
          r -> {
            rows.add(new Row("Role", r.role().word()));
            rows.add(
                new Row("Confidence", new Quantity(r.confidence(), Quantity.Kind.SHARE).in(units)));
            why.add(new Because(r.why(), List.of()));
          });
      rows.add(new Row("Class", element.ifcClass()));
      if (!element.typeName().isEmpty()) {
        rows.add(new Row("Type", element.typeName()));
      }
      rows.add(new Row("In the file", "#" + element.instance()));
      rows.add(new Row("GlobalId", element.globalId()));
      element.file().ifPresent(f -> rows.add(new Row("Model", f)));
      String name = element.name().isEmpty() ? element.ifcClass() : element.name();
      return new Inspection(name, "element of the model", rows, why);
    }
  }
}
