package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.framing.Field;
import org.underlee.framing.Member;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.picture.PlanBuilder;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanStyle;

/** Sections through one bay of each sort: along it from the house to the gutter, and across it. */
record SectionSheet(Job job) {
  /** Bays of more sorts than this are told of in words; their marks and cuts stand in the lists. */
  private static final int MOST_SORTS = 8;

  private static final double ACROSS_SHARE = 0.42;
  private static final double ALONG_SHARE = 0.3;

  /** From a mark to its text, metres: along the bay from the two ends, and down. */
  private static final double AFTER_HIGH = 0.25;

  private static final double BEFORE_LOW = -0.35;
  private static final double BELOW_MARK = 0.2;

  /** Below the lowest part, and above the joists. */
  private static final double AROUND = 0.05;

  /** From what is drawn to a dimension beyond it. */
  private static final double CLEAR = 0.02;

  /** Framing and parts beside the bay that a section across it shows, metres. */
  private static final double BESIDE = 0.12;

  /** How far above and below the joists a section along the bay is shown. */
  private static final double ROUND = 0.35;

  private static final PlanStyle SHEET = PlanStyle.lined("sheet", 0x1d4f66, 0.3).filled(0x1d4f66);

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(job.say("sections.how"), PLAIN));
    int drawn = 0;
    for (Job.Place place : job.places()) {
      for (List<Bay> alike : sorts(place).values()) {
        if (drawn++ < MOST_SORTS) {
          blocks.addAll(sections(place, alike));
        }
      }
    }
    if (drawn > MOST_SORTS) {
      blocks.add(new Block.Text(job.say("sections.more", drawn - MOST_SORTS), PLAIN));
    }
    return new Sheet("sections", job.say("sections.title"), false, blocks);
  }

  /** Bays alike in all that a section shows, the commonest sort first. */
  private Map<String, List<Bay>> sorts(Job.Place place) {
    Map<String, List<Bay>> sorts = new LinkedHashMap<>();
    place
        .served()
        .forEach(b -> sorts.computeIfAbsent(sort(place, b), k -> new ArrayList<>()).add(b));
    return sorts.entrySet().stream()
        .sorted((a, b) -> Integer.compare(b.getValue().size(), a.getValue().size()))
        .collect(
            Collectors.toMap(
                Map.Entry::getKey, Map.Entry::getValue, (a, b) -> a, LinkedHashMap::new));
  }

  private String sort(Job.Place place, Bay bay) {
    String parts =
        place.partsIn(bay).stream().map(p -> p.kind().word()).collect(Collectors.joining(" "));
    String inIt =
        Stream.concat(
                bay.blocking().stream().map(b -> "b" + job.length(b.bottom())),
                bay.crossings().stream().map(c -> c.way().word() + job.length(c.size())))
            .collect(Collectors.joining(" "));
    return parts + "|" + inIt + "|" + job.length(bay.length());
  }

  private List<Block> sections(Job.Place place, List<Bay> alike) {
    Bay bay = alike.get(0);
    String label = place.label(bay);
    String same = alike.stream().skip(1).map(place::label).collect(Collectors.joining(", "));
    String id = label.toLowerCase(java.util.Locale.ROOT);
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Heading(
            same.isEmpty() ? job.say("sections.only", label) : job.say("sections.bay", label)));
    if (!same.isEmpty()) {
      blocks.add(new Block.Text(job.say("sections.likewise", same), PLAIN));
    }
    blocks.add(
        new Block.Drawing(
            "section-along-" + id,
            job.say("sections.along", label),
            along(place, bay),
            ALONG_SHARE));
    blocks.add(
        new Block.Drawing(
            "section-across-" + id,
            job.say("sections.across", label),
            across(place, bay),
            ACROSS_SHARE));
    return blocks;
  }

  private record Body(Mesh mesh, PlanStyle style) {}

  private List<Body> bodies(Job.Place place) {
    Field field = place.field();
    List<Body> bodies = new ArrayList<>();
    field.carriers().forEach(s -> bodies.add(body(s.member(), PlanStyle.LEDGER)));
    field.dropBeams().forEach(s -> bodies.add(body(s.member(), PlanStyle.LEDGER)));
    field.high().forEach(s -> bodies.add(body(s.member(), PlanStyle.LEDGER)));
    field.low().forEach(s -> bodies.add(body(s.member(), PlanStyle.LEDGER)));
    field.posts().forEach(p -> bodies.add(body(p, PlanStyle.POST)));
    field.lines().forEach(l -> l.plies().forEach(p -> bodies.add(body(p, PlanStyle.JOIST))));
    field.blocking().forEach(b -> bodies.add(body(b, PlanStyle.BLOCKING)));
    place
        .bays()
        .bays()
        .forEach(
            b ->
                b.crossings()
                    .forEach(c -> bodies.add(new Body(c.element().shape(), PlanStyle.CROSSING))));
    for (Part part : place.layout().parts()) {
      if (!part.bodies().isEmpty()) {
        part.bodies().forEach(b -> bodies.add(new Body(b.mesh(), style(part.kind()))));
      }
    }
    return bodies;
  }

  private static Body body(Member member, PlanStyle style) {
    return new Body(member.element().shape(), style);
  }

  private static PlanStyle style(PartKind kind) {
    return kind == PartKind.DOWNSPOUT || kind == PartKind.OUTLET ? PlanStyle.DOWNSPOUT : SHEET;
  }

  /** Down the middle of the bay, or through its first pipe; the house at the left. */
  PlanDrawing along(Job.Place place, Bay bay) {
    double v = bay.stretch().middle();
    double u =
        bay.crossings().stream()
            .mapToDouble(c -> c.acrossStretch().middle())
            .findFirst()
            .orElse((bay.leftFace().at(v) + bay.rightFace().at(v)) / 2);
    Transform field = place.field().frame();
    Transform cut = field.after(new Transform(new Vec3(u, 0, 0), Vec3.Y, Vec3.Z, Vec3.X));
    double low = Math.min(-ROUND, lowest(place, bay) - AROUND);
    double high = bay.joistTop(v) + AROUND;
    Box shown =
        new Box(
            new Vec3(bay.stretch().from() - 0.12, low, 0),
            new Vec3(bay.stretch().to() + 0.15, high, 0));
    PlanBuilder plan = new PlanBuilder();
    joistBeyond(plan, bay);
    draw(plan, place, cut, shown);
    seats(plan, place, bay);
    return plan.build(job.say("sections.along", place.label(bay)));
  }

  /** The joist that is seen behind the cut, and its underside. */
  private static void joistBeyond(PlanBuilder plan, Bay bay) {
    double from = bay.stretch().from();
    double to = bay.stretch().to();
    plan.area(
        List.of(
            new Vec2(from, bay.joistBottom(from)),
            new Vec2(to, bay.joistBottom(to)),
            new Vec2(to, bay.joistTop(to)),
            new Vec2(from, bay.joistTop(from))),
        PlanStyle.lined("joist-beyond", 0xc9b48f, 0.15).filled(0xf8f1e3));
  }

  private void draw(PlanBuilder plan, Job.Place place, Transform cut, Box shown) {
    for (Body body : bodies(place)) {
      for (Outline ring : Slice.of(body.mesh(), cut)) {
        clipped(ring, shown).forEach(r -> plan.area(r, body.style()));
      }
    }
  }

  /** What of a ring lies in a box. */
  private static List<Outline> clipped(Outline ring, Box shown) {
    var factory = new org.locationtech.jts.geom.GeometryFactory();
    var polygon =
        factory.createPolygon(
            factory.createLinearRing(coordinates(ring.outer())),
            ring.holes().stream()
                .map(h -> factory.createLinearRing(coordinates(h)))
                .toArray(org.locationtech.jts.geom.LinearRing[]::new));
    var window =
        factory.toGeometry(
            new org.locationtech.jts.geom.Envelope(
                shown.min().x(), shown.max().x(), shown.min().y(), shown.max().y()));
    if (window.covers(polygon)) {
      return List.of(ring);
    }
    List<Outline> left = new ArrayList<>();
    var met = polygon.intersection(window);
    for (int i = 0; i < met.getNumGeometries(); i++) {
      if (met.getGeometryN(i) instanceof org.locationtech.jts.geom.Polygon p && p.getArea() > 0) {
        List<Vec2> outer = new ArrayList<>();
        var all = p.getExteriorRing().getCoordinates();
        for (int k = 0; k + 1 < all.length; k++) {
          outer.add(new Vec2(all[k].x, all[k].y));
        }
        left.add(Outline.of(outer));
      }
    }
    return left;
  }

  private static org.locationtech.jts.geom.Coordinate[] coordinates(List<Vec2> ring) {
    return Stream.concat(ring.stream(), ring.stream().limit(1))
        .map(p -> new org.locationtech.jts.geom.Coordinate(p.x(), p.y()))
        .toArray(org.locationtech.jts.geom.Coordinate[]::new);
  }

  /** The two marks, as on the sheet of marks. */
  private void seats(PlanBuilder plan, Job.Place place, Bay bay) {
    SeatMarks.of(place).stream()
        .filter(r -> r.isAt(bay) && r.line().equals(bay.left()))
        .findFirst()
        .ifPresent(
            row -> {
              Vec3 high = row.first().at();
              Vec3 low = row.last().at();
              plan.line(
                  List.of(new Vec2(high.y(), high.z()), new Vec2(low.y(), low.z())),
                  PlanStyle.FALL);
              leader(plan, high, AFTER_HIGH, row.first().height());
              leader(plan, low, BEFORE_LOW, row.last().height());
            });
  }

  /** A height with an arrow to its place, out of the way of what is drawn. */
  private void leader(PlanBuilder plan, Vec3 at, double aside, double height) {
    plan.leader(
        new Vec2(at.y(), at.z()),
        new Vec2(at.y() + aside, at.z() - BELOW_MARK),
        drawn(job.height(height)));
  }

  /** The letters of drawings have no space that does not break. */
  private static String drawn(String text) {
    return text.replace('\u00a0', ' ');
  }

  /** Across the bay a little below its middle, or at its first pipe; seen looking down the fall. */
  PlanDrawing across(Job.Place place, Bay bay) {
    double v =
        bay.crossings().stream()
            .mapToDouble(c -> c.stretch().middle())
            .findFirst()
            .orElse(bay.stretch().from() + 0.3 * bay.length());
    Transform field = place.field().frame();
    Transform cut = field.after(new Transform(new Vec3(0, v, 0), Vec3.X, Vec3.Z, Vec3.Y.negated()));
    double left = bay.left().leftAt(v) - BESIDE;
    double right = bay.right().rightAt(v) + BESIDE;
    double low = lowest(place, bay) - AROUND;
    double high = bay.joistTop(v) + AROUND;
    PlanBuilder plan = new PlanBuilder();
    draw(plan, place, cut, new Box(new Vec3(left, low, 0), new Vec3(right, high, 0)));
    plan.dimension(
        new Vec2(bay.left().rightAt(v), bay.joistTop(v)),
        new Vec2(bay.right().leftAt(v), bay.joistTop(v)),
        AROUND + CLEAR,
        drawn(job.length(bay.clearWidthAt(v))));
    place.partsIn(bay).stream()
        .filter(
            p ->
                p.kind().catchesWater() && place.box(p).min().y() < v && place.box(p).max().y() > v)
        .findFirst()
        .ifPresent(p -> width(plan, p, (bay.leftFace().at(v) + bay.rightFace().at(v)) / 2, low));
    return plan.build(job.say("sections.across", place.label(bay)));
  }

  /** The lowest of what is hung in the bay or below it, but for what leads the water away. */
  private static double lowest(Job.Place place, Bay bay) {
    return Stream.concat(place.partsIn(bay).stream(), place.partsBelow(bay).stream())
        .filter(p -> !p.bodies().isEmpty())
        .mapToDouble(p -> place.box(p).min().z())
        .min()
        .orElse(0);
  }

  private void width(PlanBuilder plan, Part part, double middle, double low) {
    plan.dimension(
        new Vec2(middle - part.width() / 2, low),
        new Vec2(middle + part.width() / 2, low),
        -CLEAR,
        drawn(job.say("sections.width", job.word(part.kind()), job.length(part.width()))));
  }
}
