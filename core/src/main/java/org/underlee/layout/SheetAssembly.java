package org.underlee.layout;

import static org.underlee.kit.SheetValue.BATTEN_SPAN;
import static org.underlee.kit.SheetValue.SHEET_SCREW_SPACING;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.bay.FieldBays;
import org.underlee.bay.Way;
import org.underlee.finding.Finding;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.Op;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** Ribbed sheets on battens below all joists: nothing is hung in the bays. */
record SheetAssembly(FieldBays bays, Kit kit) implements Assembly {
  /** Ordinals of the screws: those of the gutter's hangers and of the straps come first. */
  private static final int HANGER_SCREWS = 3;

  private static final int SHEET_SCREWS = 4;

  @Override
  public Optional<Finding> unfit(BayRun run) {
    OpenBay open = new OpenBay(bays.field().id(), kit);
    if (run.run() < Bay.SHORTEST_RUN) {
      return Optional.of(open.runTooShort(run));
    }
    return run.bay().crossings().stream()
        .filter(c -> goesThrough(run, c))
        .findFirst()
        .map(c -> open.pipeThrough(run.bay(), c));
  }

  private static boolean goesThrough(BayRun run, Crossing c) {
    return c.way() == Way.THROUGH
        && c.stretch().from() < run.panEnd()
        && c.heights().from() < run.bay().joistBottom(c.stretch().middle());
  }

  /** The posts below a beam would stand in the sheets. */
  @Override
  public boolean canEndAt(LowEnd end) {
    return end.passed().isEmpty();
  }

  @Override
  public List<Part> parts(FieldPlan plan, PartNames names) {
    BattenBuilder battens = new BattenBuilder(plan, names);
    SheetBuilder sheets = new SheetBuilder(plan, names);
    List<Part> covers = new ArrayList<>();
    List<Part> caps = new ArrayList<>();
    int screws = 0;
    for (SheetGroup group : SheetGroup.of(plan)) {
      battens.add(group);
      covers.addAll(sheets.parts(group, covers.size() + 1));
      if (plan.hasWhatLiesOverHighLine()) {
        caps.addAll(new SheetRidgeCap(plan, names).parts(group, caps.size() + 1));
      }
    }
    List<Part> parts = new ArrayList<>(battens.parts());
    for (Part part : parts) {
      screws += part.kind() == PartKind.BATTEN ? screws(part.length()) : 0;
    }
    parts.addAll(covers);
    parts.addAll(caps);
    new Screws(kit, names)
        .through(parts, PartKind.BATTEN_HANGER, Items.BATTEN_HANGER, HANGER_SCREWS)
        .ifPresent(parts::add);
    parts.add(sheetScrews(names, screws));
    return parts;
  }

  private int screws(double batten) {
    return GutterBuilder.gaps(batten, kit.get(SHEET_SCREW_SPACING)) + 1;
  }

  private Part sheetScrews(PartNames names, int count) {
    Reckoning reckoning = new Reckoning(kit);
    reckoning.step(
        Op.IS,
        Words.of("along all battens, at most that far apart"),
        count,
        Kind.COUNT,
        reckoning.origin(SHEET_SCREW_SPACING));
    return names.inField(
        PartKind.FASTENER,
        SHEET_SCREWS,
        PartNames.Shape.counted(Items.SCREW, count)
            .derived(
                List.of(
                    reckoning.gives(Dimension.COUNT),
                    new Screws(kit, names).embedment(Items.PROFILED_SHEET))),
        "through the sheets' ribs up into the battens, sealed below the heads");
  }

  @Override
  public double lowest(FieldPlan plan) {
    return SheetGroup.of(plan).stream()
        .mapToDouble(g -> g.underside(g.along().to()))
        .min()
        .orElseThrow();
  }

  @Override
  public List<Finding> notes(FieldPlan plan) {
    return SheetGroup.of(plan).stream()
        .flatMap(g -> new BattenPlaces(g).unhung().stream())
        .map(this::notHung)
        .toList();
  }

  private Finding notHung(double v) {
    return Finding.of(
        LayoutRules.BATTEN_NOT_HUNG,
        bays.field().lines().get(0).plies().get(0).element().place(),
        Words.of(
            "%s: the batten at %s from the high end cannot be hung from joists at most %s apart:"
                + " something stands beside them.",
            bays.field().id(), Quantity.length(v), Quantity.length(kit.get(BATTEN_SPAN))),
        "Move what stands beside the joists, or leave its bays open.");
  }
}
