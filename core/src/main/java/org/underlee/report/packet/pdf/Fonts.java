package org.underlee.report.packet.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.underlee.report.packet.Packet;

/** The two letters of a packet, embedded as far as they are used; and what they cannot write. */
final class Fonts {
  private static final double MM_PER_POINT = 25.4 / 72;
  private static final double PER_THOUSAND = 1000;

  /** Stands for a character that the letters do not have. */
  private static final String UNKNOWN = "?";

  private final PDFont plain;
  private final PDFont bold;
  private final Map<Integer, Boolean> known = new HashMap<>();
  private final Map<String, Double> widths = new HashMap<>();

  Fonts(PDDocument document) throws IOException {
    this.plain = load(document, "OpenSans-Regular.ttf");
    this.bold = load(document, "OpenSans-Bold.ttf");
  }

  private static PDFont load(PDDocument document, String name) throws IOException {
    try (InputStream in = Packet.class.getResourceAsStream(name)) {
      TrueTypeFont font = new TTFParser().parse(RandomAccessReadBuffer.createBufferFromStream(in));
      // Joined letters are looked for anew in every text, which is most of the time of a table.
      font.setEnableGsub(false);
      return PDType0Font.load(document, font, true);
    }
  }

  PDFont of(boolean heavy) {
    return heavy ? bold : plain;
  }

  /** The text with what the letters lack replaced. */
  String writable(String text) {
    StringBuilder safe = new StringBuilder(text.length());
    text.codePoints().forEach(c -> safe.append(isKnown(c) ? Character.toString(c) : UNKNOWN));
    return safe.toString();
  }

  private boolean isKnown(int codePoint) {
    return known.computeIfAbsent(codePoint, this::looksUp);
  }

  private boolean looksUp(int codePoint) {
    try {
      bold.encode(Character.toString(codePoint));
      plain.encode(Character.toString(codePoint));
      return true;
    } catch (IllegalArgumentException | IOException e) {
      return false;
    }
  }

  /** Width of a writable text, mm. */
  double width(String text, boolean heavy, double sizePoints) {
    double units = widths.computeIfAbsent((heavy ? "b" : "p") + text, t -> units(text, heavy));
    return units / PER_THOUSAND * sizePoints * MM_PER_POINT;
  }

  private double units(String text, boolean heavy) {
    try {
      return of(heavy).getStringWidth(text);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException("reading a font in memory", e);
    }
  }
}
