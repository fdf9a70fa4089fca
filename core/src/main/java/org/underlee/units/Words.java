package org.underlee.units;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.underlee.units.Lengths.UnitSystem;

/**
 * A sentence with measures in it, which are written in the reader's units where it is shown and not
 * before. The template is a literal in the code; names out of a model are parts, never templates.
 *
 * @param template with {@code %s} where a part stands
 * @param parts strings, whole numbers, {@link Quantity quantities} or other words
 */
public record Words(String template, List<Object> parts) {
  private static final String SLOT = "%s";

  public Words {
    parts = List.copyOf(parts);
    int slots = slots(template);
    if (slots != parts.size()) {
      throw new IllegalArgumentException(
          "\"" + template + "\" has " + slots + " places for " + parts.size() + " parts: " + parts);
    }
  }

  private static int slots(String template) {
    int slots = 0;
    for (int at = template.indexOf(SLOT); at >= 0; at = template.indexOf(SLOT, at + 1)) {
      slots++;
    }
    return slots;
  }

  /** Words from a template: {@code Words.of("%s is %s clear", bay, Quantity.length(width))}. */
  public static Words of(String template, Object... parts) {
    return new Words(template, List.of(parts));
  }

  /** Text that is not a template, such as a name out of a model. */
  public static Words plain(String text) {
    return of(SLOT, text);
  }

  /** Several one after the other. */
  public static Words join(String between, List<Words> all) {
    String template = all.stream().map(w -> SLOT).collect(Collectors.joining(between));
    return new Words(template, new ArrayList<>(all));
  }

  /**
   * The sentence in another language: templates and texts in it that the phrases know are changed,
   * the rest stays as it is.
   *
   * @param phrases from a template or a text to the same in that language, with as many slots in
   *     the same order
   */
  public Words translated(UnaryOperator<String> phrases) {
    boolean plain = template.equals(SLOT);
    return new Words(
        plain ? template : phrases.apply(template),
        parts.stream().map(p -> translated(p, phrases)).toList());
  }

  private static Object translated(Object part, UnaryOperator<String> phrases) {
    if (part instanceof Words words) {
      return words.translated(phrases);
    }
    return part instanceof String text ? phrases.apply(text) : part;
  }

  /** The text in a system of units. */
  public String in(UnitSystem units) {
    return shownBy(quantity -> quantity.in(units));
  }

  /** The same with its measures as in a calculation, before they are rounded for a tape measure. */
  public String exactlyIn(UnitSystem units) {
    return shownBy(quantity -> quantity.exactlyIn(units));
  }

  private String shownBy(Function<Quantity, String> measure) {
    StringBuilder text = new StringBuilder();
    int done = 0;
    for (Object part : parts) {
      int slot = template.indexOf(SLOT, done);
      text.append(template, done, slot).append(shown(part, measure));
      done = slot + SLOT.length();
    }
    return text.append(template, done, template.length()).toString();
  }

  private static String shown(Object part, Function<Quantity, String> measure) {
    if (part instanceof Quantity quantity) {
      return measure.apply(quantity);
    }
    return part instanceof Words words ? words.shownBy(measure) : part.toString();
  }

  /** The measures in it, from left to right. */
  public List<Quantity> quantities() {
    List<Quantity> found = new ArrayList<>();
    for (Object part : parts) {
      if (part instanceof Quantity quantity) {
        found.add(quantity);
      } else if (part instanceof Words words) {
        found.addAll(words.quantities());
      }
    }
    return List.copyOf(found);
  }

  /** In metric units, as in files. */
  @Override
  public String toString() {
    return in(UnitSystem.METRIC);
  }
}
