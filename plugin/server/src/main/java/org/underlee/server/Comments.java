package org.underlee.server;

import java.nio.file.Path;
import java.util.regex.Pattern;
import org.underlee.run.Version;
import org.underlee.step.StepFile;

/** What revisions of ours say of themselves. */
public final class Comments {
  /** The service on the server knows revisions of ours by it. */
  private static final Pattern ASSEMBLY =
      Pattern.compile("Underlee \\S+: drainage assembly of \\d+ parts, from revision \\d+");

  /** One for each part of an assembly. */
  private static final String PART_SET = "Underlee_Part";

  private static final int NAME = 2;

  private Comments() {}

  /** Of a revision with an assembly that was laid out from another revision. */
  public static String ofAssembly(int parts, int base) {
    return "Underlee "
        + Version.number()
        + ": drainage assembly of "
        + parts
        + " parts, from revision "
        + base;
  }

  public static boolean isOurs(String comment) {
    return ASSEMBLY.matcher(comment).lookingAt();
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
