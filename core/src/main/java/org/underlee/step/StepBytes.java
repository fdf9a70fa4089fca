package org.underlee.step;

/** The bytes of a file, wherever they are. Safe to share between threads. */
sealed interface StepBytes permits HeapBytes, MappedBytes {
  long size();

  /** Copies a stretch that lies inside of the file to the beginning of an array. */
  void copy(long from, byte[] into, int length);

  /**
   * A stretch from {@code from} on to read in place.
   *
   * @param length at least so long, unless the file ends before
   * @param spare used where a copy is needed and it is long enough
   */
  Window window(long from, int length, byte[] spare);

  /** A stretch that lies inside of the file, in an array that others may read too. */
  Window shared(long from, int length);

  /**
   * Bytes in an array.
   *
   * @param limit end of the valid bytes in the array
   * @param base where in the file the array begins
   * @param last whether the file ends at the limit
   */
  @SuppressWarnings("ArrayRecordComponent") // a view, never compared
  record Window(byte[] bytes, int limit, long base, boolean last) {}
}
