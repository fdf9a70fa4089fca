package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.CAUTION;
import static org.underlee.report.packet.Block.Tone.PLAIN;
import static org.underlee.report.packet.Block.Tone.STRONG;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.bay.Bay;
import org.underlee.check.SiteQuestion;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.OutletShare;
import org.underlee.finding.Finding;
import org.underlee.finding.Level;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitNumber;
import org.underlee.kit.PanValue;
import org.underlee.kit.StockItem;
import org.underlee.layout.PartKind;
import org.underlee.report.packet.Block.Column;
import org.underlee.report.packet.Block.Tick;
import org.underlee.units.Quantity;

/** The sheets that say what to do: on site before, while building, at the test, and after. */
record WorkSheets(Job job) {
  /** Poured on each bay at the hose test: so much rain, metres. */
  private static final double TEST_DEPTH = 0.010;

  private static final double MM_PER_METRE = 1000;
  private static final double MINUTES = 60;

  /** Steps of the building order, each with a check: in the phrases as {@code build.1}. */
  private static final int BUILD_STEPS = 12;

  private static final int CARE_STEPS = 7;

  Sheet site() {
    List<Tick> ticks = new ArrayList<>();
    for (SiteQuestion q : job.design().checks().questions()) {
      ticks.add(
          new Tick("site-" + (ticks.size() + 1), q.text(), q.why() + " (" + q.source() + ")"));
    }
    return new Sheet(
        "site",
        job.say("site.title"),
        false,
        List.of(new Block.Text(job.say("site.how"), PLAIN), new Block.Ticks(ticks)));
  }

  Sheet build() {
    List<Tick> ticks = new ArrayList<>();
    boolean strips = has(PartKind.PLY_STRIP);
    boolean collars = has(PartKind.COLLAR_PIECE);
    for (int i = 1; i <= BUILD_STEPS; i++) {
      boolean needed = i == 5 ? strips : i != 8 || collars;
      if (needed) {
        ticks.add(
            new Tick(
                "build-" + i,
                (ticks.size() + 1) + ". " + job.say("build." + i, stepParts(i)),
                job.say("build.check." + i, stepParts(i))));
      }
    }
    return new Sheet(
        "build",
        job.say("build.title"),
        false,
        List.of(
            new Block.Text(job.say("build.how"), PLAIN),
            new Block.Text(job.say("cover.caution.site"), CAUTION),
            new Block.Ticks(ticks)));
  }

  /** The kit's numbers that a step speaks of. */
  private Object[] stepParts(int step) {
    Kit kit = job.kit();
    return switch (step) {
      case 4 ->
          new Object[] {
            job.length(kit.get(PanValue.RAIL_FASTENER_SPACING)),
            job.length(kit.get(PanValue.JOIST_EDGE_DISTANCE)),
            job.length(kit.get(DrainValue.HANGER_END))
          };
      case 7 -> new Object[] {job.length(kit.get(PanValue.PAN_LAP))};
      case 9 ->
          new Object[] {
            job.writing().fall(kit.gutterFall()), job.length(kit.get(DrainValue.GUTTER_BACK_GAP))
          };
      default -> new Object[0];
    };
  }

  private boolean has(PartKind kind) {
    return job.design().layout().parts().stream().anyMatch(p -> p.kind() == kind);
  }

  /** How much water to pour on each bay, and what to look at. */
  Sheet hose() {
    double minutes = TEST_DEPTH * MM_PER_METRE / DrainProof.TEST_RAIN * MINUTES;
    List<List<String>> rows = new ArrayList<>();
    for (Job.Place place : job.places()) {
      Map<String, Double> areas = areas(place);
      for (Bay bay : place.served()) {
        double area = areas.getOrDefault(bay.id(), 0.0);
        rows.add(
            List.of(
                place.label(bay),
                job.writing().area(area),
                job.writing().volume(area * TEST_DEPTH),
                job.writing().volume(area * TEST_DEPTH / minutes),
                "",
                ""));
      }
    }
    return new Sheet(
        "hose",
        job.say("hose.title"),
        false,
        List.of(
            new Block.Text(
                job.say(
                    "hose.how",
                    job.writing().number(minutes, 0),
                    job.writing().isMetric()
                        ? job.writing().number(TEST_DEPTH * MM_PER_METRE, 0) + "\u00a0mm"
                        : job.length(TEST_DEPTH)),
                PLAIN),
            new Block.Text(job.say("hose.bucket"), PLAIN),
            new Block.Table(
                List.of(
                    Column.text(job.say("col.bay")),
                    Column.number(job.say("col.drains")),
                    Column.number(job.say("col.pour")),
                    Column.number(job.say("col.perMinute")),
                    Column.text(job.say("col.dryBelow")),
                    Column.text(job.say("col.seen"))),
                rows),
            new Block.Heading(job.say("hose.look")),
            new Block.Ticks(
                List.of(
                    new Tick("hose-1", job.say("hose.look.1"), ""),
                    new Tick("hose-2", job.say("hose.look.2"), ""),
                    new Tick("hose-3", job.say("hose.look.3"), ""),
                    new Tick("hose-4", job.say("hose.look.4"), ""))),
            new Block.Text(job.say("hose.expected"), PLAIN)));
  }

  /** What of each bay of a field runs to an outlet, m². */
  private Map<String, Double> areas(Job.Place place) {
    Map<String, Double> areas = new HashMap<>();
    String field = place.layout().field() + "/";
    for (OutletShare share : job.design().proof().outlets()) {
      if (share.outlet().startsWith(field)) {
        share.bays().forEach((bay, area) -> areas.merge(bay, area, Double::sum));
      }
    }
    return areas;
  }

  Sheet care() {
    List<Tick> ticks = new ArrayList<>();
    for (int i = 1; i <= CARE_STEPS; i++) {
      ticks.add(new Tick("care-" + i, job.say("care." + i), job.say("care.why." + i)));
    }
    return new Sheet(
        "care",
        job.say("care.title"),
        false,
        List.of(
            new Block.Text(job.say("care.how"), PLAIN),
            new Block.Ticks(ticks),
            new Block.Text(job.say("care.never"), STRONG)));
  }

  /** Where the numbers come from, what was assumed, what is not known. */
  Sheet sources() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(job.say("sources.how"), PLAIN));
    blocks.add(
        new Block.Facts(
            List.of(
                new Block.Fact(job.say("sources.file"), job.design().survey().source().file()),
                new Block.Fact("SHA-256", split(job.design().survey().source().sha256())),
                new Block.Fact(
                    job.say("sources.schema"), job.design().survey().source().ifcSchema()),
                new Block.Fact(
                    job.say("sources.kit"), job.kit().name() + " " + job.kit().version()))));
    blocks.add(new Block.Heading(job.say("sources.decided")));
    for (Job.Place place : job.places()) {
      blocks.add(
          new Block.Text(
              job.say(
                  "sources.field",
                  place.layout().field(),
                  place.mark(),
                  place.field().fallWhy(),
                  place.layout().binding().in(job.writing().units())),
              PLAIN));
    }
    blocks.add(new Block.Heading(job.say("sources.kitValues")));
    blocks.add(kitValues());
    blocks.add(new Block.Heading(job.say("sources.stock")));
    blocks.add(stock());
    notes(blocks);
    return new Sheet("sources", job.say("sources.title"), false, blocks);
  }

  /** In two halves, since it is too long for a narrow page. */
  private static String split(String hash) {
    return hash.substring(0, hash.length() / 2) + " " + hash.substring(hash.length() / 2);
  }

  private Block kitValues() {
    List<List<String>> rows = new ArrayList<>();
    for (KitNumber value : job.kit().family().numbers()) {
      Kit.Sourced sourced = job.kit().values().get(value);
      if (sourced != null) {
        boolean length = value.key().endsWith("Mm");
        rows.add(
            List.of(
                value.meaning(),
                length ? job.length(sourced.value()) : job.writing().number(sourced.value(), 0),
                sourced.source()));
      }
    }
    return new Block.Table(
        List.of(
            Column.text(job.say("col.what")),
            Column.number(job.say("col.value")),
            Column.text(job.say("col.source"))),
        rows);
  }

  private Block stock() {
    return new Block.Table(
        List.of(
            Column.text(job.say("col.what")),
            Column.number(job.say("col.thickness")),
            Column.text(job.say("col.source"))),
        job.kit().stock().stream().map(this::stock).toList());
  }

  private List<String> stock(StockItem item) {
    return List.of(
        item.description(),
        item.thickness() > 0
            ? Quantity.length(item.thickness()).exactlyIn(job.writing().units())
            : "",
        item.source());
  }

  private void notes(List<Block> blocks) {
    List<Finding> notes =
        job.design().findings().stream().filter(f -> f.level() == Level.NOTE).toList();
    if (!notes.isEmpty()) {
      blocks.add(new Block.Heading(job.say("sources.notes")));
      notes.forEach(f -> blocks.add(new Block.Text(f.message(job.writing().units()), PLAIN)));
    }
    int unread = job.design().survey().framing().notMeasured().size();
    if (unread > 0) {
      blocks.add(new Block.Text(job.say("sources.notMeasured", unread), CAUTION));
    }
  }
}
