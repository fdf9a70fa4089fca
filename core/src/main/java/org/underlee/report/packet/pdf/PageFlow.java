package org.underlee.report.packet.pdf;

import java.io.IOException;
import org.underlee.report.packet.Sheet;

/** Where the next thing of a sheet goes: down the page, and over to the next. Millimetres. */
final class PageFlow implements AutoCloseable {
  static final int INK = 0x1b242c;
  static final int GREY = 0x5a646c;
  static final int RULE = 0xb9c2c9;
  static final int ACCENT = 0x2c565c;

  private static final double FOOT_ROOM = 13;

  private final Pages pages;
  private final Sheet sheet;
  private final Setting setting;
  private int count = 1;
  private Pen pen;
  private double y;
  private double top;

  PageFlow(Pages pages, Sheet sheet, Setting setting) throws IOException {
    this.pages = pages;
    this.sheet = sheet;
    this.setting = setting;
    this.pen = pages.open(sheet.wide());
    title();
  }

  private void title() {
    y = Pages.MARGIN + Setting.mm(setting.title());
    pen.text(left(), y - 1, sheet.title(), true, setting.title(), ACCENT);
    pen.line(left(), y + 1.6, left() + room(), y + 1.6, 0.5, ACCENT);
    y += 6;
    top = y;
  }

  void turnPage() throws IOException {
    pen.close();
    pen = pages.open(sheet.wide());
    count++;
    y = Pages.MARGIN + Setting.mm(setting.head());
    pen.text(left(), y - 1, sheet.title(), true, setting.head(), GREY);
    pen.line(left(), y + 1, left() + room(), y + 1, 0.25, RULE);
    y += 5;
    top = y;
  }

  /** Makes sure that so much fits below. */
  void need(double mm) throws IOException {
    if (y + mm > bottom() && y > top) {
      turnPage();
    }
  }

  void down(double mm) {
    y += mm;
  }

  double y() {
    return y;
  }

  double left() {
    return Pages.MARGIN;
  }

  double room() {
    return pages.width(sheet.wide()) - 2 * Pages.MARGIN;
  }

  double height() {
    return pages.height(sheet.wide());
  }

  double bottom() {
    return height() - FOOT_ROOM;
  }

  /** Of a fresh page, what can be filled. */
  double free() {
    return bottom() - top;
  }

  /** The share of the last page that is filled. */
  double filled() {
    return (y - top) / free();
  }

  int count() {
    return count;
  }

  Pages pages() {
    return pages;
  }

  Setting setting() {
    return setting;
  }

  Fonts fonts() {
    return pages.fonts();
  }

  /** Of the page that is being filled: ask anew after a page is turned. */
  Pen pen() {
    return pen;
  }

  @Override
  public void close() throws IOException {
    pen.close();
  }
}
