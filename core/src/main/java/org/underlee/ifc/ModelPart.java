package org.underlee.ifc;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongFunction;
import org.underlee.finding.Finding;
import org.underlee.finding.NotMeasured;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.ElementSource;

/**
 * Elements of a model, in the order of the file.
 *
 * @param external what the model's property sets say of an instance
 * @param elements what could be read
 * @param spaces likewise, of spaces
 * @param notMeasured what could not, with the reasons
 * @param findings what was read, but not as it should be
 */
public record ModelPart(
    LongFunction<Optional<Boolean>> external,
    List<BuildingElement> elements,
    List<BuildingElement> spaces,
    List<NotMeasured> notMeasured,
    List<Finding> findings)
    implements ElementSource {
  public ModelPart {
    elements = List.copyOf(elements);
    spaces = List.copyOf(spaces);
    notMeasured = List.copyOf(notMeasured);
    findings = List.copyOf(findings);
  }

  /** The same without the elements of some instances. */
  public ModelPart without(Set<Long> instances) {
    List<BuildingElement> kept =
        elements.stream().filter(e -> !instances.contains(e.instance())).toList();
    return new ModelPart(external, kept, spaces, notMeasured, findings);
  }

  @Override
  public Optional<Boolean> isExternal(long instance) {
    return external.apply(instance);
  }
}
