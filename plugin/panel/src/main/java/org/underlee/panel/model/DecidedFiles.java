package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.underlee.kit.KitReader;
import org.underlee.run.Overrides;
import org.underlee.run.SurveyRequest;
import org.underlee.writeback.FilesRead;

/** The files that decisions about a model name, and how the model is read with them. */
record DecidedFiles(Decisions decisions, Path model) {
  /** What the open model is read as. */
  static final String OPEN_MODEL = "the open model";

  /**
   * How the model is read.
   *
   * @param readable those of the services that can be read
   */
  SurveyRequest request(List<String> readable) {
    return new SurveyRequest(
            Optional.empty(), overrides(), readable.stream().map(Path::of).toList())
        .bothWays(decisions.bothWays());
  }

  /**
   * All that is read.
   *
   * @param others that were read too
   */
  FilesRead read(FilesRead others) {
    FilesRead all =
        others.with(model, OPEN_MODEL).with(Overrides.pathBeside(model), "roles beside the model");
    if (KitReader.allBuiltIn().stream().noneMatch(k -> k.id().equals(decisions.kit()))) {
      all = all.with(Path.of(decisions.kit()), "the kit");
    }
    for (String service : decisions.services()) {
      all = all.with(Path.of(service), "a model of services");
    }
    return all;
  }

  /** What is said in the panel stands over the file beside the model. */
  private Optional<Overrides> overrides() {
    Optional<Overrides> beside = Overrides.beside(model);
    return decisions.roles().isEmpty()
        ? beside
        : Optional.of(
            beside.orElseGet(() -> Overrides.nothing(Decisions.BY_YOU)).with(decisions.roles()));
  }
}
