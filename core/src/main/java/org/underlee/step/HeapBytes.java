package org.underlee.step;

/** A file in memory. */
final class HeapBytes implements StepBytes {
  final byte[] bytes;
  private final Window whole;

  HeapBytes(byte[] bytes) {
    this.bytes = bytes;
    this.whole = new Window(bytes, bytes.length, 0, true);
  }

  @Override
  public long size() {
    return bytes.length;
  }

  @Override
  public void copy(long from, byte[] into, int length) {
    System.arraycopy(bytes, (int) from, into, 0, length);
  }

  @Override
  public Window shared(long from, int length) {
    return whole;
  }

  @Override
  public Window window(long from, int length, byte[] spare) {
    return whole;
  }
}
