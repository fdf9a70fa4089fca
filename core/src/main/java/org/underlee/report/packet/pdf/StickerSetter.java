package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.report.packet.Block;

/** Sets labels side by side, with lines to cut along. */
record StickerSetter(PageFlow flow, Setting set) {
  void set(Block.Stickers stickers) throws IOException {
    double wide = 61;
    double tall = 27;
    int across = Math.max(1, (int) Math.floor(flow.room() / wide));
    double each = flow.room() / across;
    int done = 0;
    while (done < stickers.stickers().size()) {
      flow.need(tall);
      int row = Math.min(across, stickers.stickers().size() - done);
      for (int c = 0; c < row; c++) {
        sticker(stickers.stickers().get(done + c), flow.left() + c * each, each, tall);
      }
      flow.down(tall);
      done += row;
    }
  }

  private void sticker(Block.Sticker s, double x, double wide, double tall) {
    double y = flow.y();
    flow.pen()
        .outline(
            List.of(
                new Vec2(x, y),
                new Vec2(x + wide, y),
                new Vec2(x + wide, y + tall),
                new Vec2(x, y + tall)),
            0.15,
            PageFlow.RULE,
            List.of(2.0, 1.0));
    flow.pen().text(x + 3, y + 8, s.label(), true, 15, PageFlow.INK);
    flow.pen().text(x + 3, y + 13.5, s.part(), false, set.body(), PageFlow.INK);
    flow.pen().text(x + 3, y + 18.5, s.size(), true, set.body(), PageFlow.INK);
    flow.pen()
        .fill(
            List.of(
                List.of(
                    new Vec2(x + 3, y + 22.3),
                    new Vec2(x + 7, y + 20.6),
                    new Vec2(x + 7, y + 24.0))),
            PageFlow.ACCENT);
    flow.pen().text(x + 8.5, y + 23.4, s.end(), false, set.cell(), PageFlow.ACCENT);
  }
}
