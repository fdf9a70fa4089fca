package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.underlee.panel.model.Table.Line;
import org.underlee.run.BayChange;
import org.underlee.run.Resynced;
import org.underlee.units.Lengths.UnitSystem;

/** What a new export has changed: of the bays with their parts, and of what was decided. */
final class ChangeTables {
  private ChangeTables() {}

  static List<Table> of(Resynced resynced, Names names, UnitSystem units) {
    return List.of(bays(resynced, names, units), decisions(resynced, names));
  }

  private static Table bays(Resynced resynced, Names names, UnitSystem units) {
    return new Table(
        "Bays",
        List.of("Bay", "Is", "Known by", "Why", "Parts same", "Changed", "Added", "Gone"),
        List.of(4, 5, 6, 7),
        resynced.bays().stream().map(b -> line(b, names, units)).toList());
  }

  private static Line line(BayChange bay, Names names, UnitSystem units) {
    BayChange.Parts parts = bay.parts();
    boolean there = bay.kind() != BayChange.Kind.GONE;
    return new Line(
        List.of(
            names.bay(bay.field(), bay.bay()),
            bay.kind().word(),
            bay.matchedBy().map(BayChange.MatchedBy::word).orElse(""),
            bay.why().stream().map(w -> w.in(units)).collect(Collectors.joining("; ")),
            Integer.toString(parts.same()),
            Integer.toString(parts.changed()),
            Integer.toString(parts.added()),
            Integer.toString(parts.gone())),
        there ? Optional.of(new Item.OfBay(bay.field(), bay.bay())) : Optional.empty());
  }

  private static Table decisions(Resynced resynced, Names names) {
    return new Table(
        "Decisions",
        List.of("Of", "Decision", "Value", "Kept", "Why not"),
        List.of(),
        resynced.decisions().stream()
            .map(
                d ->
                    new Line(
                        List.of(
                            names.inText(d.of()),
                            d.name(),
                            d.value(),
                            d.kept() ? "yes" : "no",
                            d.why()),
                        Optional.empty()))
            .toList());
  }
}
