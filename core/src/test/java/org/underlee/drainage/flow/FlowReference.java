package org.underlee.drainage.flow;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Makes the reference page of rain and capacities from the data files. */
final class FlowReference {
  static final String FILE = "docs/reference/rain-and-capacities.md";
  static final String SCHEMA_FILE = "docs/reference/own-capacities.schema.json";

  private static final String SCHEMA =
      """
      {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Your own tables of capacities for Underlee",
        "description": "Generated from the code that reads them; how-to/rate-by-your-own-tables.md says how to use one.",
        "type": "object",
        "required": ["schema", "tables", "shownOnly"],
        "additionalProperties": false,
        "properties": {
          "schema": {"const": "$SCHEMA"},
          "tables": {
            "type": "array",
            "items": {
              "type": "object",
              "required": ["id", "use", "code", "edition", "table", "unit", "source", "rows"],
              "additionalProperties": false,
              "properties": {
                "id": {"type": "string", "description": "A name of your own, or that of a table of the program whose place it takes"},
                "use": {"enum": [$USES]},
                "code": {"type": "string", "description": "As it is named, such as IPC"},
                "edition": {"type": "string", "description": "Editions differ: the year on the book"},
                "table": {"type": "string", "description": "Its number in the code"},
                "unit": {"enum": [$UNITS], "description": "Of the capacities"},
                "source": {"type": "string", "pattern": "\\\\S", "description": "Where you read it"},
                "rows": {
                  "type": "array",
                  "minItems": 1,
                  "items": {
                    "type": "object",
                    "required": ["sizeInches", "fallInchesPerFoot", "capacity"],
                    "additionalProperties": false,
                    "properties": {
                      "sizeInches": {"type": "number", "exclusiveMinimum": 0, "description": "Diameter; of a rectangle the circle of equal area"},
                      "fallInchesPerFoot": {"type": "number", "minimum": 0, "description": "0 for a downspout"},
                      "capacity": {"type": "number", "exclusiveMinimum": 0}
                    }
                  }
                }
              }
            }
          },
          "shownOnly": {
            "type": "array",
            "description": "What the program has and what may decide no more",
            "items": {"enum": [$IDS]}
          }
        }
      }
      """;

  private static final DecimalFormat NUMBER =
      new DecimalFormat("0.####", DecimalFormatSymbols.getInstance(Locale.ROOT));

  private FlowReference() {}

  /** Writes the page below the given root of the project. */
  public static void main(String[] args) throws IOException {
    Path root = Path.of(args.length > 0 ? args[0] : ".");
    Files.writeString(root.resolve(FILE), page());
    Files.writeString(root.resolve(SCHEMA_FILE), schema());
  }

  /** The shape of a file of the user's own tables, JSON Schema 2020-12. */
  static String schema() {
    CapacityData data = CapacityData.builtIn();
    List<String> ids = new ArrayList<>();
    data.methods().forEach(m -> ids.add(m.id()));
    data.tables().forEach(t -> ids.add(t.id()));
    return SCHEMA
        .replace("$SCHEMA", OwnCapacities.SCHEMA)
        .replace("$USES", quoted(CapacityData.USES.stream().sorted().toList()))
        .replace("$UNITS", quoted(CapacityData.UNITS.stream().sorted().toList()))
        .replace("$IDS", quoted(ids));
  }

  private static String quoted(List<String> words) {
    return words.stream().map(w -> '"' + w + '"').collect(Collectors.joining(", "));
  }

  static String page() {
    StringBuilder page = new StringBuilder();
    page.append(
        """
        # Rain and capacities

        Generated from the data files. Every row says how far it can be trusted: **seen** was read in its source;
        **from memory — verify** was not, so check it in the code before you rely on it; **derived** is worked out;
        **common practice** has no single source.

        ## Rain

        | place | storm | code | rain | mark | source |
        |---|---|---|---|---|---|
        """);
    for (RainData.Row r : RainData.builtIn().rows()) {
      row(
          page,
          r.place(),
          r.storm(),
          (r.code() + " " + r.edition()).strip(),
          NUMBER.format(r.intensity()) + " " + r.unit(),
          r.mark().words(),
          r.source());
    }
    CapacityData data = CapacityData.builtIn();
    page.append("\n## Methods\n\n| id | method | code | may decide | mark | source |\n");
    page.append("|---|---|---|---|---|---|\n");
    for (CapacityData.Method m : data.methods()) {
      row(
          page,
          "`" + m.id() + "`",
          m.name(),
          m.code() + " " + m.edition(),
          m.accepted() ? "yes" : "no, shown only",
          m.mark().words(),
          m.source());
    }
    page.append("\n## Tables\n");
    data.tables().forEach(t -> table(page, t));
    page.append("\n## Not in the program\n\n| code | table | why |\n|---|---|---|\n");
    for (CapacityData.NotShipped n : data.notShipped()) {
      row(page, n.code() + " " + n.edition(), n.table(), n.why());
    }
    proof(page, ProofData.builtIn());
    return page.toString();
  }

  private static void table(StringBuilder page, CapacityData.Table t) {
    page.append("\n### ").append(t.use()).append(", ").append(t.code()).append(' ');
    page.append(t.edition()).append(", ").append(t.table()).append("\n\n`").append(t.id());
    page.append("`; ").append(t.mark().words()).append("; ");
    page.append(t.accepted() ? "may decide" : "shown only").append(". ").append(t.source());
    page.append(".\n\n| size, in | fall, in per ft | ")
        .append(t.unit())
        .append(" |\n|---|---|---|\n");
    for (CapacityData.Row r : t.rows()) {
      row(
          page,
          NUMBER.format(r.sizeInches()),
          NUMBER.format(r.fallInchesPerFoot()),
          NUMBER.format(r.capacity()));
    }
  }

  private static void proof(StringBuilder page, ProofData data) {
    page.append("\n## Other values of the proof\n\n| value | number | mark | source |\n");
    page.append("|---|---|---|---|\n");
    for (ProofData.Key key : ProofData.Key.values()) {
      ProofData.Value v = data.value(key);
      String name = key.name().toLowerCase(Locale.ROOT).replace('_', ' ');
      row(page, name, NUMBER.format(v.value()), v.mark().words(), v.source());
    }
    page.append("\n| material | grows per K | mark | source |\n|---|---|---|---|\n");
    for (ProofData.Expansion e : data.expansion()) {
      String millionths = NUMBER.format(e.perKelvin() * 1e6) + " millionths";
      row(page, e.material(), millionths, e.mark().words(), e.source());
    }
    page.append("\n| these two | in the wet | mark | source |\n|---|---|---|---|\n");
    for (ProofData.Contact c : data.contacts()) {
      String verdict = c.verdict().name().toLowerCase(Locale.ROOT);
      row(page, c.one() + ", " + c.other(), verdict, c.mark().words(), c.source());
    }
    page.append("\n| common gutter, wide x deep, in | mark | source |\n|---|---|---|\n");
    for (ProofData.CommonGutter g : data.commonGutters()) {
      String size = NUMBER.format(g.widthInches()) + " x " + NUMBER.format(g.depthInches());
      row(page, size, g.mark().words(), g.source());
    }
    page.append("\n| common downspout, in | mark | source |\n|---|---|---|\n");
    for (ProofData.CommonDownspout d : data.commonDownspouts()) {
      row(page, NUMBER.format(d.inches()), d.mark().words(), d.source());
    }
  }

  private static void row(StringBuilder page, String... cells) {
    page.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }
}
