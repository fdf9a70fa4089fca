package org.underlee.report.packet.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.underlee.picture.Image;
import org.underlee.picture.Png;

/** Puts a raster picture into a PDF, packed without loss with the predictor of PNG. */
final class Pixels {
  private static final int CHANNELS = 3;
  private static final int BITS = 8;

  /** PNG predictors (ISO 32000-1, table 8); each row says which. */
  private static final int PREDICTOR = 15;

  private Pixels() {}

  static PDImageXObject of(PDDocument document, Image image) throws IOException {
    PDImageXObject object =
        new PDImageXObject(
            document,
            new ByteArrayInputStream(Png.rows(image)),
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
}
