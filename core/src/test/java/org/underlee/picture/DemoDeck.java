package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * A made-up deck to look at: joists at 400 mm on a beam and posts, pans between them falling 1:96
 * to a gutter, decking and a wall as faded context.
 */
final class DemoDeck {
  static final double SPACING = 0.4;
  static final int JOISTS = 13;
  private static final double PLY = 0.038;
  private static final double DEPTH = 0.235;
  private static final double SPAN = 3.66;
  private static final double TOP = 2.7;
  private static final double FALL = 1.0 / 96;

  private final List<Shape> shapes = new ArrayList<>();
  private final List<Note> notes = new ArrayList<>();
  private final double width = (JOISTS - 1) * SPACING;

  static Scene scene() {
    DemoDeck deck = new DemoDeck();
    deck.frame();
    deck.assembly();
    deck.context();
    return Scene.of(deck.shapes).withNotes(deck.notes);
  }

  static Mesh block(double x0, double y0, double z0, double x1, double y1, double z1) {
    return Extrusion.straight(
            Transform.translation(new Vec3(0, 0, z0)), Outline.rectangle(x0, y0, x1, y1), z1 - z0)
        .mesh();
  }

  private void frame() {
    double low = TOP - DEPTH;
    for (int i = 0; i < JOISTS; i++) {
      double x = i * SPACING;
      add("joist " + i, block(x - PLY / 2, 0, low, x + PLY / 2, -SPAN, TOP), Palette.JOIST);
    }
    double left = -PLY / 2;
    double right = width + PLY / 2;
    add("ledger", block(left, 0, low, right, PLY, TOP), Palette.LEDGER);
    add("rim", block(left, -SPAN - PLY, low, right, -SPAN, TOP), Palette.LEDGER);
    double beam = -SPAN + 0.5;
    add("beam", block(left, beam - PLY, low - DEPTH, right, beam + PLY, low), Palette.BEAM);
    for (int i = 0; i < 3; i++) {
      double x = left + 0.1 + i * (right - left - 0.2) / 2;
      add(
          "post " + i,
          block(x - 0.07, beam - 0.07, 0, x + 0.07, beam + 0.07, low - DEPTH),
          Palette.POST);
      add(
          "footing " + i,
          block(x - 0.2, beam - 0.2, -0.3, x + 0.2, beam + 0.2, 0),
          Paint.solid(0xc4c6c4));
    }
  }

  private void assembly() {
    for (int i = 0; i + 1 < JOISTS; i++) {
      double x = i * SPACING;
      double l = x + PLY / 2;
      double r = x + SPACING - PLY / 2;
      double high = TOP - 0.04;
      add("rail", sloped(List.of(l, l + 0.02), high - 0.03, 0.03), Palette.RAIL);
      add("rail", sloped(List.of(r - 0.02, r), high - 0.03, 0.03), Palette.RAIL);
      add("pan B" + (i + 1), pan(l + 0.003, r - 0.003, high), Palette.PAN);
      if (i % 2 == 0) {
        notes.add(new Note(new Vec3((l + r) / 2, -1.1, high - 0.05), "B" + (i + 1), 11));
      }
    }
    gutter();
    double gx = width - 0.25;
    List<Vec2> ring = Outline.circle(gx, -SPAN + 0.12, 0.04, 32);
    add(
        "downspout",
        Extrusion.straight(Transform.translation(new Vec3(0, 0, 0.05)), Outline.of(ring), 2.28)
            .mesh(),
        Palette.PIPE);
  }

  /** A thin tray with upturned sides, falling away from the wall. */
  private Mesh pan(double l, double r, double high) {
    double t = 0.0008;
    double up = 0.025;
    Outline tray =
        Outline.of(
            List.of(
                new Vec2(l, 0),
                new Vec2(r, 0),
                new Vec2(r, up),
                new Vec2(r - t, up),
                new Vec2(r - t, t),
                new Vec2(l + t, t),
                new Vec2(l + t, up),
                new Vec2(l, up)));
    return swept(tray, high - 0.03, 0.03, SPAN - 0.15);
  }

  private static Mesh sloped(List<Double> x, double z, double height) {
    return swept(Outline.rectangle(x.get(0), -height, x.get(1), 0), z, 0.01, SPAN - 0.02);
  }

  /** The section stands in x-z at the wall and runs out along -y, dropping with the fall. */
  private static Mesh swept(Outline section, double z, double start, double length) {
    Transform frame = new Transform(new Vec3(0, -start, z), Vec3.X, Vec3.Z, Vec3.Y.negated());
    return new Extrusion(frame, section, new Vec3(0, -length * FALL, length)).mesh();
  }

  private void gutter() {
    double y = -SPAN + 0.07;
    double t = 0.001;
    double w = 0.1;
    double h = 0.09;
    Outline u =
        Outline.of(
            List.of(
                new Vec2(y, h),
                new Vec2(y, 0),
                new Vec2(y + w, 0),
                new Vec2(y + w, h),
                new Vec2(y + w - t, h),
                new Vec2(y + w - t, t),
                new Vec2(y + t, t),
                new Vec2(y + t, h)));
    Transform frame = new Transform(new Vec3(-PLY / 2, 0, TOP - DEPTH - h), Vec3.Y, Vec3.Z, Vec3.X);
    add("gutter", Extrusion.straight(frame, u, width + PLY).mesh(), Palette.GUTTER);
  }

  private void context() {
    Paint faded = Palette.CONTEXT;
    for (double y = 0; y > -SPAN; y -= 0.146) {
      add(
          "board",
          block(-0.05, y - 0.14, TOP, width + 0.05, y, TOP + 0.025),
          Palette.DECKING.faded(0.3));
    }
    add("wall", block(-0.4, PLY, -0.2, width + 0.4, PLY + 0.15, TOP + 0.9), faded);
  }

  private void add(String label, Mesh mesh, Paint paint) {
    shapes.add(new Shape(shapes.size() + 1, label, mesh, paint, true));
  }
}
