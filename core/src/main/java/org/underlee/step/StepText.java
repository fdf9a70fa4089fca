package org.underlee.step;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * Strings of Part 21 (ISO 10303-21, 6.4.3). Reading: {@code ''}, {@code \\}, {@code \S\}, {@code
 * \P?\}, {@code \X\hh}, {@code \X2\…\X0\}, {@code \X4\…\X0\}; bytes above 127, which the standard
 * forbids, are UTF-8 where the whole string is valid UTF-8, else ISO-8859-1. Line ends inside a
 * string belong to the layout of the file, not to the text. A backslash that begins none of these
 * stands for itself, since programs do write {@code 'C:\path'}. Writing: pure ASCII.
 */
public final class StepText {
  private static final int ASCII_END = 0x7F;

  private final String in;
  private final StringBuilder out;
  private int at;
  private Charset page = StandardCharsets.ISO_8859_1;

  private StepText(String in) {
    this.in = in;
    this.out = new StringBuilder(in.length());
  }

  /** The text as Part 21 writes it between the quotation marks. */
  public static String encode(String text) {
    StringBuilder out = new StringBuilder(text.length() + 16);
    int open = 0;
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      int c = text.codePointAt(i);
      int width = c >= ' ' && c < ASCII_END ? 0 : c > 0xFFFF ? 4 : 2;
      if (width != open) {
        out.append(open == 0 ? "" : "\\X0\\").append(width == 0 ? "" : "\\X" + width + "\\");
        open = width;
      }
      if (width == 0) {
        out.append(c == '\'' ? "''" : c == '\\' ? "\\\\" : Character.toString(c));
      } else {
        hex(out, c, 2 * width);
      }
    }
    return out.append(open == 0 ? "" : "\\X0\\").toString();
  }

  private static void hex(StringBuilder out, int c, int digits) {
    String hex = Integer.toHexString(c).toUpperCase(Locale.ROOT);
    out.append("0".repeat(digits - hex.length())).append(hex);
  }

  /** The text with its quotation marks: {@code 'Joist 2''x8'''}. */
  public static String quoted(String text) {
    return "'" + encode(text) + "'";
  }

  /** The text that stands between two quotation marks. */
  public static String decode(String encoded) {
    byte[] bytes = encoded.getBytes(StandardCharsets.UTF_8);
    return decode(bytes, 0, bytes.length);
  }

  static String decode(byte[] bytes, int from, int to) {
    boolean plain = true;
    boolean ascii = true;
    for (int i = from; i < to; i++) {
      byte c = bytes[i];
      ascii &= c >= 0;
      plain &= c != '\'' && c != '\\' && c != '\r' && c != '\n';
    }
    String raw =
        ascii
            ? new String(bytes, from, to - from, StandardCharsets.ISO_8859_1)
            : utf8OrLatin(bytes, from, to);
    return plain ? raw : new StepText(raw).decoded();
  }

  private static String utf8OrLatin(byte[] bytes, int from, int to) {
    try {
      ByteBuffer stretch = ByteBuffer.wrap(bytes, from, to - from);
      return StandardCharsets.UTF_8.newDecoder().decode(stretch).toString();
    } catch (CharacterCodingException e) {
      return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
    }
  }

  private String decoded() {
    while (at < in.length()) {
      char c = in.charAt(at);
      if (c == '\\') {
        directive();
      } else if (c == '\'') {
        out.append(c);
        at += in.startsWith("''", at) ? 2 : 1;
      } else {
        if (c != '\r' && c != '\n') {
          out.append(c);
        }
        at++;
      }
    }
    return out.toString();
  }

  private void directive() {
    if (in.startsWith("\\\\", at)) {
      out.append('\\');
      at += 2;
    } else if (in.startsWith("\\S\\", at) && at + 3 < in.length()) {
      byte[] high = {(byte) (in.charAt(at + 3) | 0x80)};
      out.append(new String(high, page));
      at += 4;
    } else if (in.startsWith("\\P", at) && at + 3 < in.length() && in.charAt(at + 3) == '\\') {
      page(in.charAt(at + 2));
    } else if (in.startsWith("\\X\\", at) && isHex(at + 3, 2)) {
      out.append((char) code(at + 3, 2));
      at += 5;
    } else if (!wide("\\X2\\", 4) && !wide("\\X4\\", 8)) {
      out.append('\\');
      at++;
    }
  }

  /** {@code \PA\} to {@code \PI\}: ISO 8859 part 1 to 9, where this machine knows it. */
  private void page(char letter) {
    String name = "ISO-8859-" + (letter - 'A' + 1);
    if (letter >= 'A' && letter <= 'I' && Charset.isSupported(name)) {
      page = Charset.forName(name);
    }
    at += 4;
  }

  /** Whether codes of {@code digits} digits after {@code opening} stand here; decodes them. */
  private boolean wide(String opening, int digits) {
    int end = in.indexOf("\\X0\\", at);
    int from = at + opening.length();
    if (!in.startsWith(opening, at) || end < from) {
      return false;
    }
    StringBuilder codes = new StringBuilder();
    int i = from;
    for (; i + digits <= end && isHex(i, digits); i += digits) {
      long code = code(i, digits);
      if (code > Character.MAX_CODE_POINT) {
        return false;
      }
      codes.appendCodePoint((int) code);
    }
    if (i != end) {
      return false;
    }
    out.append(codes);
    at = end + 4;
    return true;
  }

  private boolean isHex(int from, int digits) {
    boolean hex = from + digits <= in.length();
    for (int i = from; hex && i < from + digits; i++) {
      hex = Character.digit(in.charAt(i), 16) >= 0 && in.charAt(i) < ASCII_END;
    }
    return hex;
  }

  private long code(int from, int digits) {
    return Long.parseLong(in.substring(from, from + digits), 16);
  }
}
