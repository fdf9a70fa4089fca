package org.underlee.step;

/**
 * How much a file may ask for before it is taken for damaged or hostile. {@link #STANDARD} is far
 * above what building models need; a real model beyond it can be read with limits of its own, which
 * the command line sets with {@code --record-limit}, {@code --string-limit} and {@code
 * --zip-ratio-limit}.
 *
 * @param nesting depth of lists and typed values; at most {@link #DEEPEST}, since values are read
 *     by recursion
 * @param stringBytes length of one string as written
 * @param records number of instances
 * @param zipEntries number of entries in a ZIP archive
 * @param zipRatio unpacked bytes a packed byte, after the first {@link #ZIP_FREE_BYTES}
 */
public record StepLimits(int nesting, int stringBytes, int records, int zipEntries, int zipRatio) {
  /** A stack of the usual 512 KiB holds several times as many. */
  public static final int DEEPEST = 1000;

  /**
   * So much may come out of a ZIP entry whatever its ratio: a small model of zeros is no attack.
   */
  public static final int ZIP_FREE_BYTES = 100 << 10;

  public static final StepLimits STANDARD = new StepLimits(128, 1 << 20, 20_000_000, 1000, 100);

  public StepLimits {
    if (Math.min(Math.min(nesting, stringBytes), Math.min(records, zipEntries)) < 1
        || zipRatio < 1
        || nesting > DEEPEST) {
      throw new IllegalArgumentException(
          "limits must be positive and nesting at most " + DEEPEST + ", not " + nesting);
    }
  }

  public StepLimits withNesting(int most) {
    return new StepLimits(most, stringBytes, records, zipEntries, zipRatio);
  }

  public StepLimits withStringBytes(int most) {
    return new StepLimits(nesting, most, records, zipEntries, zipRatio);
  }

  public StepLimits withRecords(int most) {
    return new StepLimits(nesting, stringBytes, most, zipEntries, zipRatio);
  }

  public StepLimits withZip(int entries, int ratio) {
    return new StepLimits(nesting, stringBytes, records, entries, ratio);
  }
}
