package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;
import static org.underlee.report.packet.Block.Tone.STRONG;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.underlee.geom.Interval;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.report.packet.Block.Column;

/**
 * The gutter of each field, seen from the garden: where its pieces begin and end, how far each end
 * hangs below the joists, and where hangers, outlets and downspouts are.
 */
record GutterSheet(Job job) {
  private static final double SHARE = 0.4;

  /** How much taller the drawing is than the thing: falls of a few millimetres would not show. */
  private static final double TALLER = 3;

  /** What leads the water down from the gutter. */
  private static final List<PartKind> BELOW =
      List.of(PartKind.DOWNSPOUT, PartKind.ELBOW, PartKind.STRAP);

  /** All that has its place along the gutter. */
  static final List<PartKind> FITTINGS =
      Stream.concat(Stream.of(PartKind.HANGER, PartKind.OUTLET), BELOW.stream()).toList();

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
            job.say(
                "gutter.how",
                job.writing().translated(place.layout().lowEnd()),
                place.field().lines().get(0).id()),
            PLAIN));
    blocks.add(
        new Block.Drawing(
            "gutter-" + place.mark().toLowerCase(java.util.Locale.ROOT),
            job.say("gutter.caption", job.writing().number(TALLER, 0)),
            new GutterDrawing(job, place, TALLER).plan(),
            SHARE,
            Optional.of(new GutterDrawing(job, place, 1).plan())));
    blocks.add(pieces(gutters, start));
    List<Span> flashings = spans(place, PartKind.FLASHING);
    if (!flashings.isEmpty()) {
      blocks.add(new Block.Text(job.say("gutter.flashings"), PLAIN));
      blocks.add(flashings(flashings, start));
    }
    blocks.add(
        new Block.Text(
            job.say("gutter.hangers", positions(spans(place, PartKind.HANGER), start)), PLAIN));
    blocks.add(
        new Block.Text(
            job.say("gutter.outlets", positions(spans(place, PartKind.OUTLET), start)), STRONG));
    blocks.add(downspouts(place, start));
    return blocks;
  }

  private Block flashings(List<Span> spans, double start) {
    return new Block.Table(
        List.of(
            Column.text(job.say("col.label")),
            Column.number(job.say("col.length")),
            Column.number(job.say("col.begins")),
            Column.number(job.say("col.ends"))),
        spans.stream()
            .map(
                s ->
                    List.of(
                        s.part().label(),
                        job.cut(s.part().cutLength()),
                        job.length(s.across().from() - start),
                        job.length(s.across().to() - start)))
            .toList());
  }

  /** In the order of their labels: K1, K2, … K10. */
  private String positions(List<Span> spans, double start) {
    return spans.stream()
        .sorted(
            Comparator.comparingInt((Span s) -> s.part().label().length())
                .thenComparing(s -> s.part().label()))
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
              job.cut(gutter.part().length()),
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
    for (PartKind kind : BELOW) {
      for (Span span : spans(place, kind)) {
        rows.add(
            List.of(
                span.part().label(),
                job.word(kind),
                job.length(span.middle() - start),
                job.height(span.bottom()),
                job.told(span.part().why().reason())));
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
}
