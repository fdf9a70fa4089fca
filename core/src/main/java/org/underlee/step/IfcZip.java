package org.underlee.step;

import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * Takes the one model out of an {@code .ifczip} archive. The archive is read from its beginning and
 * what its directory says about lengths is not believed: the bytes that come out are counted.
 *
 * <p>Refused with an {@link InputException}: no or several {@code .ifc} entries, more entries or a
 * higher ratio than the {@link StepLimits} allow, names that are absolute or lead out of a folder,
 * encrypted or damaged archives, models of 2 GiB or more.
 */
public final class IfcZip {
  /** How an archive begins: with an entry, or with the end when there is none. */
  private static final String[] SIGNATURES = {"PK\3\4", "PK\5\6"};

  private static final int MOST_BYTES = Integer.MAX_VALUE - 8;

  private final String name;
  private final StepLimits limits;

  private IfcZip(String name, StepLimits limits) {
    this.name = name;
    this.limits = limits;
  }

  /** Whether the first bytes of a file are those of a ZIP archive. */
  public static boolean isZip(byte[] firstBytes) {
    for (String signature : SIGNATURES) {
      boolean same = firstBytes.length >= signature.length();
      for (int i = 0; same && i < signature.length(); i++) {
        same = firstBytes[i] == signature.charAt(i);
      }
      if (same) {
        return true;
      }
    }
    return false;
  }

  /** The bytes of the model in an archive that is in memory. */
  public static byte[] model(byte[] archive, String name) {
    return model(archive, name, StepLimits.STANDARD);
  }

  static byte[] model(byte[] archive, String name, StepLimits limits) {
    try {
      return model(new ByteArrayInputStream(archive), name, limits);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + name + ": " + e.getMessage(), e);
    }
  }

  /**
   * The bytes of the model in an archive.
   *
   * @throws IOException when the stream itself cannot be read
   */
  static byte[] model(InputStream archive, String name, StepLimits limits) throws IOException {
    return new IfcZip(name, limits).model(archive);
  }

  private byte[] model(InputStream archive) throws IOException {
    Packed packed = new Packed(archive);
    try (ZipInputStream zip = new ZipInputStream(packed)) {
      return model(zip, packed)
          .orElseThrow(
              () -> refused("has no *.ifc entry", "Choose an archive that holds an IFC model."));
    } catch (ZipException | java.io.EOFException | IllegalArgumentException e) {
      String what = e.getMessage() == null ? "it ends too early" : e.getMessage();
      throw refused("is damaged or of an unusual kind: " + what, "Pack the model again as a ZIP.");
    }
  }

  private Optional<byte[]> model(ZipInputStream zip, Packed packed) throws IOException {
    Optional<byte[]> model = Optional.empty();
    int entries = 0;
    for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
      if (++entries > limits.zipEntries()) {
        throw refused("has more than " + limits.zipEntries() + " entries", "Pack the model alone.");
      }
      requireHarmless(entry.getName());
      Unpacked unpacked = new Unpacked(zip, packed, entry.getName());
      if (!isModel(entry)) {
        unpacked.transferTo(java.io.OutputStream.nullOutputStream());
      } else if (model.isPresent()) {
        throw refused("has more than one *.ifc entry", "Pack the model alone.");
      } else {
        model = Optional.of(read(unpacked));
      }
    }
    return model;
  }

  private byte[] read(Unpacked unpacked) throws IOException {
    byte[] bytes = unpacked.readNBytes(MOST_BYTES);
    if (unpacked.read() >= 0) {
      throw refused("holds a model of 2 GiB or more", "Take the *.ifc file out of it first.");
    }
    return bytes;
  }

  private static boolean isModel(ZipEntry entry) {
    String name = entry.getName().toLowerCase(Locale.ROOT);
    // "._name" holds what some systems know about a file beside it, not the file.
    boolean shadow = name.substring(name.lastIndexOf('/') + 1).startsWith("._");
    return name.endsWith(".ifc") && !shadow;
  }

  private void requireHarmless(String entry) {
    String path = entry.replace('\\', '/');
    boolean absolute = path.startsWith("/") || path.matches("[A-Za-z]:.*");
    boolean leadsOut = ("/" + path + "/").contains("/../");
    if (absolute || leadsOut) {
      throw refused(
          "has the entry \"" + entry + "\", which points out of the archive",
          "Do not unpack it; ask its author for the model.");
    }
  }

  private InputException refused(String what, String advice) {
    return new InputException(Place.NOWHERE.inFile(name), "the archive " + what, advice);
  }

  /** Counts what is taken from the archive. */
  private static final class Packed extends FilterInputStream {
    private long bytes;

    Packed(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      int b = super.read();
      bytes += b < 0 ? 0 : 1;
      return b;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
      int n = super.read(into, from, length);
      bytes += Math.max(n, 0);
      return n;
    }
  }

  /** One entry, whose bytes are counted as they come out. */
  private final class Unpacked extends FilterInputStream {
    private final Packed packed;
    private final String entry;
    private final long packedBefore;
    private long bytes;

    Unpacked(ZipInputStream zip, Packed packed, String entry) {
      super(zip);
      this.packed = packed;
      this.entry = entry;
      this.packedBefore = packed.bytes;
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
      int n = super.read(into, from, length);
      bytes += Math.max(n, 0);
      long in = packed.bytes - packedBefore;
      if (bytes > StepLimits.ZIP_FREE_BYTES + in * limits.zipRatio()) {
        throw refused(
            "has the entry \""
                + entry
                + "\", which unpacks to more than "
                + limits.zipRatio()
                + " times its size",
            "Do not unpack it; ask its author for the model. If you trust it, allow more with"
                + " --zip-ratio-limit.");
      }
      return n;
    }
  }
}
