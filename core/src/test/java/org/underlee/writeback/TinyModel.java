package org.underlee.writeback;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** A hand-written model with one storey, turned and moved, and one beam. */
record TinyModel(
    String schema, Length length, String lineEnd, boolean ownerHistory, boolean storey) {
  /** Length units with their area, volume and angle companions. */
  enum Length {
    MILLIMETRE(0.001),
    METRE(1),
    FOOT(0.3048);

    final double metres;

    Length(double metres) {
      this.metres = metres;
    }
  }

  static final String STOREY = "0storey00000000000000a";
  static final String PROJECT = "0project0000000000000a";

  static TinyModel of(String schema, Length length) {
    return new TinyModel(schema, length, "\n", true, true);
  }

  TinyModel withLineEnd(String end) {
    return new TinyModel(schema, length, end, ownerHistory, storey);
  }

  TinyModel withoutOwnerHistory() {
    return new TinyModel(schema, length, lineEnd, false, storey);
  }

  TinyModel withoutStorey() {
    return new TinyModel(schema, length, lineEnd, ownerHistory, false);
  }

  byte[] bytes() {
    return bytes(StandardCharsets.UTF_8);
  }

  byte[] bytes(Charset charset) {
    return text().replace("\n", lineEnd).getBytes(charset);
  }

  private String number(double metres) {
    return org.underlee.step.StepReal.format(metres / length.metres);
  }

  private String text() {
    String history = ownerHistory ? "#6" : "$";
    String person =
        "#1=IFCPERSON($,'Designer',$,$,$,$,$,$);\n"
            + "#2=IFCORGANIZATION($,'Büro',$,$,$);\n"
            + "#3=IFCPERSONANDORGANIZATION(#1,#2,$);\n"
            + "#4=IFCAPPLICATION(#2,'1','A drawing program','draw');\n"
            + "#6=IFCOWNERHISTORY(#3,#4,$,.NOCHANGE.,$,$,$,1500000000);\n";
    return "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\n"
        + "FILE_NAME('deck.ifc','2026-01-01T00:00:00',(''),(''),'','','');\n"
        + ("FILE_SCHEMA(('" + schema + "'));\nENDSEC;\nDATA;\n")
        + (ownerHistory ? person : "")
        + ("#10=IFCPROJECT('" + PROJECT + "'," + history + ",'Deck',$,$,$,$,(#20),#11);\n")
        + units()
        + "#20=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#21,$);\n"
        + "#21=IFCAXIS2PLACEMENT3D(#22,$,$);\n#22=IFCCARTESIANPOINT((0.,0.,0.));\n"
        + "#23=IFCGEOMETRICREPRESENTATIONSUBCONTEXT('Body','Model',*,*,*,*,#20,$,.MODEL_VIEW.,$);\n"
        + ("#30=IFCBUILDING('0building000000000000a'," + history)
        + ",'House',$,$,#31,$,$,.ELEMENT.,$,$,$);\n#31=IFCLOCALPLACEMENT($,#21);\n"
        + ("#32=IFCRELAGGREGATES('0aggregates0000000000a'," + history + ",$,$,#10,(#30));\n")
        + (storey ? storeyText(history) : "")
        + "ENDSEC;\nEND-ISO-10303-21;\n";
  }

  /** Turned by 30°, so that a part written with the wrong frame lands elsewhere. */
  private String storeyText(String history) {
    String origin = number(10) + "," + number(5) + "," + number(3);
    return "#40=IFCBUILDINGSTOREY('"
        + (STOREY + "'," + history + ",'Upper',$,$,#41,$,$,.ELEMENT.,$);\n")
        + "#41=IFCLOCALPLACEMENT(#31,#42);\n#42=IFCAXIS2PLACEMENT3D(#43,#44,#45);\n"
        + ("#43=IFCCARTESIANPOINT((" + origin + "));\n")
        + "#44=IFCDIRECTION((0.,0.,1.));\n"
        + ("#45=IFCDIRECTION((" + Math.sqrt(0.75) + ",0.5,0.));\n")
        + ("#46=IFCRELAGGREGATES('0aggregates0000000000b'," + history + ",$,$,#30,(#40));\n");
  }

  private String units() {
    if (length != Length.FOOT) {
      String prefix = length == Length.MILLIMETRE ? ".MILLI." : "$";
      return "#11=IFCUNITASSIGNMENT((#12,#13,#14,#15,#16));\n"
          + ("#12=IFCSIUNIT(*,.LENGTHUNIT.," + prefix + ",.METRE.);\n")
          + "#13=IFCSIUNIT(*,.AREAUNIT.,$,.SQUARE_METRE.);\n"
          + "#14=IFCSIUNIT(*,.VOLUMEUNIT.,$,.CUBIC_METRE.);\n"
          + "#15=IFCSIUNIT(*,.PLANEANGLEUNIT.,$,.RADIAN.);\n"
          + "#16=IFCSIUNIT(*,.MASSUNIT.,.KILO.,.GRAM.);\n";
    }
    return "#11=IFCUNITASSIGNMENT((#12,#15));\n"
        + "#12=IFCCONVERSIONBASEDUNIT(#13,.LENGTHUNIT.,'FOOT',#14);\n"
        + "#13=IFCDIMENSIONALEXPONENTS(1,0,0,0,0,0,0);\n"
        + "#14=IFCMEASUREWITHUNIT(IFCLENGTHMEASURE(0.3048),#17);\n"
        + "#17=IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.);\n"
        + "#15=IFCCONVERSIONBASEDUNIT(#18,.PLANEANGLEUNIT.,'DEGREE',#19);\n"
        + "#18=IFCDIMENSIONALEXPONENTS(0,0,0,0,0,0,0);\n"
        + ("#19=IFCMEASUREWITHUNIT(IFCPLANEANGLEMEASURE(" + Math.PI / 180 + "),#16);\n")
        + "#16=IFCSIUNIT(*,.PLANEANGLEUNIT.,$,.RADIAN.);\n";
  }
}
