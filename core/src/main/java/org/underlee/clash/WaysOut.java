package org.underlee.clash;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Fix;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Framing;
import org.underlee.geom.BarMeasure;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Transform;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.layout.Layouter;
import org.underlee.layout.Scope;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Finds ways out of issues: the assembly laid out again around the things, at the kit's fall and at
 * gentler ones; the thing moved; the bays left open; the pan made removable. Each is tried, and
 * told with its price, only when the thing is free then.
 */
public final class WaysOut {
  /** Gentler falls that are tried: 1/10 and 1/16 in per ft; less lets water stand. */
  private static final int[] RUNS_PER_FALL = {120, 192};

  /** An assembly laid out anew, and the things that are still in its way. */
  private record Other(Words what, List<Fix.Option> options, Room room, Set<BuildingElement> hit) {}

  private final List<FieldBays> fields;
  private final List<Ours> parts;
  private final List<Theirs> things;
  private final Room own;
  private final List<Other> others;

  private WaysOut(
      List<FieldBays> fields, List<Ours> parts, List<Theirs> things, List<Other> others) {
    this.fields = fields;
    this.parts = parts;
    this.things = things;
    this.own = Room.of(parts);
    this.others = others;
  }

  /**
   * The issues with the ways out of those that are pending.
   *
   * @param fields their crossings include those of the services
   * @param kit for laying out again
   * @param services names of the files of services, as given
   */
  public static List<Tracked> add(
      List<Tracked> issues,
      Framing framing,
      List<FieldBays> fields,
      Kit kit,
      List<Ours> parts,
      List<Theirs> things,
      List<String> services) {
    if (issues.stream().noneMatch(Tracked::isPending)) {
      return issues;
    }
    List<Other> others = new ArrayList<>();
    List<Fix.Option> given =
        services.isEmpty()
            ? List.of()
            : List.of(new Fix.Option("--services", String.join(" ", services)));
    others.add(other(Words.plain("lay out again around it"), framing, fields, kit, things, given));
    for (int run : RUNS_PER_FALL) {
      if (run > kit.get(DrainValue.RUN_PER_FALL)) {
        Kit flatter = kit.with(DrainValue.RUN_PER_FALL, run, "a way out that is tried");
        List<Fix.Option> options = new ArrayList<>(given);
        options.add(new Fix.Option("--fall", "1:" + run));
        Words what =
            Words.of("lay out again around it with a fall of %s", Quantity.fall(flatter.fall()));
        others.add(other(what, framing, fields, flatter, things, options));
      }
    }
    WaysOut ways = new WaysOut(fields, parts, things, others);
    return issues.stream().map(t -> t.isPending() ? t.with(ways.of(t)) : t).toList();
  }

  private static Other other(
      Words what,
      Framing framing,
      List<FieldBays> fields,
      Kit kit,
      List<Theirs> things,
      List<Fix.Option> options) {
    List<Ours> parts =
        Layouter.layOut(framing, fields, Scope.OUTSIDE, kit).parts().stream()
            .map(Ours::of)
            .toList();
    Set<BuildingElement> hit = new HashSet<>();
    ClashFinder.find(fields, parts, things).clashes().forEach(c -> hit.add(c.thing().element()));
    return new Other(what, options, Room.of(parts), hit);
  }

  private List<WayOut> of(Tracked tracked) {
    Issue issue = tracked.issue().orElseThrow();
    List<WayOut> found = new ArrayList<>();
    if (issue.cause() == Cause.HIDDEN) {
      found.add(removable(issue));
    }
    again(issue).ifPresent(found::add);
    if (issue.cause() == Cause.INTERSECT || issue.cause() == Cause.TOO_NEAR) {
      moved(issue).ifPresent(found::add);
    }
    opened(issue).ifPresent(found::add);
    return found;
  }

  /** The first arrangement in which none of the things is in the way. */
  private Optional<WayOut> again(Issue issue) {
    return others.stream()
        .filter(o -> o.room.pieces() > 0)
        .filter(o -> issue.things().stream().noneMatch(t -> o.hit.contains(t.element())))
        .findFirst()
        .map(o -> new WayOut(o.what, own.price(o.room), o.options));
  }

  private Optional<WayOut> moved(Issue issue) {
    if (issue.things().stream().anyMatch(t -> t.kind().clearance() == 0)) {
      return Optional.empty(); // framing and the house stay where they are
    }
    return frame(issue)
        .flatMap(f -> Move.of(issue.things(), parts, things, f))
        .map(
            m -> WayOut.byHand(m.words(), Words.of("the assembly stays as it is, %s", run(issue))));
  }

  private static Words run(Issue issue) {
    double length =
        issue.things().stream()
            .mapToDouble(
                t ->
                    BarMeasure.of(t.element().shape())
                        .map(OrientedBox::length)
                        .orElseGet(() -> t.element().shape().bounds().size().length()))
            .sum();
    return Words.of("%s of it to be moved", Quantity.length(length));
  }

  private Optional<Transform> frame(Issue issue) {
    String field = issue.worst().part().field();
    return fields.stream()
        .filter(f -> f.field().id().equals(field))
        .map(f -> f.field().frame())
        .findFirst();
  }

  /** Without all parts of the bays that it meets, where it meets nothing else. */
  private Optional<WayOut> opened(Issue issue) {
    Set<String> bays = new LinkedHashSet<>();
    for (Clash c : issue.clashes()) {
      if (!c.part().isInBay()) {
        return Optional.empty();
      }
      bays.add(c.part().bay());
    }
    List<Ours> kept = parts.stream().filter(p -> !bays.contains(p.bay())).toList();
    Words what =
        Words.of("leave %s open", String.join(", ", bays.stream().map(WaysOut::name).toList()));
    return Optional.of(WayOut.byHand(what, own.price(Room.of(kept))));
  }

  private static String name(String bay) {
    return bay.substring(bay.lastIndexOf('/') + 1);
  }

  private static WayOut removable(Issue issue) {
    Ours pan = issue.worst().part();
    return WayOut.byHand(
        Words.of(
            "make %s removable: screws that come out, no sealant at its laps, and a mark below",
            pan.id()),
        Words.of("one piece of %s to take down", Quantity.length(length(pan))));
  }

  private static double length(Ours part) {
    return BarMeasure.of(part.shape())
        .map(OrientedBox::length)
        .orElseGet(() -> part.bounds().size().length());
  }
}
