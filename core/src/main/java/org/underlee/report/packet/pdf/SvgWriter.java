package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.underlee.report.packet.Packet;
import org.underlee.report.packet.Paper;
import org.underlee.report.packet.Sheet;

/** Sets a packet as SVG, each page a file of its own, by the same setter as the PDF. */
public final class SvgWriter {
  private SvgWriter() {}

  /** The pages by the name of their sheet and their number in it: {@code marks-2}. */
  public static Map<String, String> write(Packet packet, Paper paper) {
    // The letters are only measured: the document is not written.
    try (PDDocument scrap = new PDDocument()) {
      SvgPages pages = new SvgPages(new Fonts(scrap), packet, paper);
      List<String> names = new ArrayList<>();
      for (Sheet sheet : packet.sheets()) {
        int first = pages.count();
        pages.title = sheet.title();
        SheetSetter.set(pages, sheet);
        for (int i = first; i < pages.count(); i++) {
          names.add(sheet.id() + "-" + (1 + i - first));
        }
      }
      pages.foot();
      Map<String, String> files = new LinkedHashMap<>();
      for (int i = 0; i < names.size(); i++) {
        files.put(names.get(i), pages.all.get(i).file());
      }
      return files;
    } catch (IOException e) {
      throw new UncheckedIOException("setting pages in memory", e);
    }
  }

  /** The pages so far. */
  private static final class SvgPages extends Pages {
    private final List<SvgPen> all = new ArrayList<>();
    private String title = "";

    SvgPages(Fonts fonts, Packet packet, Paper paper) {
      super(fonts, packet, paper);
    }

    @Override
    Pen turn(boolean wide) {
      all.add(new SvgPen(fonts(), width(wide), height(wide), title));
      return all.get(all.size() - 1);
    }

    @Override
    Pen again(int page) {
      return all.get(page);
    }
  }
}
