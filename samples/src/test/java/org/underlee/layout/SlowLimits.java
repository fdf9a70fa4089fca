package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.DrapeValue.MEMBRANE_WIDTH;
import static org.underlee.kit.DrapeValue.TROUGH_ABOVE_BOTTOM;
import static org.underlee.kit.DrapeValue.TROUGH_LEAST_DEPTH;
import static org.underlee.kit.DrapeValue.TROUGH_NARROWEST;
import static org.underlee.kit.DrapeValue.TROUGH_SAG;
import static org.underlee.kit.DrapeValue.TROUGH_WIDEST;
import static org.underlee.kit.PanValue.HEAD_RAIL_LEAST_LEG;
import static org.underlee.kit.PanValue.JOIST_EDGE_DISTANCE;
import static org.underlee.kit.PanValue.LEG_ROOM;
import static org.underlee.kit.PanValue.NOTCH_CLEARANCE;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.PAN_WIDEST;
import static org.underlee.kit.PanValue.RAIL_FASTENER_MARGIN;
import static org.underlee.kit.PanValue.RAIL_FASTENER_SPACING;
import static org.underlee.kit.PanValue.RAIL_LEG;
import static org.underlee.kit.SheetValue.BATTEN_DEPTH;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_GRIP;
import static org.underlee.kit.SheetValue.BATTEN_HANGER_LONGEST;
import static org.underlee.kit.SheetValue.SHEET_DEPTH;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.bay.Crossing;
import org.underlee.bay.Way;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;

/** Whether one seat serves one bay, each limit of a family looked at anew where it binds. */
interface SlowLimits {
  double SAME = 1e-5;

  static SlowLimits of(Kit kit) {
    return switch (kit.family()) {
      case PANS -> new Pans(kit);
      case DRAPE -> new Drape(kit);
      case SHEET -> new Sheets(kit);
    };
  }

  Kit kit();

  /** Whether the bay can be served at some seat, as far as its sizes and its pipes tell. */
  boolean fits(BayRun run);

  boolean holds(BayRun run, LowEnd end, double seat);

  default boolean canEndAt(LowEnd end) {
    return true;
  }

  default int cuts(BayRun run, double seat) {
    return 0;
  }

  default double seat(double high, double v) {
    return high - kit().fall() * v;
  }

  default double get(org.underlee.kit.KitNumber value) {
    return kit().get(value);
  }

  /** Both ends of what is hung in a bay: every limit of the framing is linear between them. */
  static Stream<Double> ends(BayRun run) {
    return Stream.of(run.bay().stretch().from(), run.panEnd());
  }

  /** Across the field, a beam and blocking have no ends. */
  record Space(Interval along, Interval across, Interval heights) {
    private static final Interval ALL =
        new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

    static Space of(Support beam) {
      return new Space(beam.shape().along(), ALL, beam.shape().heights());
    }

    static List<Space> in(BayRun run) {
      List<Space> spaces = new ArrayList<>();
      for (Block b : run.bay().blocking()) {
        spaces.add(new Space(b.stretch(), ALL, b.heights()));
      }
      for (Crossing c : run.bay().crossings()) {
        if (c.way() != Way.THROUGH) {
          spaces.add(new Space(c.stretch(), c.acrossStretch(), c.heights()));
        }
      }
      spaces.removeIf(s -> s.along.from() >= run.railEnd());
      return spaces;
    }
  }

  record Pans(Kit kit) implements SlowLimits {
    /** Looked at along what stands in a bay. */
    private static final int PLACES = 50;

    @Override
    public boolean fits(BayRun run) {
      return run.bay().clearWidthHigh() <= get(PAN_WIDEST) + SAME && pipesLeaveSheet(run);
    }

    @Override
    public boolean holds(BayRun run, LowEnd end, double seat) {
      Bay bay = run.bay();
      double from = bay.stretch().from();
      double top = bay.joistBottom(from) + bay.depth() + SAME;
      double pan = get(PAN_HEM) + get(CLEARANCE_ABOVE);
      double highestScrew = seat(seat, run.railEnd()) + get(RAIL_LEG) - get(RAIL_FASTENER_MARGIN);
      boolean framing =
          seat(seat, from) + get(RAIL_LEG) <= top
              && seat(seat, from) + pan + get(HEAD_RAIL_LEAST_LEG) <= top
              && highestScrew >= bay.joistBottom(run.railEnd()) + get(JOIST_EDGE_DISTANCE) - SAME;
      return framing
          && end.passed().stream().allMatch(b -> isOver(seat, Space.of(b)))
          && Space.in(run).stream().allMatch(s -> isUnder(run, seat, s) || isOver(seat, s));
    }

    @Override
    public int cuts(BayRun run, double seat) {
      int cuts = 0;
      for (Space over : Space.in(run)) {
        double legTop = seat(seat, over.along.from()) + get(RAIL_LEG);
        boolean meets = legTop + get(NOTCH_CLEARANCE) > over.heights.from() + SAME;
        cuts += isUnder(run, seat, over) && meets ? crowdedRails(run, over) : 0;
      }
      return cuts;
    }

    /** How many of the two rails have less than the room for a hand at some station. */
    private int crowdedRails(BayRun run, Space s) {
      boolean left = false;
      boolean right = false;
      for (int i = 0; i <= PLACES; i++) {
        double v = s.along.from() + i * s.along.length() / PLACES;
        left |= s.across.from() - run.bay().leftFace().at(v) < get(LEG_ROOM) - SAME;
        right |= run.bay().rightFace().at(v) - s.across.to() < get(LEG_ROOM) - SAME;
      }
      return (left ? 1 : 0) + (right ? 1 : 0);
    }

    private boolean isUnder(BayRun run, double seat, Space s) {
      double here = seat(seat, s.along.from());
      boolean pan = here + get(PAN_HEM) + get(CLEARANCE_ABOVE) <= s.heights.from() + SAME;
      double notch = s.along.length() + 2 * get(NOTCH_CLEARANCE);
      boolean mustHold = notch > get(RAIL_FASTENER_SPACING) + SAME && crowdedRails(run, s) > 0;
      double cutAt = s.heights.from() - get(NOTCH_CLEARANCE);
      return pan && (!mustHold || cutAt - here >= 2 * get(RAIL_FASTENER_MARGIN) - SAME);
    }

    private boolean isOver(double seat, Space s) {
      double rail = kit.item(Items.SIDE_RAIL).thickness() + get(CLEARANCE_ABOVE);
      return seat(seat, s.along.to()) - rail >= s.heights.to() - SAME;
    }

    /** 21 mm of sheet and gap round a hole, 31 mm to a joist for the ledge: the kit's numbers. */
    private static boolean pipesLeaveSheet(BayRun run) {
      return run.bay().crossings().stream()
          .filter(c -> c.way() == Way.THROUGH && c.stretch().from() <= run.railEnd())
          .allMatch(
              c ->
                  c.acrossStretch().from() - run.bay().leftFace().at(c.stretch().middle()) >= 0.031
                      && run.bay().rightFace().at(c.stretch().middle()) - c.acrossStretch().to()
                          >= 0.031
                      && run.alongTo(c.stretch().from()) >= 0.021
                      && run.alongTo(c.stretch().to()) <= run.panLength() - 0.021);
    }
  }

  record Drape(Kit kit) implements SlowLimits {
    @Override
    public boolean fits(BayRun run) {
      double width = run.bay().clearWidthHigh();
      return width <= get(TROUGH_WIDEST) + SAME
          && width >= get(TROUGH_NARROWEST) - SAME
          && run.bay().crossings().stream()
              .noneMatch(c -> c.way() == Way.THROUGH && c.stretch().from() < run.panEnd());
    }

    @Override
    public boolean holds(BayRun run, LowEnd end, double seat) {
      Bay bay = run.bay();
      DrapeShape shape = new DrapeShape(run, seat);
      double deepest = bay.joistTop(run.panEnd()) - seat(seat, run.panEnd());
      double unrolled = shape.edges() + shape.floor(run.panEnd()) + 2 * deepest;
      return ends(run)
              .allMatch(
                  v ->
                      bay.joistTop(v) - seat(seat, v) >= get(TROUGH_LEAST_DEPTH) - SAME
                          && seat(seat, v) - get(TROUGH_SAG) - get(TROUGH_ABOVE_BOTTOM)
                              >= bay.joistBottom(v) - SAME)
          && unrolled <= get(MEMBRANE_WIDTH) + 2 * SAME
          && Space.in(run).stream()
              .allMatch(
                  s ->
                      seat(seat, s.along.to()) - get(TROUGH_SAG) - get(CLEARANCE_ABOVE)
                          >= s.heights.to() - SAME);
    }
  }

  record Sheets(Kit kit) implements SlowLimits {
    /** The most rows of any run, each lap one sheet's thickness higher, twice at a side lap. */
    private static final int SHEETS_IN_A_LAP = 7;

    @Override
    public boolean canEndAt(LowEnd end) {
      return end.passed().isEmpty();
    }

    @Override
    public boolean fits(BayRun run) {
      return run.bay().crossings().stream()
          .noneMatch(
              c ->
                  c.way() == Way.THROUGH
                      && c.stretch().from() < run.panEnd()
                      && c.heights().from() < run.bay().joistBottom(c.stretch().middle()));
    }

    @Override
    public boolean holds(BayRun run, LowEnd end, double seat) {
      double thick = kit.item(Items.PROFILED_SHEET).thickness();
      double lowest = get(SHEET_DEPTH) + SHEETS_IN_A_LAP * thick + get(CLEARANCE_ABOVE);
      return ends(run)
              .allMatch(
                  v -> {
                    double batten = seat(seat, v) + get(BATTEN_DEPTH);
                    double below = run.bay().joistBottom(v) - batten;
                    return below >= -SAME
                        && below + get(BATTEN_HANGER_GRIP) <= get(BATTEN_HANGER_LONGEST) + SAME;
                  })
          && Space.in(run).stream()
              .allMatch(
                  s ->
                      seat(seat, s.along.from()) + get(BATTEN_DEPTH) + get(CLEARANCE_ABOVE)
                              <= s.heights.from() + SAME
                          || seat(seat, s.along.to()) - lowest >= s.heights.to() - SAME);
    }
  }
}
