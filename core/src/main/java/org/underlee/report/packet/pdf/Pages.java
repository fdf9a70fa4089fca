package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.underlee.report.packet.Packet;
import org.underlee.report.packet.Paper;

/** Pages of one paper, filled one after another, upright or on their side. */
abstract class Pages {
  static final double MARGIN = 13;
  private static final double FOOT = 8;
  private static final double SMALL = 7.5;

  private final Fonts fonts;
  private final Packet packet;
  private final Paper paper;
  private final List<Boolean> wide = new ArrayList<>();

  Pages(Fonts fonts, Packet packet, Paper paper) {
    this.fonts = fonts;
    this.packet = packet;
    this.paper = paper;
  }

  /** A new page; its pen is to be closed when the page is full. */
  final Pen open(boolean onItsSide) throws IOException {
    wide.add(onItsSide);
    return turn(onItsSide);
  }

  /** Lays a new page below the pen. */
  abstract Pen turn(boolean onItsSide) throws IOException;

  /** A pen to add something to a page that was laid aside, counted from 0. */
  abstract Pen again(int page) throws IOException;

  final Fonts fonts() {
    return fonts;
  }

  final Packet packet() {
    return packet;
  }

  final Paper paper() {
    return paper;
  }

  final double width(boolean onItsSide) {
    return onItsSide ? paper.heightMm() : paper.widthMm();
  }

  final double height(boolean onItsSide) {
    return onItsSide ? paper.widthMm() : paper.heightMm();
  }

  final int count() {
    return wide.size();
  }

  /** What stands at the foot of every page, once it is known how many there are. */
  final void foot() throws IOException {
    for (int i = 0; i < count(); i++) {
      try (Pen pen = again(i)) {
        double y = height(wide.get(i)) - FOOT;
        String number = packet.writing().say("page.footer", i + 1, count());
        pen.text(MARGIN, y, fonts.writable(packet.source()), false, SMALL, PageFlow.GREY);
        double end = width(wide.get(i)) - MARGIN - fonts.width(number, false, SMALL);
        pen.text(end, y, number, false, SMALL, PageFlow.GREY);
      }
    }
  }
}
