package org.underlee.ifc;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/** The geometric contexts of the project: where new bodies belong. */
final class Contexts {
  private static final String SUB_CONTEXT = "IFCGEOMETRICREPRESENTATIONSUBCONTEXT";
  private static final String CONTEXT = "IFCGEOMETRICREPRESENTATIONCONTEXT";

  private final List<StepInstance> contexts;
  private final List<StepInstance> subContexts;

  Contexts(StepFile step, StepInstance project) {
    this.contexts = project.followAll(7).stream().filter(c -> c.keyword().equals(CONTEXT)).toList();
    this.subContexts = IntStream.of(step.ofKeyword(SUB_CONTEXT)).mapToObj(step::decode).toList();
  }

  /** Body / MODEL_VIEW if there is one, else the Model context, else any in three dimensions. */
  OptionalLong body() {
    return Stream.of(
            subContexts.stream().filter(c -> isBody(c) && isModelView(c)).findFirst(), model())
        .flatMap(Optional::stream)
        .mapToLong(StepInstance::id)
        .findFirst();
  }

  private Optional<StepInstance> model() {
    Optional<StepInstance> named =
        contexts.stream().filter(c -> is(c, 1, "Model") && isSolid(c)).findFirst();
    return named.isPresent() ? named : contexts.stream().filter(Contexts::isSolid).findFirst();
  }

  private static boolean isSolid(StepInstance context) {
    return context.optionalNumber(2).orElse(0) == 3;
  }

  private static boolean isBody(StepInstance context) {
    return is(context, 0, "Body");
  }

  private static boolean isModelView(StepInstance context) {
    return context.optionalEnumeration(8).filter("MODEL_VIEW"::equals).isPresent();
  }

  private static boolean is(StepInstance context, int attribute, String text) {
    return context.optionalText(attribute).filter(text::equalsIgnoreCase).isPresent();
  }
}
