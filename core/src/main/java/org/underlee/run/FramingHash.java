package org.underlee.run;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.step.Sha256;

/** A short name for the framing as it was read: tells whether the designer has changed it since. */
final class FramingHash {
  private FramingHash() {}

  /** SHA-256 over members, lines and bays in the field's frame, to a tenth of a millimetre. */
  static String of(Iterable<FieldBays> fields) {
    StringBuilder text = new StringBuilder();
    for (FieldBays field : fields) {
      for (JoistLine line : field.field().lines()) {
        line.plies().stream().map(Member::id).forEach(id -> text.append(id).append(' '));
        add(text, line.width(), line.depth(), line.centre(0));
      }
      for (Bay bay : field.bays()) {
        add(text, bay.length(), bay.clearWidthHigh(), bay.clearWidthLow());
        bay.blocking().forEach(b -> add(text, b.at(), b.bottom()));
        bay.crossings().forEach(c -> add(text, c.at(), c.across(), c.size()));
      }
    }
    return Sha256.hex(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static void add(StringBuilder text, double... metres) {
    for (double m : metres) {
      text.append(String.format(Locale.ROOT, "%.4f ", m));
    }
    text.append('\n');
  }
}
