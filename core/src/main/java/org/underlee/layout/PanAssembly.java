package org.underlee.layout;

import static org.underlee.kit.DrainValue.HANGER_END;
import static org.underlee.kit.PanValue.COLLAR_CLEARANCE;
import static org.underlee.kit.PanValue.COLLAR_EDGE;
import static org.underlee.kit.PanValue.PAN_DRIP;
import static org.underlee.kit.PanValue.PAN_NARROWEST;
import static org.underlee.kit.PanValue.PAN_SIDE_GAP;
import static org.underlee.kit.PanValue.PAN_WIDEST;
import static org.underlee.kit.PanValue.RAIL_FASTENER_SPACING;
import static org.underlee.kit.PanValue.RAIL_LEDGE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.underlee.bay.Crossing;
import org.underlee.bay.FieldBays;
import org.underlee.bay.Way;
import org.underlee.finding.Finding;
import org.underlee.finding.Place;
import org.underlee.finding.StopSign;
import org.underlee.framing.JoistLine;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.Op;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** Pans on side rails in each bay, head rails, and strips below doubled joists. */
record PanAssembly(FieldBays bays, Kit kit) implements Assembly {
  /** Ordinal of the screws: those of the gutter's hangers and of the straps come first. */
  private static final int RIDGE_CAP_SCREWS = 3;

  @Override
  public Optional<Finding> unfit(BayRun run) {
    Optional<Finding> unfit = new BayFit(bays, kit).unfit(run, PAN_NARROWEST, PAN_WIDEST);
    OpenBay open = new OpenBay(bays.field().id(), kit);
    return unfit.isPresent()
        ? unfit
        : run.bay().crossings().stream()
            .filter(c -> cannotPass(run, c))
            .findFirst()
            .map(c -> open.pipeAtEdge(run.bay(), c));
  }

  /** A hole in the pan must leave sheet all round, and at the sides clear the rails' ledges. */
  private boolean cannotPass(BayRun run, Crossing c) {
    if (c.way() != Way.THROUGH || c.stretch().from() > run.railEnd()) {
      return false;
    }
    double sheet = kit.get(COLLAR_CLEARANCE) + kit.get(COLLAR_EDGE);
    double half = c.acrossStretch().length() / 2 + kit.get(COLLAR_CLEARANCE);
    double edge = Math.max(kit.get(RAIL_LEDGE), kit.get(PAN_SIDE_GAP) + kit.get(COLLAR_EDGE));
    double v = c.stretch().middle();
    double u = c.acrossStretch().middle();
    return u - run.bay().leftFace().at(v) - half < edge
        || run.bay().rightFace().at(v) - u - half < edge
        || run.alongTo(c.stretch().from()) < sheet
        || run.alongTo(c.stretch().to()) > run.panLength() - sheet;
  }

  /** A ply strip hangs below the joists, so it cannot pass a beam that the joists lie on. */
  @Override
  public boolean canEndAt(LowEnd end) {
    return end.passed().isEmpty()
        || bays.field().lines().stream().allMatch(l -> l.pliesAbreast() == 1);
  }

  @Override
  public List<Part> parts(FieldPlan plan, PartNames names) {
    RailBuilder rails = new RailBuilder(plan, names, SeatRanges.with(kit));
    HeadRailBuilder heads = new HeadRailBuilder(plan, names);
    PanBuilder pans = new PanBuilder(plan, names);
    // no bay's parts depend on another's; they stay in the bays' order
    List<Part> parts =
        plan.served().parallelStream()
            .flatMap(run -> inBay(run, rails, heads, pans).stream())
            .collect(Collectors.toCollection(ArrayList::new));
    parts.addAll(new StripBuilder(plan, names).parts());
    new Screws(kit, names)
        .through(parts, PartKind.RIDGE_CAP, kit.flashing().id(), RIDGE_CAP_SCREWS)
        .ifPresent(parts::add);
    return parts;
  }

  private List<Part> inBay(BayRun run, RailBuilder rails, HeadRailBuilder heads, PanBuilder pans) {
    List<Part> own = rails.parts(run);
    List<Part> parts = new ArrayList<>(own);
    if (run.bay().high().isPresent()) {
      parts.add(heads.part(run));
    } else if (heads.plan().hasWhatLiesOverHighLine() && heads.plan().meetsAtHighLine(run)) {
      parts.add(new PanRidgeCap(heads.plan(), heads.names()).part(run));
    }
    parts.addAll(pans.parts(run));
    parts.add(railScrews(run, own, rails.names()));
    return parts;
  }

  private Part railScrews(BayRun run, List<Part> rails, PartNames names) {
    Reckoning reckoning = new Reckoning(kit);
    Words each =
        Words.of(
            "on one rail: %s from each end, then at most %s apart",
            Quantity.length(kit.get(HANGER_END)), Quantity.length(kit.get(RAIL_FASTENER_SPACING)));
    int count = 0;
    for (Part rail : rails) {
      int own =
          GutterBuilder.stations(rail.length(), kit.get(HANGER_END), kit.get(RAIL_FASTENER_SPACING))
              .size();
      count += own;
      reckoning.step(Op.PLUS, each, own, Kind.COUNT, reckoning.origin(RAIL_FASTENER_SPACING));
    }
    return names.inBay(
        run.bay().id(),
        PartKind.FASTENER,
        1,
        PartNames.Shape.counted(Items.SCREW, count)
            .derived(
                List.of(
                    reckoning.gives(Dimension.COUNT),
                    new Screws(kit, names).embedment(Items.SIDE_RAIL))),
        "through the rail legs into the joists");
  }

  /** The lowest drip of pans and strips, and the rails' ends. */
  @Override
  public double lowest(FieldPlan plan) {
    StripBuilder strips =
        new StripBuilder(plan, new PartNames(bays.field().id(), 0, StopSign.here()));
    double ledge = kit.item(Items.SIDE_RAIL).thickness();
    double end = plan.served().stream().mapToDouble(BayRun::panEnd).max().orElseThrow();
    DoubleStream drips =
        plan.served().stream().mapToDouble(r -> plan.seat(r.panEnd()) - kit.get(PAN_DRIP));
    DoubleStream rails = plan.served().stream().mapToDouble(r -> plan.seat(r.railEnd()) - ledge);
    DoubleStream stripDrips =
        bays.field().lines().stream()
            .filter(l -> l.pliesAbreast() > 1 && isServed(plan, l))
            .mapToDouble(l -> strips.floor(l, end) - kit.get(PAN_DRIP));
    return Stream.of(drips, rails, stripDrips).flatMapToDouble(s -> s).min().orElseThrow();
  }

  private static boolean isServed(FieldPlan plan, JoistLine line) {
    return plan.served().stream()
        .anyMatch(r -> r.bay().left().equals(line) || r.bay().right().equals(line));
  }

  @Override
  public List<Finding> notes(FieldPlan plan) {
    List<Finding> notes = new ArrayList<>();
    if (plan.served().stream()
        .anyMatch(r -> r.bay().high().isEmpty() && !plan.meetsAtHighLine(r))) {
      Place place = bays.field().lines().get(0).plies().get(0).element().place();
      notes.add(
          Finding.of(
              LayoutRules.NO_HEAD_RAIL,
              place,
              bays.field().id()
                  + ": nothing bounds the high end of some bays; they get no head rail there.",
              "Flash the pans' heads against what stands there."));
    }
    plan.served().forEach(r -> notes.addAll(PackedRails.of(bays.field().id(), r)));
    plan.served().forEach(r -> notes.addAll(LegsLeftWhole.of(plan, r)));
    plan.served().forEach(r -> LongNotches.of(plan, r).ifPresent(notes::add));
    return notes;
  }
}
