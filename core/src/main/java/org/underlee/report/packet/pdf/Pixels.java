package org.underlee.report.packet.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.underlee.picture.Image;

/** Puts a raster picture into a PDF, packed without loss with the predictor of PNG. */
final class Pixels {
  private static final int CHANNELS = 3;
  private static final int BITS = 8;

  /** PNG predictors (ISO 32000-1, table 8); each row says which: up. */
  private static final int PREDICTOR = 15;

  private static final int UP = 2;

  private Pixels() {}

  static PDImageXObject of(PDDocument document, Image image) throws IOException {
    PDImageXObject object =
        new PDImageXObject(
            document,
            new ByteArrayInputStream(packed(image)),
            COSName.FLATE_DECODE,
            image.width(),
            image.height(),
            BITS,
            PDDeviceRGB.INSTANCE);
    COSDictionary how = new COSDictionary();
    how.setInt(COSName.PREDICTOR, PREDICTOR);
    how.setInt(COSName.COLORS, CHANNELS);
    how.setInt(COSName.COLUMNS, image.width());
    object.getCOSObject().setItem(COSName.DECODE_PARMS, how);
    return object;
  }

  private static byte[] packed(Image image) throws IOException {
    Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater)) {
      byte[] above = new byte[image.width() * CHANNELS];
      for (int r = 0; r < image.height(); r++) {
        byte[] row = row(image, r);
        out.write(UP);
        for (int i = 0; i < row.length; i++) {
          out.write(row[i] - above[i]);
        }
        above = row;
      }
    } finally {
      deflater.end();
    }
    return bytes.toByteArray();
  }

  private static byte[] row(Image image, int y) {
    byte[] row = new byte[image.width() * CHANNELS];
    for (int x = 0, k = 0; x < image.width(); x++) {
      int argb = image.argb(x, y);
      row[k++] = (byte) (argb >> 16);
      row[k++] = (byte) (argb >> 8);
      row[k++] = (byte) argb;
    }
    return row;
  }
}
