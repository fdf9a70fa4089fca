package org.underlee.layout;

import static org.underlee.kit.SheetValue.BATTEN_DEPTH;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_GRIP;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_WIDTH;
import static org.underlee.kit.SheetValue.BATTEN_SPACING;
import static org.underlee.kit.SheetValue.BATTEN_WIDTH;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;
import org.underlee.layout.Derivation.Measured;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * The battens across the joists that sheets are screwed to, and the straps that hang them from the
 * joists' sides: each batten hangs lower than the one uphill of it, so that the fall is theirs.
 */
final class BattenBuilder {
  private final FieldPlan plan;
  private final PartNames names;
  private final Kit kit;
  private final List<Part> battens = new ArrayList<>();
  private final List<Part> hangers = new ArrayList<>();

  BattenBuilder(FieldPlan plan, PartNames names) {
    this.plan = plan;
    this.names = names;
    this.kit = plan.kit();
  }

  /** Battens, then their hangers. */
  List<Part> parts() {
    return Stream.concat(battens.stream(), hangers.stream()).toList();
  }

  BattenBuilder add(SheetGroup group) {
    BattenPlaces places = new BattenPlaces(group);
    List<Double> stations = places.stations();
    double apart =
        stations.size() < 2
            ? 0
            : (stations.get(stations.size() - 1) - stations.get(0)) / (stations.size() - 1);
    for (double v : stations) {
      for (Interval piece : places.pieces(v)) {
        batten(places, piece, v, apart);
      }
    }
    return this;
  }

  private void batten(BattenPlaces places, Interval piece, double v, double apart) {
    Interval across = places.across(piece, v);
    double half = kit.get(BATTEN_WIDTH) / 2;
    double bottom = plan.seat(v - half);
    battens.add(
        names.inField(
            PartKind.BATTEN,
            battens.size() + 1,
            PartNames.Shape.of(
                    Items.BATTEN,
                    across.length(),
                    kit.get(BATTEN_WIDTH),
                    List.of(bar(across, v, bottom)))
                .cutFrom(Outline.rectangle(-half, 0, half, kit.get(BATTEN_DEPTH)))
                .derived(derivations(places.lines(piece), across, apart)),
            "carries the sheets, level across the joists, lower than the batten uphill of it"));
    places
        .hooks(piece, v)
        .forEach(h -> hanger(h.line(), v, bottom + kit.get(BATTEN_DEPTH), h.into()));
  }

  private Extrusion bar(Interval across, double v, double bottom) {
    double half = kit.get(BATTEN_WIDTH) / 2;
    Vec3 origin = new Vec3(across.from(), v, bottom);
    Transform end = new Transform(origin, Vec3.Y, Vec3.Z, Vec3.X);
    return Extrusion.straight(
        plan.frame().after(end),
        Outline.rectangle(-half, 0, half, kit.get(BATTEN_DEPTH)),
        across.length());
  }

  private List<Derivation> derivations(List<JoistLine> lines, Interval across, double apart) {
    Measured joists =
        new Measured(
            List.of(
                RunReckoning.element(lines.get(0)),
                RunReckoning.element(lines.get(lines.size() - 1))));
    List<Derivation> all = new ArrayList<>();
    all.add(
        new Reckoning(kit)
            .from(
                Words.of("from %s to %s", lines.get(0).id(), lines.get(lines.size() - 1).id()),
                across.length(),
                joists)
            .gives(Dimension.LENGTH));
    all.add(new Reckoning(kit).from(BATTEN_WIDTH).gives(Dimension.WIDTH));
    if (apart > 0) {
      Reckoning spacing = new Reckoning(kit);
      all.add(
          spacing
              .from(
                  Words.of(
                      "from one batten to the next on average, none more than %s",
                      Quantity.length(kit.get(BATTEN_SPACING))),
                  apart,
                  spacing.origin(BATTEN_SPACING))
              .gives(Dimension.SPACING));
    }
    return all;
  }

  /**
   * A strap down a joist's side, with a foot on the batten.
   *
   * @param into +1 when it hangs in the bay on the high-u side
   */
  private void hanger(JoistLine line, double v, double top, int into) {
    StockItem stock = kit.item(Items.BATTEN_HANGER);
    double t = stock.thickness();
    double wide = kit.get(BATTEN_HANGER_WIDTH);
    double half = wide / 2;
    double face =
        into > 0
            ? Math.max(line.rightAt(v - half), line.rightAt(v + half))
            : Math.min(line.leftAt(v - half), line.leftAt(v + half));
    double head = line.bottomAt(v) + kit.get(BATTEN_HANGER_GRIP);
    Vec3 out = Vec3.X.times(into);
    List<Extrusion> bodies =
        List.of(
            Sheet.prism(plan.frame(), upright(face, v, half, top, head), out.times(t)),
            Sheet.prism(
                plan.frame(),
                upright(face + into * t, v, half, top, top + t),
                out.times(wide - t)));
    Reckoning length =
        new Reckoning(kit)
            .from(
                Words.of("from the batten's top up to the joist's bottom"),
                line.bottomAt(v) - top,
                new Measured(List.of(RunReckoning.element(line))))
            .plus(BATTEN_HANGER_GRIP)
            .plus(BATTEN_HANGER_WIDTH);
    hangers.add(
        names.inField(
            PartKind.BATTEN_HANGER,
            hangers.size() + 1,
            PartNames.Shape.of(Items.BATTEN_HANGER, length.value(), wide, bodies)
                .derived(
                    List.of(
                        length.gives(Dimension.LENGTH),
                        new Reckoning(kit).from(BATTEN_HANGER_WIDTH).gives(Dimension.WIDTH))),
            "hangs the batten from the side of " + line.id()));
  }

  private static List<Vec3> upright(double u, double v, double half, double from, double to) {
    return List.of(
        new Vec3(u, v - half, from),
        new Vec3(u, v + half, from),
        new Vec3(u, v + half, to),
        new Vec3(u, v - half, to));
  }
}
