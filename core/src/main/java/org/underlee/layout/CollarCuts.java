package org.underlee.layout;

import static org.underlee.kit.PanValue.COLLAR_CLEARANCE;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.Crossing;
import org.underlee.layout.Derivation.Measured;
import org.underlee.units.Words;

/** The holes of a collar piece, and the slit below each, dimensioned from the piece. */
record CollarCuts(FieldPlan plan, BayRun run, TroughPiece trough) {

  List<Cut> of(List<Crossing> pipes) {
    List<Cut> cuts = new ArrayList<>();
    for (Crossing c : pipes) {
      Cut.Hole hole = hole(c);
      cuts.add(hole);
      cuts.add(
          new Cut.Slit(
              hole.along() + hole.length() / 2, trough.to() - trough.from(), hole.across()));
    }
    return cuts;
  }

  private Cut.Hole hole(Crossing c) {
    double twice = 2 * plan.kit().get(COLLAR_CLEARANCE);
    double along = run.alongTo(c.stretch().middle());
    double width = (c.round() ? c.size() : c.acrossStretch().length()) + twice;
    double length = (c.round() ? c.size() : c.stretch().length()) + twice;
    return new Cut.Hole(
        along - trough.from(),
        c.acrossStretch().middle() - trough.left().at(along),
        length,
        width,
        c.round());
  }

  List<Derivation> derivations(List<Crossing> pipes) {
    List<Derivation> all = new ArrayList<>();
    for (int i = 0; i < pipes.size(); i++) {
      all.add(along(pipes.get(i)).gives(Dimension.HOLE_ALONG, i + 1));
      all.add(across(pipes.get(i)).gives(Dimension.HOLE_ACROSS, i + 1));
      all.add(size(pipes.get(i)).gives(Dimension.HOLE_SIZE, i + 1));
    }
    return all;
  }

  private Reckoning along(Crossing c) {
    return new Reckoning(plan.kit())
        .from(
            Words.of("middle of the pipe, down the slope from the pan's head"),
            run.alongTo(c.stretch().middle()),
            pipe(c))
        .minus("head of this piece from the pan's head", trough.from(), Reckoning.OWN);
  }

  private Reckoning across(Crossing c) {
    double along = run.alongTo(c.stretch().middle());
    return new Reckoning(plan.kit())
        .from(Words.of("middle of the pipe, across the field"), c.acrossStretch().middle(), pipe(c))
        .minus(
            "edge of the pan, off the first joist's face by the side gap",
            trough.left().at(along),
            new RunReckoning(plan, run).joists());
  }

  private Reckoning size(Crossing c) {
    return new Reckoning(plan.kit())
        .from(
            Words.of(c.insulation().isPresent() ? "pipe over its insulation" : "pipe"),
            c.round() ? c.size() : c.acrossStretch().length(),
            pipe(c))
        .plus(COLLAR_CLEARANCE)
        .plus(COLLAR_CLEARANCE);
  }

  private static Measured pipe(Crossing c) {
    return new Measured(
        c.insulation().isPresent()
            ? List.of(c.element(), c.insulation().get())
            : List.of(c.element()));
  }
}
