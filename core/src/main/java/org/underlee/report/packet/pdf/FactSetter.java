package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.underlee.report.packet.Block;

/** Sets names with their values, in as many columns as have room. */
record FactSetter(PageFlow flow, Setting set) {

  void set(Block.Facts facts) throws IOException {
    double nameRoom = widest(facts.facts().stream().map(Block.Fact::name), false);
    double valueRoom = widest(facts.facts().stream().map(Block.Fact::value), true);
    double one = nameRoom + valueRoom + 10;
    int columns = (int) Math.max(1, Math.min(4, Math.floor(flow.room() / one)));
    double across = flow.room() / columns;
    double step = set.bodyStep() + 0.9;
    int rows = (facts.facts().size() + columns - 1) / columns;
    double valueAt = columns > 1 ? nameRoom + 3 : Math.min(nameRoom + 4, across / 2);
    for (int r = 0; r < rows; r++) {
      List<List<String>> values = new ArrayList<>();
      int tallest = 1;
      for (int c = 0; c < columns; c++) {
        int i = c * rows + r;
        List<String> lines =
            i < facts.facts().size()
                ? Lines.of(
                    facts.facts().get(i).value(),
                    flow.fonts(),
                    true,
                    set.body(),
                    across - valueAt - 2)
                : List.of();
        values.add(lines);
        tallest = Math.max(tallest, lines.size());
      }
      flow.need(step * tallest);
      flow.down(step);
      for (int c = 0; c < columns; c++) {
        double x = flow.left() + c * across;
        int i = c * rows + r;
        if (i < facts.facts().size()) {
          flow.pen()
              .text(
                  x, flow.y() - 1.3, facts.facts().get(i).name(), false, set.body(), PageFlow.GREY);
        }
        for (int l = 0; l < values.get(c).size(); l++) {
          double lineY = flow.y() - 1.3 + l * set.bodyStep();
          flow.pen().text(x + valueAt, lineY, values.get(c).get(l), true, set.body(), PageFlow.INK);
        }
      }
      flow.down((tallest - 1) * set.bodyStep());
    }
    flow.down(1.5);
  }

  private double widest(Stream<String> texts, boolean heavy) {
    Fonts fonts = flow.fonts();
    return texts
        .mapToDouble(t -> fonts.width(fonts.writable(t), heavy, set.body()))
        .max()
        .orElse(0);
  }
}
