package org.underlee.samples;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** A ground truth as {@code survey --json} would give it. */
public final class TruthJson {
  private TruthJson() {}

  /** Indented by two, lines ended by LF. */
  public static String of(GroundTruth truth, SampleDeck sample, Mix mix) {
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode root = mapper.createObjectNode();
    root.put("schema", "underlee/survey/1");
    root.putObject("input")
        .put("file", sample.name() + ".ifc")
        .put("ifcSchema", mix.schema().name())
        .put("lengthUnit", mix.unit().name());
    root.setAll((ObjectNode) mapper.valueToTree(truth));
    DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter);
    try {
      return mapper.writer(printer).writeValueAsString(root) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of plain values always becomes text", e);
    }
  }
}
