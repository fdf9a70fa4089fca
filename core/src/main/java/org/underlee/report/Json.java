package org.underlee.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.NotMeasured;
import org.underlee.finding.Place;
import org.underlee.run.Source;
import org.underlee.units.Quantity;

/**
 * What every JSON report shares: the same numbers, places and layout, whatever machine writes it.
 */
public final class Json {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /**
   * Millimetres are given to a thousandth: finer than any saw, coarse enough to be the same twice.
   */
  private static final int DECIMALS = 3;

  private static final int RATIO_DECIMALS = 9;

  private static final double TO_MM = 1000;

  private Json() {}

  public static ObjectNode report(String what, Source source) {
    ObjectNode root = object(what);
    source(root.putObject("input"), source);
    return root;
  }

  /** A report of no one file. */
  static ObjectNode object(String what) {
    return MAPPER.createObjectNode().put("schema", "underlee/" + what + "/1");
  }

  /** Of a file that is looked at as Part 21 text only. */
  static ObjectNode report(String what, String file, String sha256, String ifcSchema) {
    ObjectNode root = object(what);
    root.putObject("input").put("file", file).put("sha256", sha256).put("ifcSchema", ifcSchema);
    return root;
  }

  static void source(ObjectNode node, Source source) {
    node.put("file", source.file())
        .put("sha256", source.sha256())
        .put("ifcSchema", source.ifcSchema())
        .put("lengthUnit", source.lengthUnit());
  }

  static ObjectNode object() {
    return MAPPER.createObjectNode();
  }

  public static String text(ObjectNode root) {
    DefaultIndenter indent = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(indent);
    try {
      return MAPPER.writer(printer).writeValueAsString(root) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a report tree cannot be written", e);
    }
  }

  public static BigDecimal mm(double metres) {
    return rounded(metres * TO_MM, DECIMALS);
  }

  /** Rounded, without trailing zeros, and never minus zero. */
  static BigDecimal rounded(double value, int decimals) {
    BigDecimal exact = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    return exact.signum() == 0 ? BigDecimal.ZERO : plain(exact.stripTrailingZeros());
  }

  private static BigDecimal plain(BigDecimal value) {
    return value.scale() < 0 ? value.setScale(0) : value;
  }

  public static void strings(ArrayNode array, Collection<String> values) {
    values.forEach(array::add);
  }

  static void findings(ObjectNode root, Collection<Finding> findings) {
    ArrayNode array = root.putArray("findings");
    for (Finding finding : findings) {
      ObjectNode node = array.addObject();
      node.put("rule", finding.rule().id());
      node.put("level", finding.level().word());
      node.put("message", finding.message());
      place(node.putObject("place"), finding.place());
      if (!finding.subjects().isEmpty()) {
        ArrayNode subjects = node.putArray("subjects");
        finding.subjects().forEach(s -> subject(subjects.addObject(), s));
      }
      finding
          .measure()
          .ifPresent(
              m -> {
                node.put("measured", number(m.measured()));
                node.put("limit", number(m.limit()));
                node.put("unit", m.limit().kind().fileUnit());
              });
      node.put("source", finding.rule().source());
      finding.fix().ifPresent(f -> fix(node, f));
    }
  }

  private static void subject(ObjectNode node, Finding.Subject subject) {
    node.put("group", subject.group());
    node.put("name", subject.name());
    place(node.putObject("place"), subject.place());
    subject.measured().ifPresent(m -> node.put("measured", number(m)));
  }

  private static void fix(ObjectNode node, Fix fix) {
    node.put("fix", fix.words().toString());
    fix.action()
        .ifPresent(
            action -> {
              ArrayNode options = node.putArray("fixOptions");
              action
                  .options()
                  .forEach(o -> options.addObject().put("name", o.name()).put("value", o.value()));
              node.put("fixPreview", action.preview().toString());
            });
  }

  /** In the unit of its kind; ratios need more places than lengths. */
  static BigDecimal number(Quantity quantity) {
    boolean ratio = quantity.kind().fileUnit().equals("ratio");
    return rounded(quantity.inFile(), ratio ? RATIO_DECIMALS : DECIMALS);
  }

  static void notMeasured(ObjectNode root, Collection<NotMeasured> all) {
    ArrayNode array = root.putArray("notMeasured");
    for (NotMeasured one : all) {
      ObjectNode node = array.addObject();
      node.put("element", one.globalId());
      place(node.putObject("place"), one.place());
      node.put("why", one.why());
    }
  }

  private static void place(ObjectNode node, Place place) {
    place.file().ifPresent(f -> node.put("file", f));
    place.line().ifPresent(l -> node.put("line", l));
    place.column().ifPresent(c -> node.put("column", c));
    place.instance().ifPresent(i -> node.put("instance", i));
    place.globalId().ifPresent(g -> node.put("globalId", g));
  }
}
