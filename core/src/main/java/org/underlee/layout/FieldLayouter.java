package org.underlee.layout;

import static org.underlee.kit.DrainValue.GUTTER_DEPTH;
import static org.underlee.kit.DrainValue.LEAST_HEADROOM;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Place;
import org.underlee.finding.StopSign;
import org.underlee.framing.Field;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Lays out one field: plans it, then builds every part in building order. */
final class FieldLayouter {
  /** A strip of open deck narrower than this is the gutter's own width. */
  private static final double WORTH_SAYING = 0.05;

  private final FieldBays bays;
  private final OnDeck onDeck;
  private final Kit kit;
  private final GutterCapacity capacity;
  private final Wishes wishes;
  private final Assembly assembly;
  private final PartNames names;
  private final StopSign stop;
  private final List<Finding> findings;

  private FieldLayouter(
      FieldBays bays,
      OnDeck onDeck,
      Kit kit,
      GutterCapacity capacity,
      Wishes wishes,
      int number,
      StopSign stop,
      List<Finding> findings) {
    this.capacity = capacity;
    this.bays = bays;
    this.onDeck = onDeck;
    this.wishes = wishes;
    this.kit = kit;
    this.assembly = Assembly.of(bays, kit);
    this.names = new PartNames(bays.field().id(), number, stop);
    this.findings = findings;
    this.stop = stop;
  }

  /**
   * The assembly for one field.
   *
   * @param onDeck all fields of its deck
   * @param capacity what a gutter carries of the rain
   * @param number of the field in the model, from 1
   * @param stop tells when it is no longer wanted
   * @param findings where what is noticed is added
   * @return empty when no bay of the field can be served; a finding says why
   */
  static Optional<FieldLayout> layOut(
      String deck,
      FieldBays bays,
      OnDeck onDeck,
      Kit kit,
      GutterCapacity capacity,
      Wishes wishes,
      int number,
      StopSign stop,
      List<Finding> findings) {
    return new FieldLayouter(bays, onDeck, kit, capacity, wishes, number, stop, findings)
        .layOut(deck);
  }

  private Optional<FieldLayout> layOut(String deck) {
    FieldPlan plan = FieldPlanner.plan(bays, onDeck, kit, wishes);
    stop.obey();
    findings.addAll(plan.findings());
    noteOtherLowEnd(plan);
    if (plan.served().isEmpty()) {
      findings.add(nothingServed());
      return Optional.empty();
    }
    FieldLayout layout = built(deck, plan);
    noteBeyond(plan);
    noteZone(plan);
    noteFixings(plan);
    findings.addAll(assembly.notes(plan));
    return Optional.of(layout);
  }

  private FieldLayout built(String deck, FieldPlan plan) {
    GutterLine line =
        GutterLine.of(
            plan, assembly.lowest(plan), capacity, wishes.outlets().of(bays.field().id()));
    stop.obey();
    double ground = Ground.below(bays.field());
    List<Part> gutters = new GutterBuilder(plan, names, line).parts();
    DownspoutBuilder spouts = new DownspoutBuilder(plan, names, line, ground).build(gutters);
    List<Part> parts = new ArrayList<>(assembly.parts(plan, names));
    parts.addAll(gutters);
    parts.addAll(spouts.parts());
    Screws screws = new Screws(kit, names);
    screws.through(parts, PartKind.HANGER, Items.HANGER, 1).ifPresent(parts::add);
    screws.through(parts, PartKind.STRAP, Items.STRAP, 2).ifPresent(parts::add);
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
        plan.served().stream().map(r -> r.bay().id()).toList(),
        parts,
        spouts.links(),
        Optional.of(line.places()));
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
      Place place = bays.field().lines().get(0).plies().get(0).element().place();
      findings.add(
          Finding.measured(
                  LayoutRules.BEYOND_BEAM,
                  place,
                  Words.of(
                      "the %ss end at %s; the last %s of the bays, out to the rim, stay open and"
                          + " drip.",
                      kit.family().piece(), plan.lowEnd().words(), Quantity.length(beyond)),
                  Measure.lengths(beyond, WORTH_SAYING),
                  "Keep what must stay dry on the house side of the beam.")
              .about(new Subject(bays.field().id(), "", place, Optional.empty())));
    }
  }

  private void noteZone(FieldPlan plan) {
    wishes
        .dryZone()
        .ifPresent(
            zone -> {
              new ZoneEdges(plan, onDeck, zone, wishes).finding().ifPresent(findings::add);
              new ZoneBeyond(plan, zone).finding().ifPresent(findings::add);
            });
  }

  private void noteFixings(FieldPlan plan) {
    Place place = bays.field().lines().get(0).plies().get(0).element().place();
    if (plan.lowEnd().members().isEmpty()) {
      findings.add(
          Finding.of(
              LayoutRules.NOTHING_TO_HANG_ON,
              place,
              bays.field().id()
                  + ": no beam or rim stands at the low end; the hangers drawn there have nothing"
                  + " to be fixed to.",
              "Have a rim added by the designer, or hang the gutter from the joists' sides."));
    }
  }

  private void noteOtherLowEnd(FieldPlan plan) {
    wishes
        .lowEnd()
        .filter(id -> !id.equals(plan.lowEnd().id()))
        .ifPresent(
            id ->
                findings.add(
                    Finding.of(
                        LayoutRules.NO_SUCH_LOW_END,
                        bays.field().lines().get(0).plies().get(0).element().place(),
                        Words.of(
                            "%s: kit %s cannot end at %s here; it ends at %s (%s).",
                            bays.field().id(),
                            kit.id(),
                            id,
                            plan.lowEnd().words(),
                            plan.lowEnd().id()),
                        "Run compare to see the lines that the field has.")));
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
