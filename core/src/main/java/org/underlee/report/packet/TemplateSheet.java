package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.CAUTION;
import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.underlee.geom.Vec2;
import org.underlee.kit.PanValue;
import org.underlee.layout.Cut;
import org.underlee.layout.Part;
import org.underlee.picture.PlanBuilder;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanItem;
import org.underlee.picture.PlanStyle;
import org.underlee.units.Lengths;

/** Notches and collar holes at full size, to cut out and lay on the piece; with a ruler. */
record TemplateSheet(Job job) {
  /** Leg that is drawn on either side of a notch, as far as the paper has room for. */
  private static final double BESIDE = 0.03;

  /** The widest that is drawn at full size: what every paper can hold. */
  private static final double MOST = 0.18;

  /** Shown around a hole, so that its centre lines can be laid on the piece's own. */
  private static final double AROUND = 0.025;

  private static final PlanStyle CUT = PlanStyle.lined("cut", 0xa5341d, 0.35);
  private static final PlanStyle EDGE = PlanStyle.lined("edge", 0x1b242c, 0.35);
  private static final PlanStyle CENTRE = PlanStyle.lined("centre", 0x5a646c, 0.15).dashed(4, 1.2);

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    Map<String, List<Part>> alike = new LinkedHashMap<>();
    for (Part part : job.design().layout().parts()) {
      for (Cut cut : part.cuts()) {
        if (!(cut instanceof Cut.Slit)) {
          alike.computeIfAbsent(shape(cut), s -> new ArrayList<>()).add(part);
        }
      }
    }
    if (!alike.isEmpty()) {
      blocks.add(new Block.Text(job.say("templates.check"), CAUTION));
      blocks.add(new Block.Template("ruler", job.say("templates.ruler"), ruler()));
      blocks.add(new Block.Text(job.say("templates.how"), PLAIN));
      alike.forEach((shape, parts) -> blocks.add(template(blocks.size(), shape, parts)));
    }
    return new Sheet("templates", job.say("templates.title"), false, blocks);
  }

  /** What makes two cuts one template: the same shape, as marked on a tape. */
  private String shape(Cut cut) {
    if (cut instanceof Cut.Notch n) {
      return "notch " + job.length(n.length()) + " x " + job.length(n.depth());
    }
    return cut.words().in(job.writing().units());
  }

  private Block template(int number, String shape, List<Part> parts) {
    Part first = parts.get(0);
    Cut cut = first.cuts().stream().filter(c -> shape(c).equals(shape)).findFirst().orElseThrow();
    List<String> labels = parts.stream().map(Part::label).distinct().toList();
    if (cut instanceof Cut.Notch notch) {
      return new Block.Template(
          "notch-" + number, notchCaption(notch, shape, parts, labels), notch(notch));
    }
    Cut.Hole hole = (Cut.Hole) cut;
    return new Block.Template(
        "collar-" + number,
        job.say(
            "templates.collar",
            String.join(" ", labels),
            job.length(hole.width()),
            job.length(hole.along()),
            job.length(hole.across())),
        hole(first, hole));
  }

  private String notchCaption(
      Cut.Notch notch, String shape, List<Part> parts, List<String> labels) {
    Map<String, List<String>> places = new LinkedHashMap<>();
    for (Part part : parts) {
      for (Cut cut : part.cuts()) {
        if (cut instanceof Cut.Notch n && shape(n).equals(shape)) {
          List<String> own = places.computeIfAbsent(job.length(n.from()), k -> new ArrayList<>());
          if (!own.contains(part.label())) {
            own.add(part.label());
          }
        }
      }
    }
    String where =
        places.entrySet().stream()
            .map(e -> job.say("templates.from", e.getKey(), String.join(" ", e.getValue())))
            .collect(Collectors.joining("; "));
    return job.say(
        "templates.notch",
        labels.size(),
        job.length(notch.length()),
        job.length(notch.depth()),
        where);
  }

  /** The leg seen from the bay: the seat below, the notch open at the top. */
  PlanDrawing notch(Cut.Notch notch) {
    double leg = job.kit().get(PanValue.RAIL_LEG);
    double beside = Math.max(0.004, Math.min(BESIDE, (MOST - notch.length()) / 2));
    boolean whole = notch.length() <= MOST;
    double length = whole ? notch.length() : MOST - 2 * beside;
    double low = leg - notch.depth();
    PlanBuilder plan = new PlanBuilder();
    plan.line(
        List.of(new Vec2(-beside, leg), new Vec2(0, leg), new Vec2(0, low), new Vec2(length, low)),
        CUT);
    if (whole) {
      plan.line(
          List.of(new Vec2(length, low), new Vec2(length, leg), new Vec2(length + beside, leg)),
          CUT);
    }
    plan.line(List.of(new Vec2(-beside, 0), new Vec2(length + beside, 0)), EDGE);
    plan.line(List.of(new Vec2(-beside, 0), new Vec2(-beside, leg)), CENTRE);
    plan.line(List.of(new Vec2(length + beside, 0), new Vec2(length + beside, leg)), CENTRE);
    note(plan, length / 2, leg - 0.004, job.say("templates.notch.top"));
    note(plan, length / 2, 0.004, job.say("templates.notch.seat"));
    plan.arrow(
        new Vec2(-beside + 0.004, low / 2), new Vec2(-beside + 0.0005, low / 2), PlanStyle.NOTE);
    plan.label(
        new Vec2(-beside + 0.006, low / 2),
        job.say("templates.high"),
        PlanBuilder.TEXT_MM,
        PlanItem.Anchor.START,
        0,
        PlanStyle.NOTE);
    return plan.build(job.say("templates.title"));
  }

  private static void note(PlanBuilder plan, double x, double y, String text) {
    plan.label(
        new Vec2(x, y),
        text.replace('\u00a0', ' '),
        PlanBuilder.SMALL_TEXT_MM,
        PlanItem.Anchor.MIDDLE,
        0,
        PlanStyle.NOTE);
  }

  /** The floor of a collar piece from above, its head up, around the hole. */
  PlanDrawing hole(Part part, Cut.Hole hole) {
    double across = Math.min(MOST, hole.width() + 2 * AROUND) / 2;
    double along = Math.min(MOST, hole.length() + 2 * AROUND) / 2;
    PlanBuilder plan = new PlanBuilder();
    if (hole.round()) {
      plan.circle(new Vec2(0, 0), hole.width() / 2, CUT);
    } else {
      plan.area(
          List.of(
              new Vec2(-hole.width() / 2, -hole.length() / 2),
              new Vec2(hole.width() / 2, -hole.length() / 2),
              new Vec2(hole.width() / 2, hole.length() / 2),
              new Vec2(-hole.width() / 2, hole.length() / 2)),
          CUT);
    }
    boolean slit = part.cuts().stream().anyMatch(c -> c instanceof Cut.Slit);
    if (slit) {
      plan.line(List.of(new Vec2(0, -hole.length() / 2), new Vec2(0, -along)), CUT);
      note(plan, 0, -along - 0.004, job.say("templates.slit"));
    }
    plan.line(List.of(new Vec2(-across, 0), new Vec2(across, 0)), CENTRE);
    plan.line(List.of(new Vec2(0, -hole.length() / 2), new Vec2(0, along)), CENTRE);
    note(plan, 0, along + 0.004, job.say("templates.head", job.length(hole.along())));
    plan.label(
        new Vec2(-across, 0),
        job.say("templates.edge", job.length(hole.across())).replace('\u00a0', ' '),
        PlanBuilder.SMALL_TEXT_MM,
        PlanItem.Anchor.ABOVE,
        90,
        PlanStyle.NOTE);
    return plan.build(job.say("templates.title"));
  }

  /** 100 mm and 4 in, to lay a tape on. */
  static PlanDrawing ruler() {
    PlanBuilder plan = new PlanBuilder();
    scale(plan, 0, Lengths.MM, 100, 10, "100 mm");
    scale(plan, -0.012, Lengths.INCH / 8, 32, 8, "4 in");
    return plan.build("ruler");
  }

  private static void scale(
      PlanBuilder plan, double y, double step, int steps, int great, String text) {
    plan.line(List.of(new Vec2(0, y), new Vec2(step * steps, y)), EDGE);
    for (int i = 0; i <= steps; i++) {
      double high = i % great == 0 ? 0.005 : i % (great / 2) == 0 ? 0.0035 : 0.002;
      plan.line(List.of(new Vec2(step * i, y), new Vec2(step * i, y + high)), EDGE);
    }
    plan.label(
        new Vec2(step * steps + 0.003, y + 0.002),
        text,
        PlanBuilder.TEXT_MM,
        PlanItem.Anchor.START,
        0,
        PlanStyle.NOTE);
  }
}
