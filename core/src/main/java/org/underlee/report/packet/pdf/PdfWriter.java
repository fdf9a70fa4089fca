package org.underlee.report.packet.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
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
      Pages pages = new PdfPages(document, fonts, packet, paper);
      PDDocumentOutline outline = new PDDocumentOutline();
      for (Sheet sheet : packet.sheets()) {
        int first = pages.count();
        SheetSetter.set(pages, sheet);
        outline.addLast(bookmark(sheet.title(), document.getPage(first)));
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
  private static final class PdfPages extends Pages {
    private final PDDocument document;

    PdfPages(PDDocument document, Fonts fonts, Packet packet, Paper paper) {
      super(fonts, packet, paper);
      this.document = document;
    }

    @Override
    Pen turn(boolean wide) throws IOException {
      PDRectangle size =
          new PDRectangle(
              (float) (width(wide) * Pen.POINTS_PER_MM),
              (float) (height(wide) * Pen.POINTS_PER_MM));
      PDPage page = new PDPage(size);
      document.addPage(page);
      return new PdfPen(document, new PDPageContentStream(document, page), fonts(), height(wide));
    }

    @Override
    Pen again(int number) throws IOException {
      PDPage page = document.getPage(number);
      PDPageContentStream out =
          new PDPageContentStream(
              document, page, PDPageContentStream.AppendMode.APPEND, true, true);
      return new PdfPen(document, out, fonts(), page.getMediaBox().getHeight() / Pen.POINTS_PER_MM);
    }
  }
}
