package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.finding.InputException;
import org.underlee.kit.Kit;
import org.underlee.layout.Layout;
import org.underlee.run.DeckRun;
import org.underlee.run.FieldByField;

/**
 * A model that was read, ready to be laid out.
 *
 * @param fields which lays it out
 * @param kit that was decided on when it was read
 * @param leftOut models of services that could not be read, each with why
 */
record Opening(FieldByField fields, Kit kit, Map<String, Problem> leftOut) {
  /**
   * Reads a model; a kit that cannot be used is told before anything is waited for. Services that
   * cannot be read are left out: the model is read without them.
   */
  static Opening of(Path file, Decisions by) {
    Kit kit = by.chosenKit();
    Map<String, Problem> leftOut = new LinkedHashMap<>();
    while (true) {
      List<String> services = by.services().stream().filter(s -> !leftOut.containsKey(s)).toList();
      try {
        FieldByField fields =
            new FieldByField(DeckRun.survey(file, new DecidedFiles(by, file).request(services)));
        return new Opening(fields, kit, leftOut);
      } catch (InputException e) {
        leftOut.put(blamed(e, services).orElseThrow(() -> e), Problem.of(e));
      }
    }
  }

  /** The model of services that a message is about, known by its path or its name. */
  private static Optional<String> blamed(InputException e, List<String> services) {
    Optional<String> named = e.place().file();
    return services.stream()
        .filter(s -> named.filter(n -> n.equals(s) || n.equals(name(s))).isPresent())
        .findFirst();
  }

  private static String name(String file) {
    return String.valueOf(Path.of(file).getFileName());
  }

  /** What can be shown before anything is laid out. */
  Result framed(Decisions by, long edition) {
    Layout nothing = new Layout(kit, List.of(), List.of());
    return new Result(by, fields.survey(), nothing, edition, Optional.empty(), Progress.FRAMED);
  }
}
