package org.underlee.layout;

import static org.underlee.kit.DrainValue.GUTTER_DEPTH;
import static org.underlee.kit.DrainValue.HANGER_END;
import static org.underlee.kit.DrainValue.LEAST_HEADROOM;
import static org.underlee.kit.DrainValue.SCREW_LENGTH;
import static org.underlee.kit.PanValue.RAIL_FASTENER_SPACING;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Place;
import org.underlee.framing.Field;
import org.underlee.framing.Member;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Op;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** Lays out one field: plans it, then builds every part in building order. */
final class FieldLayouter {
  /** Stands in for the ground where neither a post nor a storey tells it. */
  private static final double USUAL_STOREY = 2.4;

  /** A storey's floor counts as the ground only when a person fits between it and the joists. */
  private static final double LEAST_STOREY = 1.0;

  /** A strip of open deck narrower than this is the gutter's own width. */
  private static final double WORTH_SAYING = 0.05;

  /** In each hanger and strap. */
  private static final int SCREWS_EACH = 2;

  private final FieldBays bays;
  private final Kit kit;
  private final PartNames names;
  private final List<Finding> findings;

  private FieldLayouter(FieldBays bays, Kit kit, int number, List<Finding> findings) {
    this.bays = bays;
    this.kit = kit;
    this.names = new PartNames(bays.field().id(), number);
    this.findings = findings;
  }

  /**
   * The assembly for one field.
   *
   * @param number of the field in the model, from 1
   * @param findings where what is noticed is added
   * @return empty when no bay of the field can be served; a finding says why
   */
  static Optional<FieldLayout> layOut(
      String deck, FieldBays bays, Kit kit, int number, List<Finding> findings) {
    return new FieldLayouter(bays, kit, number, findings).layOut(deck);
  }

  private Optional<FieldLayout> layOut(String deck) {
    FieldPlan plan = FieldPlanner.plan(bays, kit);
    findings.addAll(plan.findings());
    if (plan.served().isEmpty()) {
      findings.add(nothingServed());
      return Optional.empty();
    }
    FieldLayout layout = built(deck, plan);
    noteBeyond(plan);
    noteFixings(plan);
    plan.served().forEach(r -> findings.addAll(PackedRails.of(bays.field().id(), r)));
    return Optional.of(layout);
  }

  private FieldLayout built(String deck, FieldPlan plan) {
    StripBuilder strips = new StripBuilder(plan, names);
    GutterLine line = GutterLine.of(plan, strips);
    double ground = ground();
    List<Part> gutters = new GutterBuilder(plan, names, line).parts();
    DownspoutBuilder spouts = new DownspoutBuilder(plan, names, line, ground).build(gutters);
    List<Part> parts = new ArrayList<>(inBays(plan));
    parts.addAll(strips.parts());
    parts.addAll(gutters);
    parts.addAll(spouts.parts());
    screwsThrough(parts, PartKind.HANGER, Items.HANGER, 1).ifPresent(parts::add);
    screwsThrough(parts, PartKind.STRAP, Items.STRAP, 2).ifPresent(parts::add);
    note(line, ground);
    Field field = bays.field();
    double run = plan.served().stream().mapToDouble(BayRun::run).max().orElseThrow();
    return new FieldLayout(
        deck,
        field.id(),
        field.storey(),
        plan.seatHigh(),
        plan.fall(),
        run,
        plan.lowEnd().words(),
        plan.binding(),
        parts,
        spouts.links());
  }

  private List<Part> inBays(FieldPlan plan) {
    RailBuilder rails = new RailBuilder(plan, names, new SeatRanges(kit));
    HeadRailBuilder heads = new HeadRailBuilder(plan, names);
    PanBuilder pans = new PanBuilder(plan, names);
    List<Part> parts = new ArrayList<>();
    for (BayRun run : plan.served()) {
      List<Part> own = rails.parts(run);
      parts.addAll(own);
      if (run.bay().high().isPresent()) {
        parts.add(heads.part(run));
      }
      parts.addAll(pans.parts(run));
      parts.add(railScrews(run, own));
    }
    return parts;
  }

  private Part railScrews(BayRun run, List<Part> rails) {
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
            .derived(List.of(reckoning.gives(Dimension.COUNT), embedment(Items.SIDE_RAIL))),
        "through the rail legs into the joists");
  }

  /** Two screws through each of the field's hangers or straps. */
  private Optional<Part> screwsThrough(List<Part> parts, PartKind kind, String item, int ordinal) {
    int held = (int) parts.stream().filter(p -> p.kind() == kind).count();
    String one = kind.word();
    Derivation count =
        new Reckoning(kit)
            .step(Op.IS, Words.of("screws in one %s", one), SCREWS_EACH, Kind.COUNT, Reckoning.OWN)
            .step(Op.TIMES, Words.of("%ss of the field", one), held, Kind.COUNT, Reckoning.OWN)
            .gives(Dimension.COUNT);
    return held == 0
        ? Optional.empty()
        : Optional.of(
            names.inField(
                PartKind.FASTENER,
                ordinal,
                PartNames.Shape.counted(Items.SCREW, SCREWS_EACH * held)
                    .derived(List.of(count, embedment(item))),
                "through each " + one + " into the wood behind it"));
  }

  /** How deep a screw reaches into the wood behind a piece of stock. */
  private Derivation embedment(String item) {
    return new Reckoning(kit)
        .from(SCREW_LENGTH)
        .minus(
            "the sheet that it goes through",
            kit.item(item).thickness(),
            new KitValue(item, kit.item(item).source()))
        .gives(Dimension.EMBEDMENT);
  }

  /** Height of the ground in the field's frame: the posts' feet, else the storey's floor. */
  private double ground() {
    Field field = bays.field();
    double origin = field.frame().origin().z();
    double[] feet =
        field.posts().stream().map(Member::box).mapToDouble(b -> b.bottom()).sorted().toArray();
    if (feet.length > 0) {
      return feet[feet.length / 2] - origin;
    }
    return field
        .storey()
        .map(s -> s.elevation() - origin)
        .filter(w -> w < -LEAST_STOREY)
        .orElse(-USUAL_STOREY);
  }

  private void note(GutterLine line, double ground) {
    Place place = bays.field().lines().get(0).plies().get(0).element().place();
    double lowest =
        line.outlets().stream().mapToDouble(o -> line.rimAt(o.u(), o)).min().orElseThrow()
            - kit.get(GUTTER_DEPTH);
    double headroom = lowest - ground;
    if (headroom < kit.get(LEAST_HEADROOM)) {
      findings.add(
          Finding.measured(
              LayoutRules.HEADROOM,
              place,
              Words.of(
                  "%s: %s are left below the gutter; the ground is taken at the posts' feet.",
                  bays.field().id(), Quantity.length(headroom)),
              Measure.lengths(headroom, kit.get(LEAST_HEADROOM)),
              "Keep walking routes clear of the gutter, or use a shallower one."));
    }
    if (line.outlets().stream().anyMatch(o -> o.post().isEmpty())) {
      findings.add(
          Finding.of(
              LayoutRules.NO_POST,
              place,
              bays.field().id() + ": no post stands by the gutter to fix a downspout to.",
              "Fix the downspout to a wall, or lead the water off with a chain."));
    }
  }

  /** Rain on the boards past the low-end line is not caught: said, never left to be found out. */
  private void noteBeyond(FieldPlan plan) {
    double beyond =
        plan.served().stream()
            .mapToDouble(r -> r.bay().stretch().to() - r.lowFace())
            .max()
            .orElse(0);
    if (beyond > WORTH_SAYING) {
      findings.add(
          Finding.measured(
              LayoutRules.BEYOND_BEAM,
              bays.field().lines().get(0).plies().get(0).element().place(),
              Words.of(
                  "%s: the pans end at %s; the last %s of the bays, out to the rim, stay open and"
                      + " drip.",
                  bays.field().id(), plan.lowEnd().words(), Quantity.length(beyond)),
              Measure.lengths(beyond, WORTH_SAYING),
              "Keep what must stay dry on the house side of the beam."));
    }
  }

  private void noteFixings(FieldPlan plan) {
    Place place = bays.field().lines().get(0).plies().get(0).element().place();
    if (plan.served().stream().anyMatch(r -> r.bay().high().isEmpty())) {
      findings.add(
          Finding.of(
              LayoutRules.NO_HEAD_RAIL,
              place,
              bays.field().id()
                  + ": nothing bounds the high end of some bays; they get no head rail there.",
              "Flash the pans' heads against what stands there."));
    }
    if (plan.lowEnd().members().isEmpty()) {
      findings.add(
          Finding.of(
              LayoutRules.NOTHING_TO_HANG_ON,
              place,
              bays.field().id()
                  + ": no beam or rim stands at the low end; the hangers drawn there have nothing to"
                  + " be fixed to.",
              "Have a rim added by the designer, or hang the gutter from the joists' sides."));
    }
  }

  private Finding nothingServed() {
    return Finding.of(
        LayoutRules.FIELD_EMPTY,
        bays.field().lines().get(0).plies().get(0).element().place(),
        bays.field().id()
            + ": no bay can be served with kit "
            + kit.id()
            + "; nothing is laid out.",
        "See the findings for each bay, or choose another kit.");
  }
}
