package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.FieldBays;
import org.underlee.check.CheckInput;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.Finding;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.Layout;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;

/**
 * What was recognised in a model.
 *
 * @param model the designer's model: an assembly of ours in the file was left aside
 * @param services the models of services that were looked at
 * @param request how it was asked for
 * @param bays of every field, in the order of the decks
 * @param elements what stands near the framing, services of other models among it
 */
public record Survey(
    Source source,
    List<Source> services,
    IfcModel model,
    SurveyRequest request,
    Framing framing,
    List<FieldBays> bays,
    List<BuildingElement> elements,
    List<Finding> findings) {
  public Survey {
    bays = List.copyOf(bays);
    elements = List.copyOf(elements);
    findings = List.copyOf(findings);
  }

  public FieldBays baysOf(Field field) {
    return bays.stream().filter(b -> b.field().equals(field)).findFirst().orElseThrow();
  }

  /** What checks look at in a layout of it whose water was followed. */
  CheckInput checkInput(Layout layout, Wishes wishes, Storm storm, DrainProof proof) {
    return CheckInput.of(bays, elements, layout, storm, proof.outlets()).with(wishes);
  }

  /**
   * The same survey with one deck left: its fields, roles and findings, and what is said of the
   * file as a whole.
   *
   * @throws org.underlee.finding.InputException when the model has no such deck
   */
  public Survey only(String id) {
    Deck chosen = new Scope(Optional.of(id)).of(framing.decks()).get(0);
    Framing one = framing.only(chosen);
    List<FieldBays> own = bays.stream().filter(b -> chosen.fields().contains(b.field())).toList();
    List<Finding> kept = new ArrayList<>(findings);
    kept.removeAll(framing.findings());
    kept.addAll(one.findings());
    return new Survey(source, services, model, request, one, own, elements, kept);
  }
}
