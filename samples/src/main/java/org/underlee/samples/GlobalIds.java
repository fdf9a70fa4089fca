package org.underlee.samples;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** GlobalIds derived from a seed: 128 bits in the 64-character alphabet of the standard. */
public final class GlobalIds {
  /** ISO 16739-1, IfcGloballyUniqueId. */
  private static final String ALPHABET =
      "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$";

  private static final int LENGTH = 22;

  private GlobalIds() {}

  /** The same 22 characters for the same seed, for ever. */
  public static String of(String seed) {
    byte[] hash = sha256(seed);
    java.math.BigInteger bits = new java.math.BigInteger(1, java.util.Arrays.copyOf(hash, 16));
    StringBuilder text = new StringBuilder();
    for (int i = LENGTH - 1; i >= 0; i--) {
      text.append(ALPHABET.charAt(bits.shiftRight(6 * i).intValue() & 63));
    }
    return text.toString();
  }

  private static byte[] sha256(String seed) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(seed.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
