package org.underlee.layout;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.Field;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * Rain of another area that comes onto a deck at one place: a roof's downspout ends there, or a
 * valley drips.
 *
 * @param area whose rain it is, m² seen from above
 * @param at in the model's coordinates, metres
 */
public record Onto(double area, Vec2 at) {
  private static final Pattern TEXT =
      Pattern.compile(
          "(\\d+(?:\\.\\d+)?)\\s*(m2|ft2)?\\s*@\\s*(-?\\d+(?:\\.\\d+)?)\\s*,\\s*(-?\\d+(?:\\.\\d+)?)");

  /** Of the international foot, exact. */
  private static final double SQUARE_FOOT = 0.3048 * 0.3048;

  /**
   * Reads {@code 12m2@3.2,1.5} or {@code 130ft2@3.2,1.5}; square metres where no unit stands.
   *
   * @throws InputException when that is no area at a place
   */
  public static Onto parse(String text) {
    Matcher m = TEXT.matcher(text.trim());
    if (!m.matches() || Double.parseDouble(m.group(1)) == 0) {
      throw new InputException(
          Place.NOWHERE,
          "\"" + text + "\" is no area that drains onto a place",
          "Write the area and the place in metres in the model's coordinates, such as"
              + " 12m2@3.2,1.5 or 130ft2@3.2,1.5.");
    }
    double unit = "ft2".equals(m.group(2)) ? SQUARE_FOOT : 1;
    return new Onto(
        unit * Double.parseDouble(m.group(1)),
        new Vec2(Double.parseDouble(m.group(3)), Double.parseDouble(m.group(4))));
  }

  /** As {@link #parse} reads it. */
  public String text() {
    return plain(area) + "m2@" + plain(at.x()) + "," + plain(at.y());
  }

  private static String plain(double number) {
    return new BigDecimal(Double.toString(number)).stripTrailingZeros().toPlainString();
  }

  /** Whether it comes onto a field, seen from above. */
  public boolean isOn(Field field) {
    return distance(field) == 0;
  }

  /** How far beside a field it is, seen from above; 0 on it. */
  public double distance(Field field) {
    Vec3 there = field.frame().toLocal(place());
    return Math.hypot(field.across().distance(there.x()), field.along().distance(there.y()));
  }

  /** Its place, at a height of nothing. */
  public Vec3 place() {
    return new Vec3(at.x(), at.y(), 0);
  }
}
