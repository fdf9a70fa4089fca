package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Invented services below the pine deck, drawn by someone else: IFC2X3 in millimetres, where the
 * deck is IFC4 in feet. A water pipe that runs through the pans of every bay, a valve and a
 * junction box that end above pans, a stack that stands in a bay, and a dryer vent in the wall.
 */
final class PineServices {
  private static final double INCH = 25.4;

  private final List<String> lines = new ArrayList<>();
  private final List<String> elements = new ArrayList<>();
  private int next = 100;

  private PineServices() {}

  static String text() {
    PineServices model = new PineServices();
    model.head();
    // Across under the joists (bottom at 94.75 in), where the pans are.
    model.round("IFCFLOWSEGMENT", "Cold water 42 mm", -4, 100, 92.6, "1.,0.,0.", 200, 42 / INCH);
    model.round("IFCFLOWSEGMENT", "Soil stack 4 in", 72, 84, -12, "0.,0.,1.", 150, 4.5);
    model.box("IFCFLOWCONTROLLER", "Shut-off valve", 40, 30, 97, 4, 3, 3);
    model.box("IFCFLOWFITTING", "Junction box", 152, 24, 97.5, 4, 4, 2);
    model.round("IFCFLOWTERMINAL", "Dryer vent", 100, -1, 78, "0.,1.,0.", 3, 4);
    return model.file();
  }

  private void head() {
    line(1, "IFCPROJECT('%s',#6,'Pine deck services',$,$,$,$,(#8),#2)", id("project"));
    line(2, "IFCUNITASSIGNMENT((#3))");
    line(3, "IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.)");
    line(4, "IFCPERSONANDORGANIZATION(#14,#15,$)");
    line(5, "IFCAPPLICATION(#15,'1','Underlee samples','underlee-samples')");
    line(6, "IFCOWNERHISTORY(#4,#5,$,.NOCHANGE.,$,$,$,1262304000)");
    line(8, "IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#11,$)");
    line(10, "IFCCARTESIANPOINT((0.,0.,0.))");
    line(11, "IFCAXIS2PLACEMENT3D(#10,$,$)");
    line(12, "IFCLOCALPLACEMENT($,#11)");
    line(13, "IFCBUILDING('%s',#6,'Pine deck',$,$,#12,$,$,.ELEMENT.,$,$,$)", id("building"));
    line(14, "IFCPERSON($,$,'Nobody',$,$,$,$,$)");
    line(15, "IFCORGANIZATION($,'Invented',$,$,$)");
    line(17, "IFCCARTESIANPOINT((0.,0.))");
    line(18, "IFCAXIS2PLACEMENT2D(#17,$)");
    line(16, "IFCRELAGGREGATES('%s',#6,$,$,#1,(#13))", id("aggregates"));
  }

  private static String id(String key) {
    return GlobalIds.of("pine-deck/services/" + key);
  }

  /** A round bar along a direction; inches. */
  private void round(
      String entity,
      String name,
      double x,
      double y,
      double z,
      String axis,
      double length,
      double d) {
    String profile = add("IFCCIRCLEPROFILEDEF(.AREA.,$,#18,%s)", mm(d / 2));
    solid(entity, name, x, y, z, axis, profile, length);
  }

  /** A box about a place; inches. */
  private void box(
      String entity, String name, double x, double y, double z, double dx, double dy, double dz) {
    String profile = add("IFCRECTANGLEPROFILEDEF(.AREA.,$,#18,%s,%s)", mm(dx), mm(dy));
    solid(entity, name, x, y, z - dz / 2, "0.,0.,1.", profile, dz);
  }

  private void solid(
      String entity,
      String name,
      double x,
      double y,
      double z,
      String axis,
      String profile,
      double length) {
    String point = add("IFCCARTESIANPOINT((%s,%s,%s))", mm(x), mm(y), mm(z));
    String direction = add("IFCDIRECTION((%s))", axis);
    String side = add("IFCDIRECTION((%s))", axis.startsWith("0.,0.") ? "1.,0.,0." : "0.,0.,1.");
    String axes = add("IFCAXIS2PLACEMENT3D(%s,%s,%s)", point, direction, side);
    String placement = add("IFCLOCALPLACEMENT(#12,%s)", axes);
    String up = add("IFCDIRECTION((0.,0.,1.))");
    String body = add("IFCEXTRUDEDAREASOLID(%s,#11,%s,%s)", profile, up, mm(length));
    String shape = add("IFCSHAPEREPRESENTATION(#8,'Body','SweptSolid',(%s))", body);
    String whole = add("IFCPRODUCTDEFINITIONSHAPE($,$,(%s))", shape);
    elements.add(add("%s('%s',#6,'%s',$,$,%s,%s,$)", entity, id(name), name, placement, whole));
  }

  private String add(String template, Object... parts) {
    String number = "#" + next++;
    lines.add(number + "=" + String.format(Locale.ROOT, template, parts) + ";");
    return number;
  }

  private void line(int number, String template, Object... parts) {
    lines.add("#" + number + "=" + String.format(Locale.ROOT, template, parts) + ";");
  }

  private static String mm(double inches) {
    return String.format(Locale.ROOT, "%.4f", inches * INCH);
  }

  private String file() {
    add(
        "IFCRELCONTAINEDINSPATIALSTRUCTURE('%s',#6,$,$,(%s),#13)",
        id("contained"), String.join(",", elements));
    return """
        ISO-10303-21;
        HEADER;
        FILE_DESCRIPTION(('ViewDefinition [CoordinationView]'),'2;1');
        FILE_NAME('services.ifc','2020-01-01T00:00:00',(''),(''),'','Underlee samples','');
        FILE_SCHEMA(('IFC2X3'));
        ENDSEC;
        DATA;
        """
        + String.join("\n", lines)
        + "\nENDSEC;\nEND-ISO-10303-21;\n";
  }
}
