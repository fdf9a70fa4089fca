package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.underlee.bay.FieldBays;
import org.underlee.geom.Interval;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/**
 * What is written about a field's gutter in plan: which way it falls, and what its outlets drain.
 */
record GutterTexts(FieldBays field, FieldLayout layout, PlanPlaces places, Catchments catchments) {
  /** A piece shorter than this on paper has no room for an arrow, mm. */
  private static final double LEAST_MM = 8;

  private static final double MOST_ARROW_MM = 24;

  /** Where a piece's arrow begins and ends, as shares of its length. */
  private static final double ARROW_SHARE = 0.6;

  /** From the gutter's edge to a text beside it, mm. */
  private static final double BESIDE_MM = 2;

  private static final double STEP_MM = 3;
  private static final int TRIES = 8;

  void write(PlanBuilder to, PlanRoom room, double mm) {
    BaySection.parts(Optional.of(layout), PartKind.GUTTER)
        .filter(p -> p.length() > LEAST_MM * mm)
        .forEach(p -> fall(p, to, room, mm));
    catchments.of(field.field().id()).forEach(o -> outlet(o, to, room, mm));
  }

  private void fall(Part gutter, PlanBuilder to, PlanRoom room, double mm) {
    Mesh mesh = gutter.mesh();
    LocalReach reach = LocalReach.of(mesh, field.field().frame());
    double first = top(mesh, new Interval(reach.across().from(), reach.across().middle()));
    double last = top(mesh, new Interval(reach.across().middle(), reach.across().to()));
    if (first == last || gutter.fall().isEmpty()) {
      return;
    }
    double half =
        Math.min(MOST_ARROW_MM * mm, ARROW_SHARE * gutter.length()) / 2 * (first > last ? 1 : -1);
    double u = reach.across().middle();
    double v = reach.along().middle();
    to.arrow(on(u - half, v), on(u + half, v), PlanStyle.GUTTER_FALL);
    String words = "1:" + Math.round(1 / gutter.fall().getAsDouble());
    double turn = PlanBuilder.upright(on(u + 1, v).minus(on(u, v)));
    double away = reach.along().length() / 2 + BESIDE_MM * mm;
    List<PlanItem.Label> beside = new ArrayList<>();
    for (int i = 0; i < TRIES; i++) {
      for (double side : List.of(away, -away)) {
        for (double aside : List.of(i * STEP_MM * mm, -i * STEP_MM * mm)) {
          beside.add(PlanTexts.text(on(u + aside, v + side), words, turn, PlanStyle.GUTTER_FALL));
        }
      }
    }
    to.add(room.place(beside));
  }

  /** Height of the highest place of a stretch. */
  private double top(Mesh mesh, Interval across) {
    return IntStream.range(0, mesh.vertexCount())
        .mapToObj(i -> field.field().frame().toLocal(mesh.vertex(i)))
        .filter(p -> across.contains(p.x()))
        .mapToDouble(Vec3::z)
        .max()
        .orElseThrow();
  }

  private Vec2 on(double u, double v) {
    return places.on(field.field(), u, v);
  }

  /** Beside the outlet, with a line to it. */
  private void outlet(Catchments.Own own, PlanBuilder to, PlanRoom room, double mm) {
    Vec2 at = places.ofWorld(own.outlet().bounds().centre());
    List<PlanItem.Label> around = new ArrayList<>();
    for (int i = 2; i < 2 + TRIES; i++) {
      for (double up : List.of(-i * STEP_MM * mm, i * STEP_MM * mm)) {
        for (PlanItem.Anchor anchor :
            List.of(PlanItem.Anchor.MIDDLE, PlanItem.Anchor.START, PlanItem.Anchor.END)) {
          around.add(
              new PlanItem.Label(
                  at.plus(new Vec2(0, up)),
                  own.words(field),
                  PlanBuilder.SMALL_TEXT_MM,
                  anchor,
                  0,
                  PlanStyle.TAG));
        }
      }
    }
    PlanItem.Label label = room.place(around);
    to.arrow(label.at(), at, PlanStyle.DIMENSION);
    to.add(label);
  }
}
