package org.underlee.report.bcf;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.underlee.clash.Cause;
import org.underlee.clash.Clash;
import org.underlee.clash.Issue;
import org.underlee.clash.Ours;
import org.underlee.clash.Theirs;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Role;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;
import org.underlee.picture.Camera;
import org.underlee.picture.Image;
import org.underlee.picture.Paint;
import org.underlee.picture.Palette;
import org.underlee.picture.RasterSettings;
import org.underlee.picture.Renderer;
import org.underlee.picture.Scene;
import org.underlee.picture.Shape;
import org.underlee.run.Coordination;

/**
 * The picture of an issue, and from where it was taken: the thing in the colour of an alert, the
 * parts that it meets, the other parts pale, so that no hole seems to be where one is, and what
 * stands around them seen through.
 */
record Snapshot(Camera camera, Image image) {
  static final int WIDTH = 960;
  static final int HEIGHT = 640;

  /** What is drawn around the place of the issue. */
  private static final double AROUND = 1.2;

  /** From below and beside: pans are looked at from below; what they hide, from above. */
  private static final Vec3 BELOW = new Vec3(-0.55, -0.7, -0.5);

  private static final Vec3 ABOVE = new Vec3(-0.55, -0.7, 0.9);

  static Snapshot of(Issue issue, Coordination all) {
    Box place = Box.EMPTY;
    for (Clash c : issue.clashes()) {
      place = place.with(c.at());
    }
    Box near = place.grown(AROUND);
    Vec3 from = issue.cause() == Cause.HIDDEN ? ABOVE : BELOW;
    Camera camera = Camera.lookingFrom(from, corners(place.grown(AROUND / 2)), aspect());
    List<Shape> shapes = shapes(issue, all, near);
    RasterSettings settings = RasterSettings.of(WIDTH, HEIGHT);
    return new Snapshot(camera, Renderer.draw(Scene.of(shapes), camera, settings));
  }

  static double aspect() {
    return (double) WIDTH / HEIGHT;
  }

  private static List<Shape> shapes(Issue issue, Coordination all, Box near) {
    Set<BuildingElement> alert = new HashSet<>();
    issue.things().forEach(t -> alert.add(t.element()));
    Set<String> met = new HashSet<>();
    issue.clashes().forEach(c -> met.add(c.part().id()));
    List<Shape> shapes = new ArrayList<>();
    for (Theirs thing : all.things()) {
      boolean red = alert.contains(thing.element());
      if (red || (isContext(thing, all) && thing.element().shape().bounds().meets(near))) {
        Paint paint = red ? Palette.ALERT : Palette.CONTEXT;
        shapes.add(shape(shapes, thing.words(), thing.element(), paint));
      }
    }
    for (Ours part : all.parts()) {
      if (part.bounds().meets(near) && part.element().isPresent()) {
        Paint paint = met.contains(part.id()) ? Palette.PAN : Palette.BESIDE;
        shapes.add(shape(shapes, part.id(), part.element().get(), paint));
      }
    }
    return shapes;
  }

  /** Framing and services; walls and deck boards would hide all. */
  private static boolean isContext(Theirs thing, Coordination all) {
    return all.checked()
        .survey()
        .framing()
        .roleOf(thing.element().globalId())
        .map(r -> r != Role.DECK_BOARD)
        .orElse(thing.kind().clearance() > 0);
  }

  private static Shape shape(List<Shape> so, String label, BuildingElement e, Paint paint) {
    return new Shape(so.size() + 1, label, e.shape(), paint, true);
  }

  private static List<Vec3> corners(Box box) {
    return List.of(
        box.min(),
        box.max(),
        new Vec3(box.min().x(), box.min().y(), box.max().z()),
        new Vec3(box.min().x(), box.max().y(), box.min().z()),
        new Vec3(box.max().x(), box.min().y(), box.min().z()),
        new Vec3(box.max().x(), box.max().y(), box.min().z()),
        new Vec3(box.max().x(), box.min().y(), box.max().z()),
        new Vec3(box.min().x(), box.max().y(), box.max().z()));
  }
}
