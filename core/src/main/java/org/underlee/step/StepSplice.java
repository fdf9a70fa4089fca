package org.underlee.step;

/** Adds a block of new instances and leaves every other byte as it was. */
public final class StepSplice {
  private StepSplice() {}

  /** The file's bytes with the block before the ENDSEC of its last DATA section. */
  public static byte[] insert(StepFile file, byte[] block) {
    byte[] old = file.bytes();
    int at = file.blockOffset();
    byte[] joined = new byte[Math.addExact(old.length, block.length)];
    System.arraycopy(old, 0, joined, 0, at);
    System.arraycopy(block, 0, joined, at, block.length);
    System.arraycopy(old, at, joined, at + block.length, old.length - at);
    return joined;
  }
}
