package org.underlee.panel;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * A model of decks as wide as one likes, for what takes long: each on a ledger, a rim and posts.
 */
public final class WideDeck {
  private static final double SPACING = 406.4;
  private static final double BETWEEN = 6000;
  private static final double DEPTH = 184.15;
  private static final double PLY = 38.1;
  private static final double LENGTH = 3600;
  private static final double TOP = 3000;

  private static final String BEFORE =
      """
      ISO-10303-21;
      HEADER;
      FILE_DESCRIPTION(('ViewDefinition [notYetAssigned]'),'2;1');
      FILE_NAME('wide.ifc','2026-03-01T09:00:00',(''),(''),'','','');
      FILE_SCHEMA(('IFC4'));
      ENDSEC;
      DATA;
      #1=IFCCARTESIANPOINT((0.,0.,0.));
      #2=IFCDIRECTION((0.,0.,1.));
      #3=IFCDIRECTION((1.,0.,0.));
      #4=IFCDIRECTION((0.,1.,0.));
      #5=IFCAXIS2PLACEMENT3D(#1,#2,#3);
      #6=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,0.001,#5,$);
      #7=IFCGEOMETRICREPRESENTATIONSUBCONTEXT('Body','Model',*,*,*,*,#6,$,.MODEL_VIEW.,$);
      #8=IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.);
      #9=IFCUNITASSIGNMENT((#8));
      #10=IFCPROJECT('0000000000000000000010',$,'wide',$,$,$,$,(#6),#9);
      #11=IFCLOCALPLACEMENT($,#5);
      #12=IFCBUILDING('0000000000000000000012',$,'House',$,$,#11,$,$,.ELEMENT.,$,$,$);
      #13=IFCBUILDINGSTOREY('0000000000000000000013',$,'Ground',$,$,#11,$,$,.ELEMENT.,0.);
      #14=IFCRELAGGREGATES('0000000000000000000014',$,$,$,#10,(#12));
      #15=IFCRELAGGREGATES('0000000000000000000015',$,$,$,#12,(#13));
      #16=IFCAXIS2PLACEMENT3D(#1,#3,#4);
      #17=IFCCARTESIANPOINT((0.,0.));
      #18=IFCDIRECTION((1.,0.));
      #19=IFCAXIS2PLACEMENT2D(#17,#18);
      """;

  private final StringBuilder text = new StringBuilder(BEFORE);
  private final List<String> elements = new ArrayList<>();
  private int next = 20;

  private WideDeck() {}

  /** Writes a model of so many decks of so many bays each. */
  public static void write(Path file, int decks, int bays) throws IOException {
    WideDeck model = new WideDeck();
    for (int deck = 0; deck < decks; deck++) {
      model.deck(deck * (bays * SPACING + BETWEEN), bays);
    }
    model.text.append(
        model.elements.stream()
            .collect(
                Collectors.joining(
                    ",",
                    "#"
                        + model.next
                        + "=IFCRELCONTAINEDINSPATIALSTRUCTURE('0000000000000000000016',$,$,$,(",
                    "),#13);\nENDSEC;\nEND-ISO-10303-21;\n")));
    Files.write(file, model.text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private void deck(double x, int bays) {
    double width = bays * SPACING;
    double level = TOP - DEPTH / 2;
    for (int joist = 0; joist <= bays; joist++) {
      bar("IFCBEAM", "Joist 2x8", x + joist * SPACING, 0, level, "#2,#4", PLY, DEPTH, LENGTH);
    }
    double from = x - PLY / 2;
    bar("IFCBEAM", "Ledger 2x8", from, -PLY / 2, level, "#2,#3", PLY, DEPTH, width + PLY);
    bar(
        "IFCBEAM",
        "Rim joist 2x8",
        from,
        LENGTH + PLY / 2,
        level,
        "#2,#3",
        PLY,
        DEPTH,
        width + PLY);
    for (double at : new double[] {x + 100, x + width - 100}) {
      bar("IFCCOLUMN", "Post 4x4", at, LENGTH, 0, "#4,#2", 88.9, 88.9, TOP - DEPTH);
    }
    bar("IFCWALL", "House wall", x - 1500, -138.1, TOP, "#2,#3", 200, 6000, width + 3000);
  }

  /** A bar of a rectangular section; {@code axes} are its own z and the way that it runs. */
  private void bar(
      String type,
      String name,
      double x,
      double y,
      double z,
      String axes,
      double wide,
      double deep,
      double length) {
    int n = next;
    next += 8;
    String[] lines = {
      point(x, y, z),
      "IFCAXIS2PLACEMENT3D(#%d,%s)".formatted(n, axes),
      "IFCLOCALPLACEMENT(#11,#%d)".formatted(n + 1),
      String.format(Locale.ROOT, "IFCRECTANGLEPROFILEDEF(.AREA.,$,#19,%.3f,%.3f)", wide, deep),
      String.format(Locale.ROOT, "IFCEXTRUDEDAREASOLID(#%d,#16,#2,%.3f)", n + 3, length),
      "IFCSHAPEREPRESENTATION(#7,'Body','SweptSolid',(#%d))".formatted(n + 4),
      "IFCPRODUCTDEFINITIONSHAPE($,$,(#%d))".formatted(n + 5),
      "%s('%022d',$,'%s',$,$,#%d,#%d,$,$)".formatted(type, n + 7, name, n + 2, n + 6)
    };
    for (int i = 0; i < lines.length; i++) {
      text.append('#').append(n + i).append('=').append(lines[i]).append(";\n");
    }
    elements.add("#" + (n + 7));
  }

  private static String point(double x, double y, double z) {
    return String.format(Locale.ROOT, "IFCCARTESIANPOINT((%.3f,%.3f,%.3f))", x, y, z);
  }
}
