package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.underlee.geom.Vec3;

/** What a person can do to a drained model in another program, done to its text. */
final class EditedText {
  private static final Pattern AXIS =
      Pattern.compile("IFCAXIS2PLACEMENT3D\\(#([0-9]+),#([0-9]+),#([0-9]+)\\);");

  private static final Pattern POINT = Pattern.compile("\\(\\(([^,]+),([^,]+),([^,]+)\\)\\)");

  private EditedText() {}

  /** The instance with the part's id as its tag. */
  private static String line(String text, String tag) {
    Matcher m = Pattern.compile("(?m)^#[0-9]+=[^\\n]*'" + tag + "'[^\\n]*$").matcher(text);
    assertThat(m.find()).as("a line with %s", tag).isTrue();
    return m.group();
  }

  /** The element is taken out, and out of every list that it is in. */
  static String without(String text, String tag) {
    String line = line(text, tag);
    String id = line.substring(0, line.indexOf('='));
    List<String> kept = new ArrayList<>();
    for (String l : text.split("\n", -1)) {
      if (!l.equals(line)) {
        boolean only = Pattern.compile("\\(" + id + "\\)|," + id + "[,)]\\s*;?$").matcher(l).find();
        String rest = l.replaceAll(id + "(?![0-9]),", "").replaceAll("," + id + "(?![0-9])", "");
        boolean names = Pattern.compile(id + "(?![0-9])").matcher(rest).find();
        if (!names || !only) {
          kept.add(names ? "" : rest);
        }
      }
    }
    return String.join("\n", kept);
  }

  /**
   * The part alone is placed anew: others may share its axis.
   *
   * @param by millimetres in the model's directions
   * @param axis up from it
   */
  static String placed(String text, String tag, Vec3 by, Optional<Vec3> axis) {
    String placement = placement(text, line(text, tag));
    Matcher its = AXIS.matcher(instance(text, last(placement)));
    assertThat(its.find()).isTrue();
    Matcher point = POINT.matcher(instance(text, its.group(1)));
    assertThat(point.find()).isTrue();
    String own =
        String.format(
            Locale.ROOT,
            "#900001=IFCCARTESIANPOINT((%s,%s,%s));\n",
            Double.parseDouble(point.group(1)) + by.x(),
            Double.parseDouble(point.group(2)) + by.y(),
            Double.parseDouble(point.group(3)) + by.z());
    String up = axis.map(a -> "#900003").orElse("#" + its.group(2));
    own +=
        axis.map(a -> "#900003=IFCDIRECTION((" + a.x() + "," + a.y() + "," + a.z() + "));\n")
            .orElse("");
    own += "#900002=IFCAXIS2PLACEMENT3D(#900001," + up + ",#" + its.group(3) + ");\n";
    String moved = placement.replace("#" + last(placement) + ");", "#900002);");
    return text.replace(placement, own + moved);
  }

  private static String placement(String text, String line) {
    return Pattern.compile("#([0-9]+)")
        .matcher(line.substring(line.indexOf('(')))
        .results()
        .map(r -> instance(text, r.group(1)))
        .filter(i -> i.contains("IFCLOCALPLACEMENT"))
        .findFirst()
        .orElseThrow();
  }

  /** The last instance that a line names. */
  private static String last(String line) {
    return line.substring(line.lastIndexOf('#') + 1, line.lastIndexOf(')'));
  }

  private static String instance(String text, String id) {
    Matcher m = Pattern.compile("(?m)^#" + id + "=[^\\n]*$").matcher(text);
    assertThat(m.find()).as("#%s", id).isTrue();
    return m.group();
  }
}
