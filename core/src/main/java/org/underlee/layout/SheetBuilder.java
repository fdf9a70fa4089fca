package org.underlee.layout;

import static org.underlee.kit.DrainValue.RUN_PER_FALL;
import static org.underlee.kit.SheetValue.SHEET_COVER;
import static org.underlee.kit.SheetValue.SHEET_CREST;
import static org.underlee.kit.SheetValue.SHEET_END_GAP;
import static org.underlee.kit.SheetValue.SHEET_LAP;
import static org.underlee.kit.SheetValue.SHEET_LONGEST;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.Op;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/**
 * The sheets below a group of bays, side by side from low u to high u, each in as many pieces along
 * the fall as its length needs: the uphill piece over the downhill one. The last is cut to width.
 */
record SheetBuilder(FieldPlan plan, PartNames names) {

  /**
   * @param first ordinal of the first sheet
   */
  List<Part> parts(SheetGroup group, int first) {
    List<Interval> rows = group.rows();
    List<Part> parts = new ArrayList<>();
    for (Interval column : group.columns()) {
      for (int row = 0; row < rows.size(); row++) {
        parts.add(part(group, column.from(), column.length(), row, first + parts.size()));
      }
    }
    return parts;
  }

  private Part part(SheetGroup group, double x, double width, int row, int ordinal) {
    Kit kit = plan.kit();
    List<Interval> rows = group.rows();
    boolean last = row == rows.size() - 1;
    double length = rows.get(row).length() + (last ? 0 : kit.get(SHEET_LAP));
    Outline section = group.profile().outline(width, x > 0);
    boolean whole = width > kit.get(SHEET_COVER) + kit.get(SHEET_CREST) - SeatRange.SAME;
    PartNames.Shape shape =
        PartNames.Shape.of(
                Items.PROFILED_SHEET, length, width, List.of(body(group, x, row, section, length)))
            .falling(plan.fall())
            .cutFrom(section)
            .derived(derivations(group, x + width, width, row));
    return names.inField(
        PartKind.SHEET,
        ordinal,
        whole ? shape : shape.foldedFrom(width),
        whole
            ? "catches the water below the joists, screwed to the battens from below"
            : "as the sheet beside it, cut to width along a rib or a trough");
  }

  private Extrusion body(SheetGroup group, double x, int row, Outline section, double length) {
    double start = group.along().from();
    Transform slope = plan.sloped(group.across().from() + x, start, group.underside(start));
    int below = group.rows().size() - 1 - row;
    Transform upright =
        new Transform(
            slope.apply(new Vec3(0, group.rows().get(row).from(), group.profile().lift(below))),
            slope.x(),
            slope.z(),
            slope.y().negated());
    return new Extrusion(upright, section, new Vec3(0, 0, -length));
  }

  private List<Derivation> derivations(SheetGroup group, double end, double width, int row) {
    Kit kit = plan.kit();
    BayRun shortest =
        group.runs().stream()
            .min(java.util.Comparator.comparingDouble(BayRun::panEnd))
            .orElseThrow();
    RunReckoning reckoning = new RunReckoning(plan, shortest);
    List<Interval> rows = group.rows();
    Reckoning length = reckoning.clearRun().minus(SHEET_END_GAP);
    double off = group.length() - length.value();
    if (Math.abs(off) > SeatRange.SAME) {
      length.plus(
          "at the head, as far as what bounds the high end lets it", off, reckoning.joists());
    }
    if (rows.size() > 1) {
      length.over(
          Words.of(
              "equal pieces, none longer with its lap than %s",
              Quantity.length(kit.get(SHEET_LONGEST))),
          rows.size(),
          length.origin(SHEET_LONGEST));
    }
    if (row < rows.size() - 1) {
      length.plus(SHEET_LAP);
    }
    Reckoning wide = new Reckoning(kit).from(SHEET_COVER).plus(SHEET_CREST);
    if (width < wide.value()) {
      wide.step(
          Op.AT_MOST,
          Words.of(
              end < group.across().length() - SeatRange.SAME
                  ? "half of what is left, in whole pitches, so that the last sheet is no sliver"
                  : "what is left up to the outer face of the last joist"),
          width,
          Kind.LENGTH,
          reckoning.joists());
    }
    double cosine = 1 / Math.hypot(1, plan.fall());
    double start = group.along().from();
    double from = start + rows.get(row).from() * cosine;
    List<Derivation> all =
        new ArrayList<>(
            List.of(
                length.gives(Dimension.LENGTH),
                wide.gives(Dimension.WIDTH),
                Reckoning.fall(kit, RUN_PER_FALL)));
    if (width < kit.get(SHEET_COVER) + kit.get(SHEET_CREST) - SeatRange.SAME) {
      all.add(new Reckoning(wide).gives(Dimension.FLAT_WIDTH));
    }
    all.addAll(reckoning.seats(from, from + length.value() * cosine));
    return all;
  }
}
