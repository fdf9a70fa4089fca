package org.underlee.writeback;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import org.underlee.finding.InputException;
import org.underlee.step.ByteRange;
import org.underlee.step.Sha256;
import org.underlee.step.StepFile;

/**
 * Takes our block out of a drained model, which leaves the designer's file, byte for byte. Where
 * another program saved the model and the marks around the block are gone, our instances are taken
 * out one by one.
 */
public final class Strip {
  /** The property set that every assembly of ours carries. */
  public static final String LAYOUT_SET = "Underlee_Layout";

  /** By what size a downspout is called: the standard's property, in a set of ours in IFC2X3. */
  public static final String NOMINAL_DIAMETER = "NominalDiameter";

  /** In the marks and in the name of the property set. */
  private static final String IN_ALL_OF_OURS = "Underlee";

  private static final String LAYOUT_NAME = "'" + LAYOUT_SET + "'";

  private Strip() {}

  /** A file without our block. */
  public static final class Stripped {
    private final byte[] bytes;
    private final boolean exact;

    Stripped(byte[] bytes, boolean exact) {
      this.bytes = bytes;
      this.exact = exact;
    }

    /** The bytes themselves, not a copy: only for reading. */
    public byte[] bytes() {
      return bytes;
    }

    /**
     * Whether it is the original by its SHA-256. If not, someone has edited or saved the drained
     * model, and what they changed outside the assembly is kept.
     */
    public boolean exact() {
      return exact;
    }
  }

  /**
   * Whether a file may hold anything of ours, told without its bytes in one array. A model of any
   * size that has never seen this program is known for one at once.
   */
  public static boolean mayHold(StepFile file) {
    return file.holds(IN_ALL_OF_OURS);
  }

  /**
   * The file without our block; empty when it has none.
   *
   * @throws InputException when the block is not whole or of an unknown format
   */
  public static Optional<Stripped> original(byte[] drained) {
    Optional<Markers.Found> block = Markers.find(drained);
    if (block.isEmpty() && holdsUnmarked(drained)) {
      return Optional.of(new Stripped(Unmarked.without(drained), false));
    }
    return block.map(found -> without(drained, found));
  }

  /**
   * Where our block lies in a file; empty when it has none.
   *
   * @throws InputException when the block is not whole or of an unknown format
   */
  public static Optional<ByteRange> block(byte[] drained) {
    return Markers.find(drained).map(Markers.Found::range);
  }

  /**
   * Whether a file holds an assembly of ours whose marks are gone: another program that saves a
   * drained model keeps the instances and drops the comments around them.
   */
  public static boolean holdsUnmarked(byte[] file) {
    byte[] name = LAYOUT_NAME.getBytes(StandardCharsets.US_ASCII);
    for (int at = 0; at + name.length <= file.length; at++) {
      if (file[at] == name[0] && Arrays.equals(file, at, at + name.length, name, 0, name.length)) {
        return Markers.find(file).isEmpty();
      }
    }
    return false;
  }

  private static Stripped without(byte[] drained, Markers.Found found) {
    Stripped plain = check(cut(drained, found.range()), found);
    if (plain.exact()) {
      return plain;
    }
    // A file whose ENDSEC shares a line with what is before it was given a line end there.
    for (int lineEnd = 1; lineEnd <= 2 && lineEnd <= found.range().from(); lineEnd++) {
      ByteRange wider = new ByteRange(found.range().from() - lineEnd, found.range().to());
      Stripped joined = check(cut(drained, wider), found);
      if (joined.exact()) {
        return joined;
      }
    }
    return plain;
  }

  private static Stripped check(byte[] bytes, Markers.Found found) {
    boolean exact = bytes.length == found.length() && Sha256.hex(bytes).equals(found.sha256());
    return new Stripped(bytes, exact);
  }

  private static byte[] cut(byte[] bytes, ByteRange out) {
    byte[] rest = new byte[bytes.length - out.length()];
    System.arraycopy(bytes, 0, rest, 0, out.from());
    System.arraycopy(bytes, out.to(), rest, out.from(), bytes.length - out.to());
    return rest;
  }
}
