package org.underlee.writeback;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * GlobalIds that come out the same on every run: a version 5 UUID (RFC 9562, section 5.5) of the
 * project's GlobalId, the field, the role and what tells the instance apart within the role, in the
 * 22 characters that IFC writes a UUID in. So a second run replaces the first, and one assembly is
 * there, never two.
 */
public final class GlobalIds {
  /** The namespace of this program's names: drawn once at random, never to change. */
  private static final UUID NAMESPACE = UUID.fromString("2341d33c-d61c-4cd8-9676-44c22aadcc26");

  /** The order that the standard gives its 64 digits (IfcGloballyUniqueId). */
  private static final String DIGITS =
      "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$";

  /** 128 bits in digits of six bits: the first digit holds the two that are left over. */
  private static final int LENGTH = 22;

  private final String project;

  public GlobalIds(String projectGlobalId) {
    this.project = projectGlobalId;
  }

  /**
   * The GlobalId of one instance.
   *
   * @param field the joist field, or empty for what serves the whole model
   * @param role what it is: {@code pan}, {@code aggregates}
   * @param ordinal tells it apart within the role
   */
  public String of(String field, String role, String ordinal) {
    // A line feed cannot be part of an identifier, so no two paths give the same name.
    return compressed(version5(NAMESPACE, String.join("\n", project, field, role, ordinal)));
  }

  /** Any of the GlobalIds that stands in the bytes as a text of its own. */
  static Optional<String> firstIn(byte[] bytes, Set<String> globalIds) {
    int closing = LENGTH + 1;
    for (int i = 0; i + closing < bytes.length; i++) {
      if (bytes[i] == '\'' && bytes[i + closing] == '\'') {
        String text = new String(bytes, i + 1, LENGTH, StandardCharsets.ISO_8859_1);
        if (globalIds.contains(text)) {
          return Optional.of(text);
        }
      }
    }
    return Optional.empty();
  }

  /**
   * Whether a GlobalId is of the kind that we give: a version 5 UUID. One that is drawn at random
   * as the RFC says (version 4) never is.
   */
  static boolean isLikeOurs(String globalId) {
    long most = 0;
    long least = 0;
    for (int i = 0; i < globalId.length(); i++) {
      most = (most << 6) | (least >>> 58);
      least = (least << 6) | DIGITS.indexOf(globalId.charAt(i));
    }
    UUID id = new UUID(most, least);
    return id.version() == 5 && id.variant() == 2;
  }

  static UUID version5(UUID namespace, String name) {
    MessageDigest sha1 = digest("SHA-1");
    sha1.update(bytes(namespace).array());
    sha1.update(name.getBytes(StandardCharsets.UTF_8));
    ByteBuffer hash = ByteBuffer.wrap(sha1.digest());
    long most = (hash.getLong() & ~0xF000L) | 0x5000L;
    long least = (hash.getLong() & 0x3FFFFFFFFFFFFFFFL) | 0x8000000000000000L;
    return new UUID(most, least);
  }

  static String compressed(UUID id) {
    StringBuilder text = new StringBuilder(LENGTH);
    long most = id.getMostSignificantBits();
    long least = id.getLeastSignificantBits();
    for (int i = 0; i < LENGTH; i++) {
      text.append(DIGITS.charAt((int) (least & 63)));
      least = (least >>> 6) | (most << 58);
      most >>>= 6;
    }
    return text.reverse().toString();
  }

  static MessageDigest digest(String algorithm) {
    try {
      return MessageDigest.getInstance(algorithm);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has " + algorithm, e);
    }
  }

  private static ByteBuffer bytes(UUID id) {
    return ByteBuffer.allocate(16)
        .putLong(id.getMostSignificantBits())
        .putLong(id.getLeastSignificantBits());
  }
}
