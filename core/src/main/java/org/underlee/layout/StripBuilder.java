package org.underlee.layout;

import static org.underlee.kit.PanValue.PAN_DRIP;
import static org.underlee.kit.PanValue.PAN_LAP;
import static org.underlee.kit.PanValue.PAN_LONGEST;
import static org.underlee.kit.PanValue.STRIP_GAP;
import static org.underlee.kit.PanValue.STRIP_HEM;
import static org.underlee.kit.PanValue.TAPE_WIDTH;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.Measured;
import org.underlee.layout.Derivation.Op;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** Closes the underside of doubled and tripled lines: a shallow trough, and tape on each seam. */
record StripBuilder(FieldPlan plan, PartNames names) {
  /** Kept free between the strip and the rails' legs at each side. */
  private static final double SIDE = 0.001;

  private static final double SAME = 1e-9;

  /** A seam shorter than this is left to the strip alone. */
  private static final double SHORTEST_TAPE = 0.05;

  List<Part> parts() {
    List<Part> parts = new ArrayList<>();
    for (JoistLine line : plan.bays().field().lines()) {
      if (line.pliesAbreast() > 1) {
        beside(line).ifPresent(run -> parts.addAll(parts(line, run)));
      }
    }
    return parts;
  }

  /** The run of a served bay next to the line: the strip starts and stops with its pan. */
  private Optional<BayRun> beside(JoistLine line) {
    return plan.served().stream()
        .filter(r -> r.bay().left().equals(line) || r.bay().right().equals(line))
        .findFirst();
  }

  /** Height of the strip's floor at a station: at the rails' fall, and below the joists. */
  double floor(JoistLine line, double v) {
    BayRun run = beside(line).orElseThrow();
    double below =
        line.bottom().at(run.railStart()) - plan.kit().get(STRIP_HEM) - plan.kit().get(STRIP_GAP);
    return Math.min(plan.seat(run.railStart()), below) - plan.fall() * (v - run.railStart());
  }

  private List<Part> parts(JoistLine line, BayRun run) {
    Kit kit = plan.kit();
    double start = run.railStart();
    double cosine = run.stationAt(1) - run.start();
    Transform slope = plan.sloped(0, start, floor(line, start));
    double lap = kit.get(PAN_LAP);
    List<Interval> pieces =
        new Laps(kit.get(PAN_LONGEST), lap).split(new Interval(0, run.panLength()), false);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      boolean last = i == pieces.size() - 1;
      TroughPiece trough =
          new TroughPiece(
              new Linear(line.left().at(start), line.left().slope() * cosine).plus(SIDE),
              new Linear(line.right().at(start), line.right().slope() * cosine).plus(-SIDE),
              pieces.get(i).from(),
              pieces.get(i).to() + (last ? 0 : lap),
              pieces.size() - 1 - i,
              kit.item(Items.STRIP_SHEET).thickness(),
              kit.get(STRIP_HEM),
              last ? kit.get(PAN_DRIP) : 0,
              0,
              i == 0,
              List.of());
      parts.add(strip(line, i + 1, trough, slope, derivations(line, run, pieces, i)));
    }
    parts.addAll(tapes(line, run));
    return parts;
  }

  private Part strip(
      JoistLine line,
      int ordinal,
      TroughPiece trough,
      Transform slope,
      List<Derivation> derivations) {
    return names.atLine(
        line.id(),
        PartKind.PLY_STRIP,
        ordinal,
        PartNames.Shape.of(
                Items.STRIP_SHEET,
                trough.to() - trough.from(),
                trough.width(),
                trough.bodies(slope))
            .foldedFrom(trough.blankWidth())
            .cutTo(trough.blankLength())
            .falling(plan.fall())
            .derived(derivations),
        line.pliesAbreast()
            + " plies let water through their seams; the strip closes the line from rail to rail");
  }

  private List<Derivation> derivations(
      JoistLine line, BayRun run, List<Interval> pieces, int index) {
    RunReckoning reckoning = new RunReckoning(plan, run);
    Reckoning length = reckoning.panLength();
    double longest = plan.kit().get(PAN_LONGEST);
    if (pieces.size() > 1) {
      length.over(
          Words.of("equal pieces, none longer with its lap than %s", Quantity.length(longest)),
          pieces.size(),
          length.origin(PAN_LONGEST));
    }
    if (index < pieces.size() - 1) {
      length.plus(PAN_LAP);
    }
    Reckoning width =
        new Reckoning(plan.kit())
            .from(
                Words.of("width of the line where the strip is widest"),
                widest(line, run, pieces.get(index)),
                plies(line))
            .minus("off the first rail's leg", SIDE, Reckoning.OWN)
            .minus("off the other rail's leg", SIDE, Reckoning.OWN);
    Reckoning blank = new Reckoning(length);
    if (index == 0) {
      blank.plus(STRIP_HEM);
    }
    if (index == pieces.size() - 1) {
      blank.plus(PAN_DRIP);
    }
    return List.of(
        length.gives(Dimension.LENGTH),
        blank.gives(Dimension.FLAT_LENGTH),
        width.gives(Dimension.WIDTH),
        new Reckoning(width).plus(STRIP_HEM).plus(STRIP_HEM).gives(Dimension.FLAT_WIDTH),
        reckoning.fall());
  }

  private double widest(JoistLine line, BayRun run, Interval piece) {
    boolean goesOn = piece.to() < run.panLength() - SAME;
    double from = run.stationAt(piece.from());
    double to = run.stationAt(piece.to() + (goesOn ? plan.kit().get(PAN_LAP) : 0));
    return Math.max(
        line.right().at(from) - line.left().at(from), line.right().at(to) - line.left().at(to));
  }

  private static Measured plies(JoistLine line) {
    return new Measured(line.plies().stream().map(Member::element).toList());
  }

  private List<Part> tapes(JoistLine line, BayRun run) {
    double thick = plan.kit().item(Items.SEAM_TAPE).thickness();
    Interval served = new Interval(run.railStart(), run.panEnd());
    List<Part> parts = new ArrayList<>();
    List<JoistLine.Seam> seams = line.seams();
    for (JoistLine.Seam seam : seams) {
      Interval stretch = seam.stretch().meet(served);
      if (stretch.length() > SHORTEST_TAPE) {
        Vec3 along = new Vec3(seam.place().slope(), 1, line.bottom().slope());
        Vec3 origin =
            new Vec3(
                seam.place().at(stretch.from()), stretch.from(), line.bottom().at(stretch.from()));
        Vec3 across = new Vec3(1, -along.x(), 0).unit();
        Transform flat =
            plan.frame()
                .after(new Transform(origin, across, along.unit(), across.cross(along.unit())));
        double width = tapeWidth(line, seam, seams);
        double length = stretch.length() * along.length();
        Outline outline = Outline.rectangle(-width / 2, 0, width / 2, length);
        List<Extrusion> bodies = List.of(Sheet.plate(flat, outline, -thick, thick));
        parts.add(
            names.atLine(
                line.id(),
                PartKind.TAPE,
                parts.size() + 1,
                PartNames.Shape.of(Items.SEAM_TAPE, length, width, bodies)
                    .derived(tapeWhy(line, stretch, along.length(), width)),
                "closes the seam between two plies from below, above the strip"));
      }
    }
    return parts;
  }

  private List<Derivation> tapeWhy(
      JoistLine line, Interval stretch, double perStation, double width) {
    Reckoning length =
        new Reckoning(plan.kit())
            .from(
                Words.of("seam between two plies, from the pan's head to its low end"),
                stretch.length(),
                plies(line));
    if (perStation - 1 > SAME) {
      length.times("along a line that is askew or out of level", perStation, plies(line));
    }
    Reckoning wide =
        new Reckoning(plan.kit())
            .from(TAPE_WIDTH)
            .step(
                Op.AT_MOST,
                Words.of("room up to the next seam's tape and the rails"),
                width,
                Kind.LENGTH,
                plies(line));
    return List.of(length.gives(Dimension.LENGTH), wide.gives(Dimension.WIDTH));
  }

  /** As wide as the kit has it, but clear of the tape on the next seam and of the rails. */
  private double tapeWidth(JoistLine line, JoistLine.Seam seam, List<JoistLine.Seam> seams) {
    double v = seam.stretch().middle();
    double u = seam.place().at(v);
    double room = 2 * Math.min(u - line.left().at(v), line.right().at(v) - u) - 4 * SIDE;
    for (JoistLine.Seam other : seams) {
      double apart = Math.abs(other.place().at(v) - u);
      if (!other.equals(seam) && !other.stretch().meet(seam.stretch()).isEmpty()) {
        room = Math.min(room, apart - 2 * SIDE);
      }
    }
    return Math.min(plan.kit().get(TAPE_WIDTH), room);
  }
}
