package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.util.List;
import org.underlee.picture.PlanSheet;
import org.underlee.picture.ScaledDrawing;
import org.underlee.report.packet.Block;
import org.underlee.report.packet.Writing;

/** Sets drawings, templates and pictures with their captions. */
record FigureSetter(PageFlow flow, Setting set) {
  /** Free paper below a caption, mm. */
  private static final double AFTER = 4;

  void set(Block.Drawing drawing) throws IOException {
    PlanSheet paper = paper(drawing);
    Writing writing = flow.pages().packet().writing();
    boolean hasScale = drawing.drafted().isPresent();
    String caption = drawing.caption();
    place(
        drawing.plan(),
        paper,
        hasScale ? writing.say("drawing.scale", caption, scale(paper)) : caption);
  }

  /** What a drawing takes of a page, mm, with one line of caption. */
  double least(Block.Drawing drawing) {
    return paper(drawing).heightMm() + set.cellStep() + AFTER;
  }

  private PlanSheet paper(Block.Drawing drawing) {
    double most = (flow.height() - 2 * Pages.MARGIN - 12) * drawing.share() * set.scale();
    boolean metric = flow.pages().packet().writing().isMetric();
    return PlanSheet.fitting(
        drawing.plan(),
        flow.room(),
        most,
        1,
        metric ? PlanSheet.METRIC_SCALES : PlanSheet.INCH_SCALES);
  }

  private static String scale(PlanSheet paper) {
    return "1:" + Math.round(paper.denominator());
  }

  void set(Block.Template template) throws IOException {
    place(template.plan(), PlanSheet.of(template.plan(), 1, 1), template.caption());
  }

  private void place(ScaledDrawing plan, PlanSheet paper, String caption) throws IOException {
    double step = set.cellStep();
    List<String> lines = Lines.of(caption, flow.fonts(), false, set.cell(), flow.room());
    flow.need(paper.heightMm() + lines.size() * step + AFTER);
    double x = flow.left() + Math.max(0, (flow.room() - paper.widthMm()) / 2);
    new DrawingOnPage(flow.pen(), flow.fonts(), paper, x, flow.y())
        .draw(plan.at(paper.denominator()));
    flow.down(paper.heightMm());
    for (String line : lines) {
      flow.down(step);
      flow.pen().text(flow.left(), flow.y(), line, false, set.cell(), PageFlow.GREY);
    }
    flow.down(AFTER);
  }

  void set(Block.Picture picture) throws IOException {
    double wide = flow.room() * set.scale();
    double tall = wide * picture.image().height() / picture.image().width();
    flow.need(tall + 8);
    flow.pen().image(picture.image(), flow.left(), flow.y(), wide, tall);
    flow.down(tall + set.cellStep());
    flow.pen().text(flow.left(), flow.y(), picture.caption(), false, set.cell(), PageFlow.GREY);
    flow.down(3);
  }
}
