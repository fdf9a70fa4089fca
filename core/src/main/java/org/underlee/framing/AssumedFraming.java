package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.NotMeasured;
import org.underlee.finding.Place;
import org.underlee.geom.Box;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * Framing for a deck that is only a slab or a covering so far: joists of the size and spacing the
 * user names, side by side under the outline, with a ledger on the house side and rims elsewhere.
 * These members have negative instance numbers and are never written to a model.
 *
 * <p>Joists start with their side on the outline's edge, go on at the spacing, and end with one on
 * the other edge. A slab thicker than the joists stands for the whole deck: the joists lie inside
 * it, under {@link #BOARDS}; a thinner one is the boards, and the joists lie under it. Holes end
 * joists, but get no headers.
 */
public final class AssumedFraming implements ElementSource {
  /** Thickness of 5/4 boards (PS 20, dry). */
  private static final double BOARDS = 0.0254;

  /** An edge that runs within 15° of the joists' way is a joist's side, not its end (cosine). */
  private static final double ALONG_JOISTS = 0.966;

  /** An edge looks to the house when it looks against the water within 45° (cosine). */
  private static final double LOOKS_TO_HOUSE = 0.707;

  /** A shorter piece is no joist. */
  private static final double SHORTEST = 0.3;

  /** Just beside a face: a hundred times the outline's grid. */
  private static final double BESIDE = 0.001;

  private final ElementSource model;
  private final AssumedJoists joists;
  private final BuildingElement slab;
  private final Transform frame;
  private final DeckOutline outline;
  private final List<BuildingElement> made = new ArrayList<>();

  private AssumedFraming(ElementSource model, AssumedJoists joists) {
    this.model = model;
    this.joists = joists;
    this.slab = AssumedOutline.choose(model.elements(), joists);
    Vec3 way = AssumedOutline.direction(slab, model.elements(), joists);
    Box box = slab.shape().bounds();
    Vec3 origin = new Vec3(box.centre().x(), box.centre().y(), joistTop(box));
    this.frame = new Transform(origin, way.cross(Vec3.Z), way, Vec3.Z);
    this.outline = DeckOutline.of(slab.shape(), frame);
  }

  /**
   * The model's elements with the framing assumed, in place of the slab it was assumed from.
   *
   * @throws InputException when the model has no such slab, or several and none is named
   */
  public static AssumedFraming in(ElementSource model, AssumedJoists joists) {
    AssumedFraming assumed = new AssumedFraming(model, joists);
    assumed.make();
    return assumed;
  }

  private double joistTop(Box box) {
    double thick = box.size().z();
    return thick > joists.depth() + BOARDS ? box.max().z() - BOARDS : box.min().z();
  }

  private void make() {
    List<List<Vec2>> ends = new ArrayList<>();
    for (DeckOutline.Edge edge : outline.edges()) {
      Vec2 out = edge.outward();
      if (Math.abs(out.x()) < ALONG_JOISTS && edge.length() >= SHORTEST) {
        List<Vec2> plan = alongside(edge);
        add(-out.y() >= LOOKS_TO_HOUSE ? "ledger" : "rim", plan);
        ends.add(plan);
      }
    }
    DeckOutline between = outline.without(ends);
    Interval across = outline.across();
    double last = across.to() - joists.width();
    for (double left = across.from(); left < last - joists.width(); left += joists.spacing()) {
      joistsAt(left, between);
    }
    joistsAt(last, between);
  }

  /** The plan of a member along an edge, its ends cut along the joists. */
  private List<Vec2> alongside(DeckOutline.Edge edge) {
    Vec2 in = new Vec2(0, -joists.width() / edge.outward().y());
    return List.of(edge.from(), edge.to(), edge.to().plus(in), edge.from().plus(in));
  }

  /** Each piece of the line ends where the nearer of its two faces meets what ends it. */
  private void joistsAt(double left, DeckOutline between) {
    double right = left + joists.width();
    for (Interval a : between.alongAt(left + BESIDE)) {
      for (Interval b : between.alongAt(right - BESIDE)) {
        Interval piece = a.meet(b);
        if (piece.length() >= SHORTEST) {
          add(
              "joist",
              List.of(
                  new Vec2(left, piece.from()),
                  new Vec2(right, piece.from()),
                  new Vec2(right, piece.to()),
                  new Vec2(left, piece.to())));
        }
      }
    }
  }

  private void add(String what, List<Vec2> plan) {
    int number = made.size() + 1;
    Transform low = frame.after(Transform.translation(new Vec3(0, 0, -joists.depth())));
    made.add(
        new BuildingElement(
            -number,
            "assumed-" + number,
            "IfcBeam",
            "assumed " + what,
            "",
            "",
            slab.storey(),
            Extrusion.straight(low, Outline.of(plan), joists.depth()).mesh()));
  }

  @Override
  public List<BuildingElement> elements() {
    return Stream.concat(
            model.elements().stream().filter(e -> e.instance() != slab.instance()), made.stream())
        .sorted(Comparator.comparing(BuildingElement::isAssumed))
        .toList();
  }

  @Override
  public List<NotMeasured> notMeasured() {
    return model.notMeasured();
  }

  @Override
  public List<BuildingElement> spaces() {
    return model.spaces();
  }

  @Override
  public Optional<Boolean> isExternal(long instance) {
    return model.isExternal(instance);
  }

  /** What has been assumed, for every report. */
  public Finding finding() {
    return Finding.of(
        FramingRules.ASSUMED,
        Place.element(slab.instance(), slab.globalId()),
        made.size()
            + " members are assumed ("
            + joists.text()
            + ") where the model has only "
            + slab.ifcClass()
            + " #"
            + slab.instance()
            + "; posts, beams and headers are not.",
        "Take the quantities as an estimate, and run again when the framing is in the model.");
  }
}
