package org.underlee.check;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.OutletShare;
import org.underlee.drainage.flow.ProofData;
import org.underlee.drainage.flow.Storm;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Mesh;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Onto;
import org.underlee.layout.Wishes;

/**
 * What checks look at.
 *
 * @param elements everything in the model that stands near the framing
 * @param storm the rain that must be carried away
 * @param proved what reaches each outlet, where the water has been followed
 * @param data numbers that several checks share, each with its source
 * @param wishes what the user has said of the decks: rain of roofs, tables of capacities
 */
public record CheckInput(
    List<Assembled> fields,
    List<BuildingElement> elements,
    Layout layout,
    Storm storm,
    List<OutletShare> proved,
    ProofData data,
    Wishes wishes) {
  public CheckInput {
    proved = List.copyOf(proved);
    fields = List.copyOf(fields);
    elements = List.copyOf(elements);
  }

  /** Where the user has said nothing. */
  public CheckInput(
      List<Assembled> fields,
      List<BuildingElement> elements,
      Layout layout,
      Storm storm,
      List<OutletShare> proved,
      ProofData data) {
    this(fields, elements, layout, storm, proved, data, Wishes.NONE);
  }

  public CheckInput with(Wishes said) {
    return new CheckInput(fields, elements, layout, storm, proved, data, said);
  }

  /** Rain of roofs that comes onto the decks. */
  List<Onto> onto() {
    return wishes.onto();
  }

  public static CheckInput of(
      List<FieldBays> bays,
      List<BuildingElement> elements,
      Layout layout,
      Storm storm,
      List<OutletShare> proved) {
    List<Assembled> fields =
        layout.fields().stream()
            .flatMap(f -> bays(bays, f).map(b -> Assembled.of(f, b, layout.kit())).stream())
            .toList();
    return new CheckInput(fields, elements, layout, storm, proved, ProofData.builtIn());
  }

  /**
   * The assembly as it stands in a model: each part that was laid out is where the model has it,
   * and one that the model has no more is not there.
   *
   * @param shapes by the part's id, world metres
   */
  public static CheckInput asItStands(
      List<FieldBays> bays,
      List<BuildingElement> elements,
      Layout layout,
      Storm storm,
      List<OutletShare> proved,
      Map<String, Mesh> shapes) {
    List<Assembled> fields =
        layout.fields().stream()
            .flatMap(
                f -> bays(bays, f).map(b -> AsItStands.of(f, b, layout.kit(), shapes)).stream())
            .toList();
    Layout now =
        new Layout(
            layout.kit(), fields.stream().map(Assembled::layout).toList(), layout.findings());
    return new CheckInput(fields, elements, now, storm, proved, ProofData.builtIn());
  }

  private static Optional<FieldBays> bays(List<FieldBays> all, FieldLayout field) {
    return all.stream().filter(b -> b.field().id().equals(field.field())).findFirst();
  }

  /** What gutters carry of this rain. */
  GutterInRain gutters() {
    return new GutterInRain(storm, data, elements, wishes);
  }

  List<BuildingElement> ofClass(Set<String> classes) {
    return elements.stream().filter(e -> classes.contains(e.ifcClass())).toList();
  }
}
