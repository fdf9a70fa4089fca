package org.underlee.step;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Names bytes by their SHA-256, in lower-case hexadecimal. */
public final class Sha256 {
  /** Few enough bytes to stay in a processor's cache between copying and hashing. */
  private static final int PIECE = 1 << 16;

  private Sha256() {}

  public static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(digest().digest(bytes));
  }

  /**
   * Of a file, read in pieces.
   *
   * @throws IOException when it cannot be read
   */
  public static String hex(Path file) throws IOException {
    MessageDigest digest = digest();
    try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
      in.transferTo(OutputStream.nullOutputStream());
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /** The same over a file of any length, a piece at a time. */
  static String hex(StepBytes bytes) {
    MessageDigest digest = digest();
    byte[] piece = new byte[PIECE];
    for (long at = 0; at < bytes.size(); at += PIECE) {
      int length = (int) Math.min(PIECE, bytes.size() - at);
      bytes.copy(at, piece, length);
      digest.update(piece, 0, length);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
