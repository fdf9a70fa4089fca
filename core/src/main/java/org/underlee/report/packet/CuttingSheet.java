package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.underlee.geom.Vec2;
import org.underlee.kit.StockItem;
import org.underlee.layout.Part;
import org.underlee.picture.PlanBuilder;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanItem;
import org.underlee.picture.PlanStyle;
import org.underlee.report.packet.Block.Column;
import org.underlee.takeoff.Stick;
import org.underlee.takeoff.Takeoff;

/** How each bought length is cut: a bar to scale, and the labels piece by piece. */
record CuttingSheet(Job job) {
  /** Bars of all lengths are drawn this high and wide, metres on a drawing of 1:10. */
  private static final double BAR_WIDE = 1.75;

  private static final double BAR_HIGH = 0.09;
  private static final double APART = 0.075;

  /** Where between two bars the lower one's name stands. */
  private static final double NAME_UP = 0.32;

  private static final double BAR_SHARE = 0.6;

  /** A piece narrower than this on the drawing has its text left to the table. */
  private static final double ROOM_FOR_TEXT = 0.11;

  /** A ripped piece lower than this share of the bar, too. */
  private static final double HIGH_FOR_TEXT = 0.45;

  private static final int LETTERS = 26;

  private static final PlanStyle PIECE = PlanStyle.lined("piece", 0x3f6378, 0.2).filled(0xdbe9f0);
  private static final PlanStyle REST =
      PlanStyle.lined("rest", 0x9aa3aa, 0.15).filled(0xf4f4f2).dashed(1, 1);

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(job.say("stock.how"), PLAIN));
    for (StockItem item : job.kit().stock()) {
      List<Takeoff.Stock> own =
          job.design().takeoff().stock().stream().filter(s -> s.item().equals(item.id())).toList();
      if (!own.isEmpty()) {
        blocks.add(new Block.Heading(job.name(item)));
        List<Cutting> cuttings = cuttings(item, own);
        blocks.add(
            new Block.Drawing(
                "cutting-" + item.id(),
                job.say("stock.caption", job.name(item)),
                bars(cuttings),
                BAR_SHARE,
                java.util.Optional.empty()));
        blocks.add(table(cuttings));
      }
    }
    return new Sheet("cutting", job.say("stock.title"), false, blocks);
  }

  /**
   * One pattern.
   *
   * @param name letter of the pattern
   * @param sticks for each stick its cross-cuts in the order of the pattern, and of each its pieces
   */
  record Cutting(String name, Takeoff.Stock stock, StockItem item, List<List<List<Part>>> sticks) {}

  /** Gives every piece of an item its stick; each piece is given once. */
  private List<Cutting> cuttings(StockItem item, List<Takeoff.Stock> stock) {
    List<Part> left =
        new ArrayList<>(
            job.design().layout().parts().stream()
                .filter(p -> p.item().equals(item.id()))
                .toList());
    List<Cutting> cuttings = new ArrayList<>();
    for (Takeoff.Stock own : stock) {
      List<List<List<Part>>> sticks = new ArrayList<>();
      for (int i = 0; i < own.pieces(); i++) {
        sticks.add(
            own.blocks().stream()
                .map(b -> b.pieces().stream().map(p -> taken(left, p)).toList())
                .toList());
      }
      cuttings.add(new Cutting(letter(cuttings.size()), own, item, sticks));
    }
    return cuttings;
  }

  /** A to Z, then A2 to Z2 and so on. */
  private static String letter(int index) {
    String letter = Character.toString('A' + index % LETTERS);
    return index < LETTERS ? letter : letter + (index / LETTERS + 1);
  }

  /** The part that is most like a piece, in length and in the width of its flat sheet. */
  private static Part taken(List<Part> left, Stick.Piece piece) {
    Part part =
        left.stream()
            .min(
                Comparator.comparingDouble(
                    p ->
                        Math.abs(p.cutLength() - piece.length())
                            + Math.abs(p.sheetWidth().stream().sum() - piece.width())))
            .orElseThrow();
    left.remove(part);
    return part;
  }

  private PlanDrawing bars(List<Cutting> cuttings) {
    PlanBuilder plan = new PlanBuilder();
    double longest =
        cuttings.stream().mapToDouble(c -> c.stock().stockLength()).max().orElseThrow();
    double scale = BAR_WIDE / longest;
    double y = 0;
    for (Cutting cutting : cuttings) {
      y -= BAR_HIGH + APART;
      bar(plan, cutting, scale, y);
    }
    return plan.build(job.say("stock.title"));
  }

  private void bar(PlanBuilder plan, Cutting cutting, double scale, double y) {
    Takeoff.Stock stock = cutting.stock();
    rectangle(plan, 0, y, new Vec2(stock.stockLength() * scale, BAR_HIGH), REST);
    double x = 0;
    for (Stick.Block block : stock.blocks()) {
      pieces(plan, new Vec2(x * scale, y), scale, cutting.item(), block);
      x += block.length() + cutting.item().kerf();
    }
    if (stock.offcut() * scale > ROOM_FOR_TEXT) {
      double middle = stock.stockLength() - stock.offcut() / 2;
      text(
          plan,
          middle * scale,
          y + BAR_HIGH / 2,
          job.say("stock.rest", job.length(stock.offcut())));
    }
    plan.label(
        new Vec2(0, y + BAR_HIGH + APART * NAME_UP),
        job.say("stock.times", stock.pieces(), job.length(stock.stockLength()), cutting.name())
            .replace('\u00a0', ' '),
        PlanBuilder.TEXT_MM,
        PlanItem.Anchor.START,
        0,
        PlanStyle.NOTE);
  }

  /** What is ripped lies side by side, the widest below, with the saw cuts between. */
  private void pieces(PlanBuilder plan, Vec2 at, double scale, StockItem item, Stick.Block block) {
    boolean ripped = block.pieces().size() > 1;
    double up = BAR_HIGH / (ripped ? item.shop().ripWidth() : 1);
    double y = at.y();
    for (Stick.Piece piece : block.pieces()) {
      double high = ripped ? piece.width() * up : BAR_HIGH;
      double wide = piece.length() * scale;
      rectangle(plan, at.x(), y, new Vec2(wide, high), PIECE);
      if (wide > ROOM_FOR_TEXT && high >= BAR_HIGH * HIGH_FOR_TEXT) {
        text(plan, at.x() + wide / 2, y + high / 2, job.cut(piece.length()));
      }
      y += high + item.kerf() * up;
    }
  }

  private static void rectangle(PlanBuilder plan, double x, double y, Vec2 size, PlanStyle style) {
    plan.area(
        List.of(
            new Vec2(x, y),
            new Vec2(x + size.x(), y),
            new Vec2(x + size.x(), y + size.y()),
            new Vec2(x, y + size.y())),
        style);
  }

  private static void text(PlanBuilder plan, double x, double y, String text) {
    plan.label(
        new Vec2(x, y),
        text.replace('\u00a0', ' '),
        PlanBuilder.SMALL_TEXT_MM,
        PlanItem.Anchor.MIDDLE,
        0,
        PlanStyle.NOTE);
  }

  /** Sticks with one piece each need no order. */
  private List<String> alike(Cutting cutting) {
    return List.of(
        cutting.name(),
        job.length(cutting.stock().stockLength()),
        job.say(
            "stock.each",
            job.cut(cutting.stock().pattern().get(0)),
            cutting.sticks().stream()
                .map(s -> s.get(0).get(0).label())
                .collect(Collectors.joining(" "))),
        job.length(cutting.stock().offcut()));
  }

  /** {@code P1 2 m}, or with widths where ripped: {@code (P1 2 m × 0.3 m | P2 1.9 m × 0.29 m)}. */
  private String block(List<Part> pieces) {
    boolean ripped = pieces.size() > 1;
    String all = pieces.stream().map(p -> piece(p, ripped)).collect(Collectors.joining(" | "));
    return ripped ? "(" + all + ")" : all;
  }

  private String piece(Part part, boolean ripped) {
    String wide = ripped ? " × " + job.cut(part.sheetWidth().stream().sum()) : "";
    return (part.label() + " " + job.cut(part.cutLength()) + wide).replace(' ', '\u00a0');
  }

  private Block table(List<Cutting> cuttings) {
    List<List<String>> rows = new ArrayList<>();
    for (Cutting cutting : cuttings) {
      if (cutting.stock().pattern().size() == 1 && !cutting.stock().isRipped()) {
        rows.add(alike(cutting));
        continue;
      }
      for (int i = 0; i < cutting.sticks().size(); i++) {
        rows.add(
            List.of(
                cutting.name() + (cutting.sticks().size() > 1 ? i + 1 : ""),
                job.length(cutting.stock().stockLength()),
                cutting.sticks().get(i).stream().map(this::block).collect(Collectors.joining(", ")),
                job.length(cutting.stock().offcut())));
      }
    }
    return new Block.Table(
        List.of(
            Column.text(job.say("col.stick")),
            Column.number(job.say("col.stock")),
            Column.text(job.say("col.inOrder")),
            Column.number(job.say("col.rest"))),
        rows);
  }
}
