package org.underlee.report.packet.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.underlee.report.packet.Packet;
import org.underlee.report.packet.Paper;
import org.underlee.report.packet.Sheet;

/**
 * Sets a packet as one PDF: vector drawings, embedded letters, text that can be searched and
 * copied, a bookmark for each sheet. Asks the printer not to scale, since templates are at full
 * size. The same packet gives the same bytes.
 */
public final class PdfWriter {
  private static final int HASH_DIGITS = 15;
  private static final int HEXADECIMAL = 16;

  private PdfWriter() {}

  public static byte[] write(Packet packet, Paper paper) {
    try (PDDocument document = new PDDocument()) {
      Fonts fonts = new Fonts(document);
      Pages pages = new Pages(document, fonts, packet, paper);
      PDDocumentOutline outline = new PDDocumentOutline();
      for (Sheet sheet : packet.sheets()) {
        PDPage first = SheetSetter.set(pages, sheet);
        outline.addLast(bookmark(sheet.title(), first));
      }
      pages.foot();
      document.getDocumentCatalog().setDocumentOutline(outline);
      outline.openNode();
      describe(document, packet);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException("writing a PDF in memory", e);
    }
  }

  private static PDOutlineItem bookmark(String title, PDPage page) {
    PDPageFitDestination destination = new PDPageFitDestination();
    destination.setPage(page);
    PDOutlineItem item = new PDOutlineItem();
    item.setTitle(title);
    item.setDestination(destination);
    return item;
  }

  private static void describe(PDDocument document, Packet packet) {
    document.getDocumentInformation().setTitle(packet.title());
    document.getDocumentInformation().setProducer("Underlee");
    document.getDocumentCatalog().setLanguage(packet.writing().language());
    PDViewerPreferences preferences =
        new PDViewerPreferences(document.getDocumentCatalog().getCOSObject());
    preferences.setDisplayDocTitle(true);
    preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
    document.getDocumentCatalog().setViewerPreferences(preferences);
    document.setDocumentId(Long.parseLong(packet.key().substring(0, HASH_DIGITS), HEXADECIMAL));
  }

  /** The pages so far. */
  static final class Pages {
    static final double MARGIN = 13;
    private static final double FOOT = 8;
    private static final double SMALL = 7.5;
    private static final int GREY = 0x5a646c;

    private final PDDocument document;
    private final Fonts fonts;
    private final Packet packet;
    private final Paper paper;
    private final List<PDPage> all = new ArrayList<>();

    Pages(PDDocument document, Fonts fonts, Packet packet, Paper paper) {
      this.document = document;
      this.fonts = fonts;
      this.packet = packet;
      this.paper = paper;
    }

    /** The same paper in another document. */
    Pages in(PDDocument other) {
      return new Pages(other, fonts, packet, paper);
    }

    PDDocument document() {
      return document;
    }

    Fonts fonts() {
      return fonts;
    }

    Packet packet() {
      return packet;
    }

    double width(boolean wide) {
      return wide ? paper.heightMm() : paper.widthMm();
    }

    double height(boolean wide) {
      return wide ? paper.widthMm() : paper.heightMm();
    }

    /** A new page with its stream, to be closed when it is full. */
    PDPageContentStream open(boolean wide) throws IOException {
      PDPage page =
          new PDPage(
              new org.apache.pdfbox.pdmodel.common.PDRectangle(
                  (float) (width(wide) * Pen.POINTS_PER_MM),
                  (float) (height(wide) * Pen.POINTS_PER_MM)));
      document.addPage(page);
      all.add(page);
      return new PDPageContentStream(document, page);
    }

    PDPage last() {
      return all.get(all.size() - 1);
    }

    /** What stands at the foot of every page, once it is known how many there are. */
    void foot() throws IOException {
      for (int i = 0; i < all.size(); i++) {
        PDPage page = all.get(i);
        double width = page.getMediaBox().getWidth() / Pen.POINTS_PER_MM;
        double height = page.getMediaBox().getHeight() / Pen.POINTS_PER_MM;
        try (PDPageContentStream out =
            new PDPageContentStream(
                document, page, PDPageContentStream.AppendMode.APPEND, true, true)) {
          Pen pen = new Pen(out, fonts, height);
          double y = height - FOOT;
          String number = packet.writing().say("page.footer", i + 1, all.size());
          pen.text(MARGIN, y, fonts.writable(packet.source()), false, SMALL, GREY);
          double end = width - MARGIN - fonts.width(number, false, SMALL);
          pen.text(end, y, number, false, SMALL, GREY);
        }
      }
    }
  }
}
