package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the program writes for the samples is in the reference pages that are written by hand. */
class ReferencePagesTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final Pattern KEYWORD = Pattern.compile("(?m)^#[0-9]+=(IFC[A-Z0-9]+)\\(");
  private static final Pattern SET =
      Pattern.compile("'((?:Pset|Qto|Underlee)_\\w+|BaseQuantities)'");
  private static final Pattern CODE = Pattern.compile("`([^`\\n]+)`");

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void everyFieldOfTheJsonIsExplained(String sample) throws IOException {
    Set<String> fields = new TreeSet<>();
    for (String verb : new String[] {"survey", "design", "takeoff"}) {
      names(new ObjectMapper().readTree(run(verb, sample, "--json")), fields);
    }
    // the bounds are named by the kit's items
    fields.removeIf(f -> f.contains("-") || f.equals("downspout") || f.equals("gutter"));
    assertThat(fields).hasSizeGreaterThan(40);
    assertThat(named("docs/reference/json.md")).containsAll(fields);
  }

  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void everyClassAndSetThatIsWrittenIsExplained(String sample) throws IOException {
    run("design", sample, "--json");
    String drained =
        Files.readString(folder.resolve(sample + ".drained.ifc"), StandardCharsets.US_ASCII);
    String block = drained.substring(drained.indexOf("/* Underlee begins"));
    Set<String> written = new TreeSet<>();
    KEYWORD.matcher(block).results().forEach(m -> written.add(m.group(1)));
    SET.matcher(block).results().forEach(m -> written.add(m.group(1).toUpperCase(Locale.ROOT)));
    // geometry that needs no word of explanation
    written.removeAll(Set.of("IFCCARTESIANPOINT", "IFCDIRECTION", "IFCAXIS2PLACEMENT3D"));
    written.remove("IFCPRODUCTDEFINITIONSHAPE");
    Set<String> explained =
        named("docs/reference/ifc-mapping.md").stream()
            .map(n -> n.toUpperCase(Locale.ROOT))
            .collect(Collectors.toSet());
    assertThat(written).hasSizeGreaterThan(40);
    assertThat(explained).containsAll(written);
  }

  @Test
  void onlyWhatIsSetInCodeCountsAsExplained() throws IOException {
    assertThat(named("docs/reference/json.md")).contains("clearWidthHighMm").doesNotContain("word");
  }

  private String run(String verb, String sample, String format) throws IOException {
    Path model = folder.resolve(sample + ".ifc");
    if (!Files.exists(model)) {
      Files.copy(ROOT.resolve("samples").resolve(sample).resolve(sample + ".ifc"), model);
    }
    Ran ran = Ran.run(verb, model, format);
    assertThat(ran.code()).isZero();
    return ran.out();
  }

  private static void names(JsonNode node, Set<String> into) {
    node.fieldNames().forEachRemaining(into::add);
    node.forEach(child -> names(child, into));
  }

  /** What a page sets in code. */
  private static Set<String> named(String page) throws IOException {
    return CODE.matcher(Files.readString(ROOT.resolve(page)))
        .results()
        .map(m -> m.group(1))
        .collect(Collectors.toSet());
  }
}
