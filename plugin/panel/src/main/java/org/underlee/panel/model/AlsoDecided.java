package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.underlee.framing.BuildingElement;
import org.underlee.layout.Onto;
import org.underlee.layout.OwnTables;
import org.underlee.run.HighLineAsked;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;

/** What is decided and has no field of its own to be seen in, each to be taken back by itself. */
public final class AlsoDecided {
  private final Session session;

  /** One of them, in words, and what is decided without it. */
  public record Row(String words, UnaryOperator<Decisions> without) {}

  AlsoDecided(Session session) {
    this.session = session;
  }

  /** All of them, in words with these units. */
  public List<Row> rows(UnitSystem units) {
    Decisions d = session.decisions().get();
    List<Row> rows = new ArrayList<>();
    if (d.boardsOff()) {
      rows.add(new Row("The boards are off, or not yet laid", b -> b.withBoardsOff(false)));
    }
    new TreeSet<>(d.wishes().leaveOpen())
        .forEach(b -> rows.add(new Row("Left open: " + bay(b), n -> n.closing(b))));
    new TreeSet<>(d.bothWays())
        .forEach(text -> rows.add(bothWays(HighLineAsked.parse(text), units)));
    new TreeMap<>(d.wishes().outlets().places())
        .forEach((field, places) -> rows.add(outlets(field, places, units)));
    d.wishes().onto().forEach(o -> rows.add(onto(o, units)));
    new TreeMap<>(d.roles()).forEach((id, word) -> rows.add(role(id, word)));
    d.wishes().tables().map(AlsoDecided::tables).ifPresent(rows::add);
    return rows;
  }

  /** {@code B3 of F1}, or {@code B3 of every field}. */
  private String bay(String leftOpen) {
    int end = leftOpen.lastIndexOf('/');
    return leftOpen.substring(end + 1)
        + " of "
        + (end < 0 ? "every field" : field(leftOpen.substring(0, end)));
  }

  private String field(String id) {
    return Names.of(session.result().get()).field(id);
  }

  private Row bothWays(HighLineAsked line, UnitSystem units) {
    OptionalDouble at = line.station();
    String where =
        at.isPresent()
            ? ", its high line " + Lengths.format(at.getAsDouble(), units) + " from its high end"
            : "";
    return new Row(
        field(line.field()) + " falls both ways" + where, n -> n.fallingOneWay(line.field()));
  }

  private Row outlets(String field, List<Double> places, UnitSystem units) {
    String where =
        places.stream().map(m -> Lengths.format(m, units)).collect(Collectors.joining(", "));
    String what = places.size() == 1 ? "Outlet of " : "Outlets of ";
    return new Row(what + field(field) + " at " + where, n -> n.withOutlets(field, List.of()));
  }

  private static Row onto(Onto onto, UnitSystem units) {
    String area = new Quantity(onto.area(), Quantity.Kind.AREA).in(units);
    return new Row(
        String.format(
            Locale.ROOT,
            "Rain of %s comes onto %.2f, %.2f (metres in the model)",
            area,
            onto.at().x(),
            onto.at().y()),
        n -> n.notDraining(onto));
  }

  private Row role(String globalId, String word) {
    String name =
        session
            .result()
            .get()
            .flatMap(r -> r.element(globalId))
            .map(BuildingElement::name)
            .filter(n -> !n.isBlank())
            .orElse(globalId);
    return new Row("“" + name + "” is " + word, n -> n.withRole(globalId, Optional.empty()));
  }

  private static Row tables(OwnTables own) {
    return new Row("Rated by your own table " + own.file(), n -> n.withTables(Optional.empty()));
  }

  /** Takes one back, as one step to undo. */
  public void remove(Row row) {
    session.decide("Take back: " + row.words(), row.without());
  }
}
