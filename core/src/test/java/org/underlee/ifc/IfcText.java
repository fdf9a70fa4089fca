package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Mesh;
import org.underlee.step.StepTexts;

/** Writes small models for tests: project, contexts and one storey, then what a test adds. */
final class IfcText {
  static final String METRE = "IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.)";
  static final String MILLIMETRE = "IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.)";
  static final int STOREY = 20;
  static final int STOREY_PLACEMENT = 21;
  static final int BODY_CONTEXT = 9;

  private final String schema;
  private final List<String> lines = new ArrayList<>();
  private int next = 100;

  private IfcText(String schema) {
    this.schema = schema;
  }

  /** An IFC4 model whose length unit is the given entity, and whose angles are degrees. */
  static IfcText of(String lengthUnit) {
    return of("IFC4", lengthUnit);
  }

  static IfcText of(String schema, String lengthUnit) {
    IfcText text = new IfcText(schema);
    text.line(1, "IFCPROJECT('0P00000000000000000001',$,'P',$,$,$,$,(#8),#2)");
    text.line(2, lengthUnit.isEmpty() ? "IFCUNITASSIGNMENT((#4))" : "IFCUNITASSIGNMENT((#3,#4))");
    if (!lengthUnit.isEmpty()) {
      text.line(3, lengthUnit);
    }
    text.line(4, "IFCCONVERSIONBASEDUNIT(#5,.PLANEANGLEUNIT.,'DEGREE',#6)");
    text.line(5, "IFCDIMENSIONALEXPONENTS(0,0,0,0,0,0,0)");
    text.line(6, "IFCMEASUREWITHUNIT(IFCPLANEANGLEMEASURE(0.017453292519943295),#7)");
    text.line(7, "IFCSIUNIT(*,.PLANEANGLEUNIT.,$,.RADIAN.)");
    text.line(8, "IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#11,$)");
    text.line(
        BODY_CONTEXT,
        "IFCGEOMETRICREPRESENTATIONSUBCONTEXT('Body','Model',*,*,*,*,#8,$,.MODEL_VIEW.,$)");
    text.line(10, "IFCCARTESIANPOINT((0.,0.,0.))");
    text.line(11, "IFCAXIS2PLACEMENT3D(#10,$,$)");
    text.line(
        STOREY, "IFCBUILDINGSTOREY('0S00000000000000000001',$,'Deck',$,$,#21,$,$,.ELEMENT.,3000.)");
    text.line(STOREY_PLACEMENT, "IFCLOCALPLACEMENT($,#22)");
    text.line(22, "IFCAXIS2PLACEMENT3D(#10,$,$)");
    return text;
  }

  private void line(int id, String entity) {
    lines.add("#" + id + "=" + entity + ";");
  }

  /** Adds an instance under the next number and returns it with its hash: {@code #100}. */
  String add(String entity) {
    line(next, entity);
    return "#" + next++;
  }

  String point(String coordinates) {
    return add("IFCCARTESIANPOINT((" + coordinates + "))");
  }

  String direction(String ratios) {
    return add("IFCDIRECTION((" + ratios + "))");
  }

  /** An axis placement; an empty axis or reference direction is omitted. */
  String axes(String origin, String axis, String reference) {
    return add(
        "IFCAXIS2PLACEMENT3D("
            + point(origin)
            + ","
            + (axis.isEmpty() ? "$" : direction(axis))
            + ","
            + (reference.isEmpty() ? "$" : direction(reference))
            + ")");
  }

  String placement(String parent, String axes) {
    return add("IFCLOCALPLACEMENT(" + parent + "," + axes + ")");
  }

  String rectangle(String x, String y) {
    return add("IFCRECTANGLEPROFILEDEF(.AREA.,$,$," + x + "," + y + ")");
  }

  String polyline(String... points) {
    List<String> refs = new ArrayList<>();
    for (String p : points) {
      refs.add(point(p));
    }
    return add("IFCPOLYLINE((" + String.join(",", refs) + "))");
  }

  /** Straight up from the origin. */
  String extrusion(String profile, String depth) {
    return add(
        "IFCEXTRUDEDAREASOLID(" + profile + ",$," + direction("0.,0.,1.") + "," + depth + ")");
  }

  String body(String item) {
    return add("IFCSHAPEREPRESENTATION(#9,'Body','SweptSolid',(" + item + "))");
  }

  String shape(String representation) {
    return add("IFCPRODUCTDEFINITIONSHAPE($,$,(" + representation + "))");
  }

  /** A beam named by its number, with the item as its body. */
  String beam(String placement, String item) {
    return add(
        String.format(
            java.util.Locale.ROOT,
            "IFCBEAM('0B%020d',$,'Beam',$,$,%s,%s,$,.JOIST.)",
            next,
            placement,
            shape(body(item))));
  }

  IfcModel model() {
    return IfcModel.of(StepTexts.read(StepTexts.fileOf(schema, lines.toArray(new String[0]))));
  }

  /** The one element of the model. */
  BuildingElement only() {
    IfcModel model = model();
    assertThat(model.notMeasured()).isEmpty();
    assertThat(model.elements()).hasSize(1);
    return model.elements().get(0);
  }

  /** The shape of a beam with this item as its body, at the origin. */
  Mesh shapeOf(String item) {
    beam("$", item);
    return only().shape();
  }

  /** Why the one beam with this item could not be measured. */
  String whyNot(String item) {
    beam("$", item);
    IfcModel model = model();
    assertThat(model.elements()).isEmpty();
    assertThat(model.notMeasured()).hasSize(1);
    return model.notMeasured().get(0).why();
  }
}
