package org.underlee.writeback;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.underlee.step.StepFile;

/** The marked text that goes into the designer's file. */
final class Block {
  private Block() {}

  /** In the file's own line ends, each marker on a line of its own. */
  static byte[] text(StepFile file, List<String> lines) {
    byte[] original = file.bytes();
    String end = lineEnd(original);
    StringBuilder text = new StringBuilder();
    int at = file.blockOffset();
    boolean startsLine = at == 0 || original[at - 1] == '\n' || original[at - 1] == '\r';
    text.append(startsLine ? "" : end).append(Markers.begin(original)).append(end);
    lines.forEach(line -> text.append(line).append(end));
    text.append(Markers.END).append(end);
    return text.toString().getBytes(StandardCharsets.US_ASCII);
  }

  /** The first line end of the file. */
  private static String lineEnd(byte[] bytes) {
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        return "\n";
      }
      if (bytes[i] == '\r') {
        return i + 1 < bytes.length && bytes[i + 1] == '\n' ? "\r\n" : "\r";
      }
    }
    return "\n";
  }
}
