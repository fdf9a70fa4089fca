package org.underlee.server.service;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.underlee.clash.IssueRegister;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.report.DesignText;
import org.underlee.report.bcf.BcfVersion;
import org.underlee.report.bcf.BcfWriter;
import org.underlee.run.Checked;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.SurveyRequest;
import org.underlee.units.Lengths.UnitSystem;

/** What the service tells of a design. */
final class Told {
  private static final UnitSystem UNITS = UnitSystem.METRIC;

  private Told() {}

  /** What was laid out, and every finding with what to do about it. */
  static String text(Design design) {
    String laidOut =
        design.layout().parts().isEmpty()
            ? "Nothing was laid out.\n"
            : DesignText.write(design, UNITS);
    List<Finding> findings = design.findings();
    return laidOut
        + "\nFindings: "
        + findings.size()
        + "\n"
        + findings.stream().map(Told::line).collect(Collectors.joining());
  }

  static String line(Finding finding) {
    return finding.level().word()
        + " "
        + finding.rule().id()
        + ": "
        + finding.message(UNITS)
        + "\n"
        + finding.fix().map(f -> "    " + words(f) + "\n").orElse("");
  }

  static String words(Fix fix) {
    return fix.words().in(UNITS);
  }

  /** What the assembly meets, as BCF 2.1. */
  static byte[] issues(Design design) throws IOException {
    Path file = Files.createTempFile("underlee", ".ifc");
    try {
      Files.write(file, design.written().bytes());
      Checked checked = DeckRun.check(file, SurveyRequest.PLAIN, Optional.empty());
      return BcfWriter.write(
          DeckRun.coordinate(file, checked, design.layout().kit(), IssueRegister.EMPTY),
          BcfVersion.V2_1);
    } finally {
      Files.delete(file);
    }
  }
}
