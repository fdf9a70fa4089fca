package org.underlee.server;

import java.nio.file.Path;
import org.underlee.run.Version;
import org.underlee.step.StepFile;

/** What revisions of ours say of themselves. */
public final class Comments {
  /** Every comment of ours begins so; the service on the server knows its own revisions by it. */
  private static final String OURS = "Underlee ";

  /** One for each part of an assembly. */
  private static final String PART_SET = "Underlee_Part";

  private static final int NAME = 2;

  private Comments() {}

  /** Of a revision with an assembly that was laid out from another revision. */
  public static String ofAssembly(int parts, int base) {
    return OURS
        + Version.number()
        + ": drainage assembly of "
        + parts
        + " parts, from revision "
        + base;
  }

  public static boolean isOurs(String comment) {
    return comment.startsWith(OURS);
  }

  /** How many parts the assembly in a drained model has. */
  static int parts(Path drained) {
    StepFile file = StepFile.read(drained);
    int parts = 0;
    for (int set : file.ofKeyword("IFCPROPERTYSET")) {
      if (file.decode(set).optionalText(NAME).filter(PART_SET::equals).isPresent()) {
        parts++;
      }
    }
    return parts;
  }
}
