package org.underlee.picture;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Writes PNG (ISO/IEC 15948): 8-bit true colour, no alpha, no time stamp. The bytes are the same
 * for the same pixels wherever the Java runtime carries the same zlib; the pixels are the same
 * everywhere.
 */
public final class Png {
  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
  private static final int CHANNELS = 3;
  private static final byte FILTER_SUB = 1;
  private static final byte FILTER_UP = 2;

  private Png() {}

  public static byte[] encode(Image image) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.write(SIGNATURE);
      chunk(out, "IHDR", header(image));
      chunk(out, "IDAT", rows(image));
      chunk(out, "IEND", new byte[0]);
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory", e);
    }
    return bytes.toByteArray();
  }

  private static byte[] header(Image image) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.writeInt(image.width());
    out.writeInt(image.height());
    out.write(new byte[] {8, 2, 0, 0, 0}); // bits, true colour, deflate, filters, not interlaced
    return bytes.toByteArray();
  }

  /**
   * The picture's rows, red, green and blue of 8 bits, each row behind the number of its filter;
   * all of it deflated. What stands in a PNG's {@code IDAT}, and as it is in a PDF.
   */
  public static byte[] rows(Image image) throws IOException {
    Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater)) {
      byte[] above = new byte[image.width() * CHANNELS];
      for (int y = 0; y < image.height(); y++) {
        byte[] row = row(image, y);
        byte[] bySub = filtered(row, row, CHANNELS);
        byte[] byUp = filtered(row, above, 0);
        boolean up = cost(byUp) <= cost(bySub);
        out.write(up ? FILTER_UP : FILTER_SUB);
        out.write(up ? byUp : bySub);
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

  /** The row less what stands {@code back} bytes before in {@code base}. */
  private static byte[] filtered(byte[] row, byte[] base, int back) {
    byte[] out = new byte[row.length];
    for (int i = 0; i < row.length; i++) {
      out[i] = (byte) (row[i] - (i < back ? 0 : base[i - back]));
    }
    return out;
  }

  /** The standard's advice (section 12.8): the filter with the least sum of sizes packs best. */
  private static long cost(byte[] filtered) {
    long sum = 0;
    for (byte b : filtered) {
      sum += Math.abs(b);
    }
    return sum;
  }

  private static void chunk(DataOutputStream out, String type, byte[] data) throws IOException {
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 crc = new CRC32();
    crc.update(name);
    crc.update(data);
    out.writeInt(data.length);
    out.write(name);
    out.write(data);
    out.writeInt((int) crc.getValue());
  }
}
