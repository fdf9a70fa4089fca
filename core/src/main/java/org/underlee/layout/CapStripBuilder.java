package org.underlee.layout;

import static org.underlee.kit.DrainValue.HANGER_END;
import static org.underlee.kit.DrapeValue.CAP_FASTENER_SPACING;
import static org.underlee.kit.DrapeValue.CAP_OVERHANG;

import java.util.ArrayList;
import java.util.List;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;
import org.underlee.layout.Derivation.Measured;
import org.underlee.layout.Derivation.Op;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/**
 * The strips over the joists between troughs: each covers the membranes' edges and the joist's top,
 * and drips into the troughs at its sides. Single and doubled joists are covered alike.
 */
record CapStripBuilder(FieldPlan plan, PartNames names) {

  List<Part> parts() {
    List<Part> parts = new ArrayList<>();
    for (JoistLine line : plan.bays().field().lines()) {
      List<BayRun> beside =
          plan.served().stream()
              .filter(r -> r.bay().left().equals(line) || r.bay().right().equals(line))
              .toList();
      if (!beside.isEmpty()) {
        parts.addAll(parts(line, beside));
      }
    }
    return parts;
  }

  /** Reaches out over troughs only: beyond the outer joists a wall may stand. */
  private Linear side(JoistLine line, List<BayRun> beside, boolean left) {
    boolean trough =
        beside.stream().anyMatch(r -> line.equals(left ? r.bay().right() : r.bay().left()));
    double over = trough ? plan.kit().get(CAP_OVERHANG) : 0;
    return left ? line.left().plus(-over) : line.right().plus(over);
  }

  private List<Part> parts(JoistLine line, List<BayRun> beside) {
    double from =
        beside.stream().mapToDouble(r -> r.joistStart(plan.bays().field())).min().orElseThrow();
    double to = beside.stream().mapToDouble(BayRun::lowFace).max().orElseThrow();
    Linear left = side(line, beside, true);
    Linear right = side(line, beside, false);
    StockItem stock = plan.kit().item(Items.CAP_STRIP);
    Linear top =
        DrapeShape.straightTop(line, beside.get(0).bay().turns(from, to))
            .plus(plan.kit().item(Items.MEMBRANE).thickness());
    double perStation = Math.hypot(1, top.slope());
    double length = (to - from) * perStation;
    double longest = stock.stockLengths().get(stock.stockLengths().size() - 1);
    int count = (int) Math.ceil(length / longest - 1e-9);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double a = from + (to - from) * i / count;
      double b = from + (to - from) * (i + 1) / count;
      double width = Math.max(right.at(a) - left.at(a), right.at(b) - left.at(b));
      parts.add(
          names.atLine(
              line.id(),
              PartKind.CAP_STRIP,
              i + 1,
              PartNames.Shape.of(
                      Items.CAP_STRIP,
                      length / count,
                      width,
                      List.of(
                          Sheet.prism(
                              plan.frame(),
                              corners(left, right, top, new Interval(a, b)),
                              Vec3.Z.times(stock.thickness()))))
                  .derived(derivations(line, to - from, perStation, width, count)),
              "covers the membranes' edges on the joist, and drips into the troughs beside it"));
    }
    parts.add(screws(line, stations(length / count), count));
    return parts;
  }

  private int stations(double length) {
    return GutterBuilder.stations(
            length, plan.kit().get(HANGER_END), plan.kit().get(CAP_FASTENER_SPACING))
        .size();
  }

  private static List<Vec3> corners(Linear left, Linear right, Linear top, Interval stretch) {
    double a = stretch.from();
    double b = stretch.to();
    return List.of(
        new Vec3(left.at(a), a, top.at(a)),
        new Vec3(right.at(a), a, top.at(a)),
        new Vec3(right.at(b), b, top.at(b)),
        new Vec3(left.at(b), b, top.at(b)));
  }

  private List<Derivation> derivations(
      JoistLine line, double stretch, double perStation, double width, int count) {
    Kit kit = plan.kit();
    Measured joists = new Measured(line.plies().stream().map(Member::element).toList());
    Reckoning length =
        new Reckoning(kit)
            .from(
                Words.of("from what bounds the high end to %s", plan.lowEnd().words()),
                stretch,
                joists);
    if (perStation > 1) {
      length.times("along a joist top that is out of level", perStation, joists);
    }
    if (count > 1) {
      length.over(Words.of("equal pieces"), count, Reckoning.OWN);
    }
    double own = line.right().at(line.stretch().from()) - line.left().at(line.stretch().from());
    Reckoning wide =
        new Reckoning(kit)
            .from(Words.of("width of the joist line"), own, joists)
            .plus("over the troughs at its sides", width - own, length.origin(CAP_OVERHANG));
    return List.of(length.gives(Dimension.LENGTH), wide.gives(Dimension.WIDTH));
  }

  private Part screws(JoistLine line, int onOne, int pieces) {
    Kit kit = plan.kit();
    Reckoning reckoning = new Reckoning(kit);
    Words each =
        Words.of(
            "on one strip: %s from each end, then at most %s apart",
            Quantity.length(kit.get(HANGER_END)), Quantity.length(kit.get(CAP_FASTENER_SPACING)));
    reckoning.step(Op.IS, each, onOne, Kind.COUNT, reckoning.origin(CAP_FASTENER_SPACING));
    if (pieces > 1) {
      reckoning.step(Op.TIMES, Words.of("strips"), pieces, Kind.COUNT, Reckoning.OWN);
    }
    return names.atLine(
        line.id(),
        PartKind.FASTENER,
        1,
        PartNames.Shape.counted(Items.SCREW, onOne * pieces)
            .derived(
                List.of(
                    reckoning.gives(Dimension.COUNT),
                    new Screws(kit, names).embedment(Items.CAP_STRIP))),
        "through the strip and the membranes' edges into the joist's top");
  }
}
