package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;
import static org.underlee.report.packet.Block.Tone.STRONG;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.underlee.framing.Member;
import org.underlee.geom.Interval;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.picture.PlanBuilder;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanItem;
import org.underlee.picture.PlanStyle;
import org.underlee.report.packet.Block.Column;

/**
 * The gutter of each field, seen from the garden: where its pieces begin and end, how far each end
 * hangs below the joists, and where hangers, outlets and downspouts are.
 */
record GutterSheet(Job job) {
  private static final double SHARE = 0.4;

  /** How much taller the drawing is than the thing: falls of a few millimetres would not show. */
  private static final double TALLER = 3;

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    for (Job.Place place : job.places()) {
      List<Span> gutters = spans(place, PartKind.GUTTER);
      if (!gutters.isEmpty()) {
        blocks.addAll(field(place, gutters));
      }
    }
    return new Sheet("gutter", job.say("gutter.title"), false, blocks);
  }

  /**
   * A part along the gutter.
   *
   * @param across stations from the field's left, as one sees it who looks down the fall
   * @param topFrom height of its top at {@code across.from}; likewise topTo
   * @param bottom its lowest place
   */
  record Span(Part part, Interval across, double topFrom, double topTo, double bottom) {
    double middle() {
      return across.middle();
    }
  }

  static List<Span> spans(Job.Place place, PartKind kind) {
    return place.parts(kind).stream()
        .map(p -> span(place, p))
        .sorted(Comparator.comparingDouble(s -> s.across().from()))
        .toList();
  }

  private static Span span(Job.Place place, Part part) {
    Mesh mesh = part.mesh();
    List<Vec3> points =
        IntStream.range(0, mesh.vertexCount()).mapToObj(i -> place.local(mesh.vertex(i))).toList();
    double from = points.stream().mapToDouble(Vec3::x).min().orElseThrow();
    double to = points.stream().mapToDouble(Vec3::x).max().orElseThrow();
    double middle = (from + to) / 2;
    return new Span(
        part,
        new Interval(from, to),
        points.stream().filter(p -> p.x() < middle).mapToDouble(Vec3::z).max().orElseThrow(),
        points.stream().filter(p -> p.x() >= middle).mapToDouble(Vec3::z).max().orElseThrow(),
        points.stream().mapToDouble(Vec3::z).min().orElseThrow());
  }

  private List<Block> field(Job.Place place, List<Span> gutters) {
    double start = gutters.get(0).across().from();
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading(job.say("gutter.field", place.mark())));
    blocks.add(
        new Block.Text(
            job.say("gutter.how", place.layout().lowEnd(), place.field().lines().get(0).id()),
            PLAIN));
    blocks.add(
        new Block.Drawing(
            "gutter-" + place.mark().toLowerCase(java.util.Locale.ROOT),
            job.say("gutter.caption", job.writing().number(TALLER, 0)),
            drawing(place, gutters),
            SHARE));
    blocks.add(pieces(gutters, start));
    blocks.add(
        new Block.Text(
            job.say("gutter.hangers", positions(spans(place, PartKind.HANGER), start)), PLAIN));
    blocks.add(
        new Block.Text(
            job.say("gutter.outlets", positions(spans(place, PartKind.OUTLET), start)), STRONG));
    blocks.add(downspouts(place, start));
    return blocks;
  }

  private String positions(List<Span> spans, double start) {
    return spans.stream()
        .map(s -> s.part().label() + "\u00a0" + job.length(s.middle() - start))
        .collect(Collectors.joining(", "));
  }

  private Block pieces(List<Span> gutters, double start) {
    List<List<String>> rows = new ArrayList<>();
    for (Span gutter : gutters) {
      boolean left = gutter.topFrom() > gutter.topTo();
      rows.add(
          List.of(
              gutter.part().label(),
              job.length(gutter.part().length()),
              gutter.part().fall().isPresent()
                  ? job.writing().fall(gutter.part().fall().getAsDouble())
                  : "",
              job.length(gutter.across().from() - start),
              job.height(gutter.topFrom()),
              job.length(gutter.across().to() - start),
              job.height(gutter.topTo()),
              job.say(left ? "gutter.toRight" : "gutter.toLeft")));
    }
    return new Block.Table(
        List.of(
            Column.text(job.say("col.label")),
            Column.number(job.say("col.length")),
            Column.text(job.say("col.fall")),
            Column.number(job.say("col.begins")),
            Column.text(job.say("col.rimThere")),
            Column.number(job.say("col.ends")),
            Column.text(job.say("col.rimThere")),
            Column.text(job.say("col.waterRuns"))),
        rows);
  }

  private Block downspouts(Job.Place place, double start) {
    List<List<String>> rows = new ArrayList<>();
    for (PartKind kind : List.of(PartKind.DOWNSPOUT, PartKind.ELBOW, PartKind.STRAP)) {
      for (Span span : spans(place, kind)) {
        rows.add(
            List.of(
                span.part().label(),
                job.word(kind),
                job.length(span.middle() - start),
                job.height(span.bottom()),
                span.part().why().reason().in(job.writing().units())));
      }
    }
    return new Block.Table(
        List.of(
            Column.text(job.say("col.label")),
            Column.text(job.say("col.part")),
            Column.number(job.say("col.fromLeft")),
            Column.text(job.say("col.itsFoot")),
            Column.text(job.say("col.what"))),
        rows);
  }

  /** Seen from the house, looking down the fall: J1 is at the left. */
  private PlanDrawing drawing(Job.Place place, List<Span> gutters) {
    PlanBuilder plan = new PlanBuilder();
    double start = gutters.get(0).across().from();
    double end = gutters.get(gutters.size() - 1).across().to();
    double top =
        gutters.stream().mapToDouble(g -> Math.max(g.topFrom(), g.topTo())).max().orElse(0);
    double bottom = gutters.stream().mapToDouble(Span::bottom).min().orElse(0);
    for (Member post : place.field().posts()) {
      var shape = place.field().shapeOf(post);
      rectangle(plan, shape.across(), bottom * TALLER - 0.5, top * TALLER + 0.15, PlanStyle.POST);
    }
    for (Span spout : spans(place, PartKind.DOWNSPOUT)) {
      rectangle(plan, spout.across(), bottom * TALLER - 0.5, bottom * TALLER, PlanStyle.DOWNSPOUT);
    }
    for (Span g : gutters) {
      double depth = depth(g) * TALLER;
      plan.area(
          List.of(
              new Vec2(g.across().from(), g.topFrom() * TALLER - depth),
              new Vec2(g.across().to(), g.topTo() * TALLER - depth),
              new Vec2(g.across().to(), g.topTo() * TALLER),
              new Vec2(g.across().from(), g.topFrom() * TALLER)),
          PlanStyle.GUTTER);
      fallArrow(plan, g);
    }
    for (Span hanger : spans(place, PartKind.HANGER)) {
      rectangle(
          plan,
          hanger.across(),
          (hanger.topFrom() - 0.02) * TALLER,
          hanger.topFrom() * TALLER + 0.04,
          PlanStyle.BLOCKING);
    }
    labels(plan, place, new Interval(start, end), top * TALLER + 0.22, bottom * TALLER - 0.5);
    return plan.build(job.say("gutter.title"));
  }

  /** The trough's own depth at its high end: its lowest point is at the outlet. */
  private static double depth(Span g) {
    return Math.min(g.topFrom(), g.topTo()) - g.bottom();
  }

  private void fallArrow(PlanBuilder plan, Span g) {
    boolean right = g.topFrom() > g.topTo();
    double from = g.across().from() + g.across().length() * (right ? 0.3 : 0.7);
    double to = g.across().from() + g.across().length() * (right ? 0.6 : 0.4);
    double y = (g.topFrom() + g.topTo()) / 2 * TALLER - depth(g) * TALLER / 2;
    plan.arrow(new Vec2(from, y), new Vec2(to, y), PlanStyle.FALL);
  }

  private void labels(PlanBuilder plan, Job.Place place, Interval across, double y, double bottom) {
    double start = across.from();
    double end = across.to();
    for (Span outlet : spans(place, PartKind.OUTLET)) {
      plan.dimension(
          new Vec2(start, y),
          new Vec2(outlet.middle(), y),
          0.25,
          job.length(outlet.middle() - start).replace('\u00a0', ' '));
      plan.label(
          new Vec2(outlet.middle(), bottom),
          outlet.part().label(),
          PlanBuilder.SMALL_TEXT_MM,
          PlanItem.Anchor.BELOW,
          0,
          PlanStyle.NOTE);
    }
    plan.dimension(
        new Vec2(start, y), new Vec2(end, y), 0.5, job.length(end - start).replace('\u00a0', ' '));
  }

  private static void rectangle(
      PlanBuilder plan, Interval across, double low, double high, PlanStyle style) {
    plan.area(
        List.of(
            new Vec2(across.from(), low),
            new Vec2(across.to(), low),
            new Vec2(across.to(), high),
            new Vec2(across.from(), high)),
        style);
  }
}
